import type { RefusalEntry } from './entry.js';

/** Work that is owed again and again. */
export const REPEATING_REFUSALS = {
  'work-entered-after-departure': {
    sentence:
      'Work {work} is entered as done {doneAt}, and the aircraft left since then, at {leftAt}, without it signed.',
    next: 'Say why it was not signed before that departure, or sign it as done now. What was missed stays missed without a reason.',
    paragraph: 'ORO.MLR.105; M.A.305; common practice, no source for the words',
  },
} as const satisfies Record<string, RefusalEntry>;
