import type { RefusalEntry } from './entry.js';

/** Something that was given cannot be what it claims to be. */
export const INPUT_REFUSALS = {
  'not-an-instant': {
    sentence: '"{value}" in {where} is no real date and time with an offset.',
    next: 'Give it as 2026-01-26T10:00+01:00, or with Z for UTC.',
    paragraph: 'AC 120-78B: date and time with its time base (from memory)',
  },
  'text-missing': {
    sentence: '{what} is missing.',
    next: 'Write {what} and try again.',
    paragraph: '14 CFR 121.563; M.A.305',
  },
  'interval-cannot-be-computed': {
    sentence: 'The interval cannot be computed: {because}',
    next: 'Correct the value that is named, in the row or in the operator settings.',
    paragraph: 'ORO.MLR.105; 14 CFR 121.628',
  },
  'act-of-another-defect': {
    sentence: 'Act {act} belongs to defect {other}, not to {defect}.',
    next: 'Enter it on defect {other}.',
    paragraph: '14 CFR 121.563',
  },
  'act-entered-twice': {
    sentence: 'Act {act} stands in the history of defect {defect} already.',
    next: 'Read the history again; the act needs no second entry.',
    paragraph: 'AMC M.A.305(e)',
  },
  'history-out-of-order': {
    sentence: 'Act {act} was entered at {enteredAt}, before the act that stands in front of it ({previousAt}).',
    next: 'Read the history in the order in which it was entered.',
    paragraph: 'AMC M.A.305(e)',
  },
  'not-written-up': {
    sentence: 'Defect {defect} was never written up, so nothing can be done about it yet.',
    next: 'Write the defect in the log first.',
    paragraph: '14 CFR 121.563',
  },
} as const satisfies Record<string, RefusalEntry>;
