import type { Proposal, QuestionPlan, RefusedOption, Repair, Situation, WhatHelps } from '#dispatch';
import type { Mel } from '#mel';
import { sayInstant, sayMinutes } from './say-time.js';

/** What would help, in paragraphs of lines: better rows, the least to fix, what refuses each row. */
export function whatHelpsWords(helps: WhatHelps, mel: Mel, { defects }: Situation): string[][] {
  const { betterRows, leastToFix, whyRefused } = helps;
  const name = (id: string): string => {
    const defect = defects.find((one) => one.id === id);
    const entry = defect?.entry == null ? undefined : mel.entry(defect.entry);
    return entry === undefined ? id : `${entry.title} ${defect?.units.join(' or ') ?? ''} (${id})`;
  };
  return [
    betterRows === null ? [] : betterRowsWords(betterRows, name),
    leastToFix === null ? [] : leastToFixWords(leastToFix.repairs, leastToFix.isWhole, name),
    whyRefused.length === 0
      ? []
      : ['The smallest sets that refuse a row', ...whyRefused.flatMap((one) => refusedWords(one, name))],
  ];
}

type Named = (defect: string) => string;

function betterRowsWords({ answer, rows, shownBest }: NonNullable<WhatHelps['betterRows']>, name: Named): string[] {
  const changed = rows.filter(({ isChange, row }) => isChange && row !== null);
  const { earliestOffBlockAt, lateMinutes } = answer;
  const off = earliestOffBlockAt === null ? '' : `, off blocks not before ${sayInstant(earliestOffBlockAt)}`;
  const late = lateMinutes ? `, late by ${sayMinutes(lateMinutes)}` : '';
  return [
    `Other rows would do: ${answer.words}${off}${late}`,
    ...changed.map(rowWords(name)),
    ...(shownBest ? [] : ['  - The search was given up at its budget of steps; better rows may exist.']),
  ];
}

const rowWords =
  (name: Named) =>
  ({ defect, row, signedRow }: Proposal['rows'][number]): string =>
    signedRow === null
      ? `  - Sign row ${row ?? ''} for ${name(defect)}`
      : `  - Change ${name(defect)} from row ${signedRow} to row ${row ?? ''}, and sign it with its work`;

function leastToFixWords(repairs: readonly Repair[], isWhole: boolean, name: Named): string[] {
  const title = `Least to fix${isWhole ? '' : ' (these, perhaps others)'}`;
  if (repairs.length === 0) {
    return [
      title,
      isWhole ? '  - Fixing open items alone does not help.' : '  - None found before the budget ended.',
    ];
  }
  return [
    title,
    ...repairs.map(({ defects, minutes }) => {
      const long = minutes === null ? 'nobody has said how long it takes' : sayMinutes(minutes);
      return `  - ${defects.map(name).join(' and ')}: ${long}`;
    }),
  ];
}

function refusedWords({ defect, row, because, isWhole }: RefusedOption, name: Named): string[] {
  const sets = because.map(({ conditions, openItems }) => {
    const asked = conditions.map(({ text }) => `"${text.replace(/[.\s]+$/, '')}"`).join(' and ');
    return openItems.length === 0 ? asked : `${asked}, while ${openItems.map(name).join(' and ')} is open`;
  });
  const said = sets.length === 0 ? 'not found before the budget ended' : sets.join('; or ');
  return [`  - ${name(defect)}, row ${row}: ${said}${isWhole ? '' : ' (perhaps others)'}`];
}

/** In which order to ask, and what still matters then. */
export function questionPlanWords({ verdict, method, model, expected, questions }: QuestionPlan): string[] {
  if (verdict !== 'not-settled' || questions.length === 0 || method === 'nothing-to-ask') return [];
  const many = expected === null ? '' : `; ${expected.toFixed(1)} questions expected`;
  return [
    `Ask in this order${many}`,
    ...questions.map(({ question, replies }, at) => {
      const words = replies.map((reply) => reply.words).join(' / ');
      return `  ${at + 1}. ${question}${words === '' ? '' : ` (${words})`}`;
    }),
    `  ${model}`,
  ];
}
