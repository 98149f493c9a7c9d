/** Where maintenance control concurs, it is another person who does. Operator setting; common practice, no source. */
import type { SigningOf } from '../signing/admit-signature.js';
import { admitSignature } from '../signing/admit-signature.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `same-person-concurring` or one of those of a signature. */
export function admitConcurrence(concurrence: Signature | null, signedBy: Signature, signing: SigningOf): void {
  if (concurrence === null) return;
  admitSignature(concurrence, 'concur', signing);
  if (concurrence.person === signedBy.person) {
    throw new Refusal('same-person-concurring', { name: concurrence.name });
  }
}
