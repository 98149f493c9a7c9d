/**
 * A signature stands for an act only if its signer's authorisation covers it at that moment.
 *
 * Covers: the same person, this operator, this aircraft type, this privilege. At that moment: valid and not revoked when
 * signed and, unless it was signed on paper, when entered, so that nothing is signed back into a time when it was valid.
 * 145.A.50(a); 14 CFR 121.709(b)(3); published requirements E-01, E-10, E-15 on electronic signatures.
 */
import type { Aircraft } from '../acts.js';
import { before } from '../instant.js';
import { isSignature, type Actor, type Authorisation, type Privilege, type Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitOneOff, type Job } from './admit-one-off.js';
import { needText } from '../writing-up/need-text.js';

export interface SigningOf {
  aircraft: Aircraft;
  enteredAt: string;
  /** What is signed, for the sentence of a refusal. */
  act: string;
  /** The defect it is signed for; absent where it is for something else, and then no one-off stands for it. */
  job?: Job;
}

/** Throws Refusal. `privilege` null: no signature is needed, but one that is given must be good. */
export function admitSignature(by: Actor | Signature, privilege: Privilege | null, signing: SigningOf): void {
  needText('the identity of the person', by.person);
  needText('the name of the person', by.name);
  if (!isSignature(by)) {
    if (privilege !== null) throw new Refusal('signature-missing', { act: signing.act, name: by.name });
    return;
  }
  needText('the statement that is signed', by.statement);
  if (before(signing.enteredAt, by.signedAt)) {
    throw new Refusal('signed-in-the-future', { name: by.name, signedAt: by.signedAt, enteredAt: signing.enteredAt });
  }
  admitScope(by, privilege, signing.aircraft);
  admitOneOff(by, signing.job ?? null);
  admitValidity(by, by.signedAt);
  if (by.method !== 'paper') admitValidity(by, signing.enteredAt);
}

/** The same for somebody who acts on their own authorisation without signing: a step of a work card. */
export function admitAuthorisation(by: Actor, on: Authorisation, privilege: Privilege, signing: SigningOf): void {
  const { person, name } = by;
  needText('the identity of the person', person);
  needText('the name of the person', name);
  admitScope({ person, name, authorisation: on }, privilege, signing.aircraft);
  admitOneOff({ name, authorisation: on }, signing.job ?? null);
  admitValidity({ name, authorisation: on }, signing.enteredAt);
}

type Holder = Pick<Signature, 'person' | 'name' | 'authorisation'>;

function admitScope(signature: Holder, privilege: Privilege | null, aircraft: Aircraft): void {
  const { authorisation, name, person } = signature;
  const { number } = authorisation;
  if (authorisation.person !== person) throw new Refusal('authorisation-of-another-person', { name, number });
  const notCovered = (what: string): Refusal =>
    new Refusal('authorisation-does-not-cover', { number, name, what, covers: scopeInWords(authorisation) });
  if (authorisation.operator !== aircraft.operator) throw notCovered(`operator ${aircraft.operator}`);
  if (!authorisation.aircraftTypes.includes(aircraft.type)) throw notCovered(`type ${aircraft.type}`);
  if (privilege !== null && !authorisation.privileges.includes(privilege)) throw notCovered(`"${privilege}"`);
}

function admitValidity({ authorisation, name }: Omit<Holder, 'person'>, at: string): void {
  const { number, validFrom, validUntil, revokedAt } = authorisation;
  const notValid = (because: string): Refusal =>
    new Refusal('authorisation-not-valid-then', { number, name, at, because });
  if (before(at, validFrom)) throw notValid(`it begins at ${validFrom}`);
  if (validUntil !== null && !before(at, validUntil)) throw notValid(`it ended at ${validUntil}`);
  if (revokedAt !== null && !before(at, revokedAt)) throw notValid(`it was revoked at ${revokedAt}`);
}

function scopeInWords({ operator, aircraftTypes, privileges }: Authorisation): string {
  return `${privileges.join(', ')} on ${aircraftTypes.join(', ')} of ${operator}`;
}
