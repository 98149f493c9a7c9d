import type { Act } from '../acts.js';
import { isSignature, type Signature } from '../people.js';

/**
 * The signatures that an act was given: its signer's, and the second person's at a step of a work card. A correction that
 * a second person looked at was given that person's; who asked for it signed the asking, an act of its own.
 */
export function signaturesOf(act: Act): Signature[] {
  if (act.kind === 'corrected' && act.secondLook !== null) return [act.secondLook];
  return [act.by, ...(act.kind === 'card-stepped' && act.second ? [act.second] : [])].filter(isSignature);
}
