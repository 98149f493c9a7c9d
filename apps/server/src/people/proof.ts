import type { SignatureMethod } from '#deferrals';

/** How the person who signs was proved to be that person, for this one signature. */
export interface Proof {
  /** The form of the signature, kept with it (published requirement E-17). */
  method: SignatureMethod;
  /** The sign-in, and what was shown under it, that the signature leads back to (E-08). */
  evidence: string;
}
