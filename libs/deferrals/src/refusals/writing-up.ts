import type { RefusalEntry } from './entry.js';

/** Writing a defect in the log, and answering it. */
export const WRITING_UP_REFUSALS = {
  'already-written-up': {
    sentence: 'Defect {defect} was written up at {recordedAt} already; a second entry does not start it again.',
    next: 'Use the entry that exists, or re-enter it on the new sheet: its day stays {recordedAt}.',
    paragraph: 'AMC M.A.403(b)(c); 14 CFR 121.563',
  },
  'recorded-in-the-future': {
    sentence: 'The log time {recordedAt} lies after the time of entry {enteredAt}.',
    next: 'Check the date and the offset on the sheet.',
    paragraph: '14 CFR 121.563',
  },
  'occurred-after-recorded': {
    sentence: 'It cannot have occurred at {occurredAt} when it was in the log at {recordedAt}.',
    next: 'Check both times against the sheet.',
    paragraph: '14 CFR 121.563',
  },
  'late-entry-needs-reason': {
    sentence: 'The log says {recordedAt}, it is entered here {minutesLate} minutes later, and no reason is given.',
    next: 'Say why it is entered late. The day of discovery stays the day in the log.',
    paragraph: 'AMC M.A.305(e); how late is late: operator setting, common practice, no source',
  },
  'write-up-already-answered': {
    sentence: 'Write-up {defect} is answered already: {answer}.',
    next: 'Change the row, rectify or release it; it cannot be answered a second time.',
    paragraph: '14 CFR 121.563',
  },
  'item-not-identified': {
    sentence: 'Nobody has said which item of defect {defect} failed.',
    next: 'Find the entry and the unit first.',
    paragraph: 'ORO.MLR.105',
  },
  'no-unit-named': {
    sentence: 'Entry {entry} is named without any unit.',
    next: 'Name the failed unit, or the units of which one failed.',
    paragraph: 'ORO.MLR.105',
  },
  'unit-not-installed': {
    sentence: 'Unit {unit} is not one of the units of entry {entry} on this aircraft: {installed}.',
    next: 'Choose one of the installed units, or the entry for this configuration.',
    paragraph: 'ORO.MLR.105',
  },
  'item-under-deferral': {
    sentence: 'Defect {defect} is deferred as {current}; another item cannot be put in its place by identifying it.',
    next: 'Change the row with a signature, or transfer the defect if the part was moved.',
    paragraph: 'M.A.403(c)',
  },
  'already-closed': {
    sentence: 'Defect {defect} was closed at {closedAt}: {how}.',
    next: 'Write up a new defect if it came back; this one stays as it is.',
    paragraph: 'AMC M.A.305(e)',
  },
} as const satisfies Record<string, RefusalEntry>;
