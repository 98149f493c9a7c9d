/** Names of items and conditions as they are read aloud. */
import type { JudgedItem } from '../conditions/judge-item.js';
import type { ConditionAnswer } from '../verdict.js';

/** e.g. "32-42-01 Main wheel brake 2, row 1". */
export function itemName({ item, answer }: JudgedItem): string {
  const row = answer.row === null ? '' : `, row ${answer.row}`;
  const basis = item.defect?.basis;
  if (basis !== undefined) return `defect ${item.defect?.id ?? ''} on ${basis.reference}`;
  if (item.entry === null) return `defect ${item.defect?.id ?? ''}`;
  return `${answer.entry} ${answer.title} ${answer.unit}${row}`;
}

/** e.g. "the runways are at least 45 m wide: width of the narrowest runway: 40 metres". */
export function conditionSaid({ text, because }: ConditionAnswer): string {
  return `${withoutStop(text)} - ${withoutStop(because)}`;
}

export function withoutStop(text: string): string {
  return text.trim().replace(/[.\s]+$/, '');
}
