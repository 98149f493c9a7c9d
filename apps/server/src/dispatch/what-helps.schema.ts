import { instant, list, object, oneOf, orNull, ref, type Shape, text, whole, yesNo } from '../openapi/shape.js';

const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];

const betterRows = object(
  {
    answer: object({
      verdict: oneOf(CODES, 'The answer under these rows.'),
      words: text('The answer in words.'),
      reasons: list(text('A sentence.')),
      work: list(ref('WorkStep')),
      workMinutes: orNull(whole('All of it, in minutes.')),
      earliestOffBlockAt: orNull(instant('Earliest off-block')),
      lateMinutes: orNull(whole('How long after the planned off-block that is.')),
    }),
    rows: list(
      object({
        defect: text('id'),
        entry: orNull(text('MEL entry.')),
        units: list(text('unit')),
        row: orNull(text('The row proposed.')),
        signedRow: orNull(text('The row signed now.')),
        isChange: yesNo('True when it is to be changed, or signed for the first time.'),
      }),
    ),
    shownBest: yesNo('False when better rows may exist, since the search was given up.'),
  },
  'Rows under which the answer would be better. A proposal is never the record.',
);

export const WHAT_HELPS_SHAPES: Record<string, Shape> = {
  WhatHelps: object({
    at: instant('When this was computed'),
    betterRows: orNull(betterRows),
    leastToFix: orNull(
      object({
        repairs: list(
          object({ defects: list(text('id')), minutes: orNull(whole('Estimated minutes of all of them.')) }),
          'Each set suffices, and none holds a smaller one; the fewest first.',
        ),
        isWhole: yesNo('False reads: these, perhaps others.'),
        reason: orNull(text('Why the search was given up.')),
      }),
    ),
    whyRefused: list(
      object({
        defect: text('id'),
        entry: text('MEL entry.'),
        row: text('The row.'),
        because: list(
          object({
            conditions: list(object({ id: text('Which condition.'), text: text('In words.') })),
            openItems: list(text('id'), 'Other open items that must be open for it.'),
          }),
          'All smallest sets that refuse the row.',
        ),
        isWhole: yesNo('False: others, or smaller ones, may exist.'),
      }),
    ),
  }),
};
