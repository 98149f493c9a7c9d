/** What may be asked for by a correction: what it puts right, and what it refuses with what to do instead. */
import { type CorrectableField, FIELD_WORDS, NEVER_CORRECTED } from '#deferrals';

/** The place and the number of what is left on the aircraft are corrected in its register. */
export type FieldAsked = Exclude<CorrectableField, 'where' | 'tag'> | (typeof NEVER_CORRECTED)[number];

const words = Object.keys(FIELD_WORDS) as CorrectableField[];

export const FIELDS_ASKED: readonly FieldAsked[] = [
  ...words.filter((field) => field !== 'where' && field !== 'tag'),
  ...NEVER_CORRECTED,
];

/** The most characters of each; what is not named has 1000. */
const MOST: Partial<Record<CorrectableField, number>> = {
  description: 4000,
  sheet: 40,
  faultMessage: 200,
  unit: 40,
  reference: 200,
  issuedBy: 200,
  placardText: 400,
  workDone: 4000,
  partNumber: 80,
  serialOn: 80,
  serialOff: 80,
  certificate: 80,
  staysOpen: 400,
  checks: 2000,
  number: 200,
  authority: 200,
};

export function mostOf(field: CorrectableField): number {
  return MOST[field] ?? 1000;
}
