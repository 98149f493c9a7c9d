/** What may be corrected, in words that fit into a sentence. */
import type { CorrectableField, CorrectableWord } from '../acts.js';

const OF_WRITE_UP: Readonly<Record<CorrectableWord, string>> = {
  description: 'the description',
  sheet: 'the log sheet',
  system: 'the system (ATA chapter)',
  faultMessage: 'the message shown',
  occurredAt: 'the time it happened',
  recordedAt: 'the time in the log',
  whenFound: 'when it was found',
};

export const FIELD_WORDS: Readonly<Record<CorrectableField, string>> = {
  ...OF_WRITE_UP,
  where: 'the place',
  tag: 'the number on it',
  unit: 'the unit',
  reference: 'the reference',
  issuedBy: 'who issued the document',
  limit: 'the limit of the document',
  placardText: 'the text of the placard',
  workDone: 'the work done',
  partNumber: 'the part number',
  serialOn: 'the serial number fitted',
  serialOff: 'the serial number removed',
  certificate: 'the batch or certificate number',
  test: 'the test',
  findings: 'what was found',
  staysOpen: 'what stays open',
  checks: 'the checks',
  reason: 'the reason',
  watch: 'what is watched',
  remarks: 'the remarks',
  number: 'the number of the document',
  authority: 'the authority',
  doneAt: 'when it was done',
  lateReason: 'why it was entered late',
  whyNotFixed: 'why it was not rectified in time',
  plan: 'the plan to rectify it',
  agreement: "the authority's agreement",
};

export function isWordOfWriteUp(field: CorrectableField): field is CorrectableWord {
  return Object.hasOwn(OF_WRITE_UP, field);
}

export const WORDS_OF_WRITE_UP = Object.keys(OF_WRITE_UP) as CorrectableWord[];
