import type { Act } from '../acts.js';
import { isSignature, type Signature } from '../people.js';

/** The signatures that an act was given: its signer's, and the second person's at a step of a work card. */
export const signaturesOf = (act: Act): Signature[] =>
  [act.by, ...(act.kind === 'card-stepped' && act.second ? [act.second] : [])].filter(isSignature);
