import type { RefusalEntry } from './entry.js';

/** Signing: whose signature it is and what it may stand for, at that moment. */
export const SIGNING_REFUSALS = {
  'signature-missing': {
    sentence: 'This act ({act}) needs a signature, and {name} gave none.',
    next: 'Read the statement and sign it.',
    paragraph: '14 CFR 121.709(b)(3); 145.A.50(a)',
  },
  'no-authorisation': {
    sentence: '{name} holds no authorisation here, and this act ({act}) needs one.',
    next: 'Ask somebody whose authorisation covers "{act}".',
    paragraph: '145.A.50(a); 14 CFR 121.709(b)(3)',
  },
  'authorisation-of-another-person': {
    sentence: '{name} signs on authorisation {number}, which belongs to somebody else.',
    next: 'Sign on your own authorisation.',
    paragraph: 'AC 120-78B: one signature, one person (from memory)',
  },
  'authorisation-does-not-cover': {
    sentence: 'Authorisation {number} of {name} does not cover {what}; it covers {covers}.',
    next: 'Ask somebody whose authorisation covers {what}.',
    paragraph: '145.A.50(a); 14 CFR 121.709(b)(3)',
  },
  'authorisation-not-valid-then': {
    sentence: 'Authorisation {number} of {name} was not valid at {at}: {because}.',
    next: 'Ask somebody whose authorisation is valid.',
    paragraph: '145.A.50(a); 14 CFR 121.709(b)(3)',
  },
  'one-off-for-another-job': {
    sentence: '{name} signs on the one-off authorisation {number}, which was issued for another job.',
    next: 'Ask somebody whose authorisation covers this job, or who may issue one for it.',
    paragraph: '145.A.30(j)(5) (from memory)',
  },
  'one-off-used': {
    sentence: 'The one-off authorisation {number} of {name} was used at {usedAt}; it stands for one signature.',
    next: 'Ask who issued it for another one, or somebody whose authorisation covers it.',
    paragraph: '145.A.30(j)(5) (from memory)',
  },
  'signed-in-the-future': {
    sentence: '{name} cannot have signed at {signedAt}, after it was entered at {enteredAt}.',
    next: 'Check the time of the signature.',
    paragraph: 'AC 120-78B: date and time of a signature (from memory)',
  },
  'same-person-looking': {
    sentence: '{name} made the correction and cannot be its second pair of eyes.',
    next: 'Ask somebody else to look at the aircraft and sign.',
    paragraph: '145.A.48',
  },
} as const satisfies Record<string, RefusalEntry>;
