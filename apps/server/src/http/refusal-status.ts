/** The one place where a refusal of the trade gets an HTTP status; each code has one, whatever the case. */
import type { RefusalCode } from '#deferrals';

/** What was sent cannot be right, whatever else is true. */
const WRONG_INPUT: readonly RefusalCode[] = [
  'not-an-instant',
  'text-missing',
  'interval-cannot-be-computed',
  'start-of-days-stated',
  'start-stated-later',
  'recorded-in-the-future',
  'occurred-after-recorded',
  'late-entry-needs-reason',
  'signed-in-the-future',
  'no-unit-named',
  'unit-not-installed',
  'extension-asked-after-grant',
  'grant-window-empty',
  'declined-without-reason',
  'step-unknown',
  'step-done-otherwise',
  'minutes-not-shown',
  'reading-missing',
  'second-person-missing',
  'second-person-same',
  'equipment-not-stated',
  'certificate-missing',
  'correction-not-one-of',
  'correction-changes-nothing',
];

/** Somebody else may do it. */
const WRONG_PERSON: readonly RefusalCode[] = [
  'signature-missing',
  'no-authorisation',
  'authorisation-of-another-person',
  'authorisation-does-not-cover',
  'authorisation-not-valid-then',
  'one-off-for-another-job',
  'one-off-used',
  'same-person-concurring',
  'same-person-granting',
  'same-person-inspecting',
  'same-person-looking',
  'control-must-sign',
  'only-own-work',
  'role-does-not-accept',
  'own-inspection-never',
  'same-person-taking',
  'step-needs-licence',
  'second-person-unsigned',
  'second-person-needs-licence',
  'inspector-did-it',
  'card-steps-of-others',
];

/** Everything else conflicts with how the defect or the aircraft stands. */
export function refusalStatus(code: RefusalCode): 403 | 409 | 422 {
  if (WRONG_INPUT.includes(code)) return 422;
  return WRONG_PERSON.includes(code) ? 403 : 409;
}
