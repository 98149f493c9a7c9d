import type { RefusalEntry } from './entry.js';

/** Work that is owed again and again. */
export const REPEATING_REFUSALS = {
  'work-entered-after-departure': {
    sentence:
      'Work {work} is entered as done {doneAt}, and the aircraft left since then, at {leftAt}, without it signed.',
    next: 'Say why it was not signed before that departure, or sign it as done now. What was missed stays missed without a reason.',
    paragraph: 'ORO.MLR.105; M.A.305; common practice, no source for the words',
  },
  'correction-over-a-departure': {
    sentence:
      'The work is signed as done {was}; between {now}, to which it would be corrected, and then the aircraft left: {departures}.',
    next: 'What was missed stays missed. If the work was done before the aircraft left, sign it again as it was done, with the reason why it is signed late. If it was not, tell quality.',
    paragraph: 'ORO.MLR.105; M.A.305; common practice, no source for the words',
  },
} as const satisfies Record<string, RefusalEntry>;
