/**
 * What no correction touches, since it would change an answer, an interval or who answers for what; and what is done
 * instead, as the trade does it. M.A.403(b)(c); 145.A.50; AMC M.A.305(e).
 */
import type { Act } from '../acts.js';
import { Refusal } from '../refusal.js';
import { entryInWords, nothingToCorrect } from './nothing-to-correct.js';

/** The names under which it may be asked for. */
export const NEVER_CORRECTED = [
  'aircraft',
  'entry',
  'row',
  'category',
  'interval',
  'until',
  'enteredAt',
  'work',
  'result',
  'complete',
  'outcome',
  'measured',
  'allowed',
] as const;

export type NeverCorrected = (typeof NEVER_CORRECTED)[number];

export interface PutRightOtherwise {
  field: NeverCorrected;
  words: string;
  because: string;
  instead: string;
}

const of = (field: NeverCorrected, words: string, because: string, instead: string): PutRightOtherwise => ({
  field,
  words,
  because,
  instead,
});

const AGAIN =
  'Write it up again with the time that stands in the log: its day stays. Then enter as work that this one was deferred wrongly, and release it.';

const CHANGE = 'Change the row with a signature; the clock is kept.';

const OF_ROW = [
  of('entry', 'the entry', 'it decides what is down', AGAIN),
  of('row', 'the row', 'it decides what must hold', CHANGE),
  of('category', 'the category', 'it decides the interval', CHANGE),
  of('interval', 'the interval', 'it decides the deadline', CHANGE),
];

const OF_DOCUMENT = [
  of('interval', 'the interval', 'it decides the deadline', AGAIN),
  of('until', 'the end of the document', 'it decides the deadline', AGAIN),
];

const WORK = 'Enter the work again as it was done, with a signature; only what was signed last counts.';

/** Of every act. */
const ENTERED = of(
  'enteredAt',
  'when it was entered',
  'the clock of the server wrote it, and nobody typed it',
  'Say in words when it was done, where the entry has any; how long it is good for counts from when it was done.',
);

const OTHERWISE: { [Kind in Act['kind']]?: readonly PutRightOtherwise[] } = {
  'written-up': [
    of(
      'aircraft',
      'the aircraft',
      'it decides which aircraft waits for an answer',
      'Write it up on the right aircraft with the time that stands in the log. Then have this one raised in error.',
    ),
    of(
      'entry',
      'the entry and unit',
      'they decide what is down',
      'Say again which item failed, before it is deferred.',
    ),
  ],
  'procedure-signed': [of('work', 'which procedure', 'it decides what may be flown', WORK)],
  'card-stepped': [
    of('measured', 'the value measured', 'it decides whether the step is good', 'Stop the card and start it again.'),
  ],
  rectification: [
    of('complete', 'whether the work is complete', 'it decides what may be released', WORK),
    of('work', 'what was asked for (test, inspection)', 'it decides what may be released', WORK),
  ],
  tested: [of('result', 'the result', 'it decides what may be released', 'Test again and enter the result.')],
  released: [of('outcome', 'the release', 'a release is not taken back', 'Write up what is wrong as a new defect.')],
  extended: [
    of(
      'allowed',
      'what was granted',
      'it decides the deadline',
      'Rectify it within the time that stands, or ask the authority.',
    ),
  ],
  'authority-granted': [
    of(
      'allowed',
      'what the document allows',
      'it decides what may be flown',
      'Enter the document again as it reads.',
    ),
  ],
};

export function putRightOtherwise(act: Act): readonly PutRightOtherwise[] {
  if (act.kind === 'deferred' || act.kind === 'row-changed') {
    return act.basis.kind === 'mel-row' ? OF_ROW : OF_DOCUMENT;
  }
  return OTHERWISE[act.kind] ?? [];
}

/** What they are called where an entry has none. */
const NEVER_WORDS: Readonly<Record<NeverCorrected, string>> = {
  aircraft: 'the aircraft',
  entry: 'the entry of the MEL',
  row: 'the row',
  category: 'the category',
  interval: 'the interval',
  until: 'the end of a document',
  enteredAt: 'when it was entered',
  work: 'what was to be done',
  result: 'the result',
  complete: 'whether the work is complete',
  outcome: 'the release',
  measured: 'a value measured',
  allowed: 'what was granted',
};

/** The refusal, with what to do instead. */
export function notByCorrection(defect: string, act: Act | undefined, field: NeverCorrected): Refusal {
  const known = act && [...putRightOtherwise(act), ENTERED].find((one) => one.field === field);
  if (known === undefined) {
    return nothingToCorrect({ entry: entryInWords(act, defect), words: NEVER_WORDS[field] });
  }
  const { words, because, instead } = known;
  return new Refusal('not-by-correction', { defect, words, because, instead });
}
