/** Names of items and conditions as they are read aloud. */
import type { JudgedItem } from '../conditions/judge-item.js';
import type { ConditionAnswer, ConditionKind } from '../verdict.js';

/** e.g. "Main wheel brake 2 (32-42-01, row 1)". */
export function itemName({ item, answer }: JudgedItem): string {
  const basis = item.defect?.basis;
  if (basis !== undefined) return `Defect ${item.defect?.id ?? ''} (${basis.reference})`;
  if (item.entry === null) return `Defect ${item.defect?.id ?? ''}`;
  const row = answer.row === null ? '' : `, row ${answer.row}`;
  return `${answer.title} ${answer.unit} (${answer.entry}${row})`;
}

/** Conditions whose own text is what the reader needs; the others say everything in their reason. */
const QUOTED: Partial<Record<ConditionKind, (text: string) => string>> = {
  proviso: (text) => `needed is "${text}" - `,
  procedure: (text) => `${firstSentence(text)}: `,
  placard: (text) => `${text}: `,
  judgement: (text) => `${text} - `,
};

/** e.g. `needed is "The runway is at least 45 m wide" - width of the narrowest runway: 44 metres`. */
export function conditionSaid({ kind, text, because }: ConditionAnswer): string {
  return `${QUOTED[kind]?.(withoutStop(text)) ?? ''}${withoutStop(because)}`;
}

/** What a procedure is for, without its steps: those are told where it is done. */
function firstSentence(text: string): string {
  return withoutStop(/^.+?[.!?](?=\s|$)/.exec(text)?.[0] ?? text);
}

export function withoutStop(text: string): string {
  let end = text.length;
  while (end > 0 && ENDINGS.has(text.charAt(end - 1))) end -= 1;
  return text.slice(0, end);
}

const ENDINGS = new Set(['.', ' ', '\n', '\t', '\r']);

/** One sentence: a capital, and one full stop. */
export function sentence(text: string): string {
  const whole = withoutStop(text);
  return `${whole.charAt(0).toUpperCase()}${whole.slice(1)}${whole.endsWith('?') ? '' : '.'}`;
}
