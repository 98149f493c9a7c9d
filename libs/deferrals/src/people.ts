/**
 * Who may do what, and the signature by which it was done.
 *
 * An authorisation begins when an organisation grants it to a person for an operator, covers some types, licence
 * categories and privileges for a while, and ends at its last instant or at its revocation, whichever is first. A
 * signature keeps a copy of the authorisation as it stood when it was given: the person may leave, the signature stays
 * good (published requirements E-10 and E-15 on electronic signatures; 14 CFR 121.709(b)(3); 145.A.50(a)).
 */
import type { Role } from '#mel';

/** Licence categories for certifying staff (66.A.20). */
export type LicenceCategory = 'A' | 'B1' | 'B2' | 'C';

/** What an authorisation lets its holder do. */
export type Privilege =
  | 'write-up'
  | 'defer'
  | 'concur'
  | 'sign-procedure'
  | 'inspect'
  | 'release'
  | 'extend'
  | 'judge-combination'
  | 'confirm-card';

/** An organisation and the number of its approval. A person may work for several. */
export interface Organisation {
  name: string;
  approval: string;
}

/** Valid from `validFrom` (inclusive) until `validUntil` or `revokedAt` (exclusive). Instants are ISO 8601 with offset. */
export interface Authorisation {
  number: string;
  operator: string;
  person: string;
  organisation: Organisation;
  aircraftTypes: string[];
  licenceCategories: LicenceCategory[];
  privileges: Privilege[];
  validFrom: string;
  validUntil: string | null;
  revokedAt: string | null;
  /** Absent for one that stands for everything in its scope. */
  oneOff?: OneOff;
}

/** That an authorisation is for one signature on one defect, who issued it, and why. */
export interface OneOff {
  defect: string;
  issuedBy: Actor;
  issuedAt: string;
  because: string;
}

/** A person who did something that needs no authorisation: a crew member who writes a defect, for one. */
export interface Actor {
  /** Identity of one person, never shared and never used again (E-01). */
  person: string;
  name: string;
  role: Role | 'cabin';
  organisation: Organisation;
}

/** The form of a signature (E-17). Every form is authenticated and leads back to the person (E-18). */
export type SignatureMethod = 'password' | 'passkey' | 'single-sign-on' | 'paper';

/** A deliberate act of one authenticated person, with the statement that was shown (E-02, E-04, E-05, E-08). */
export interface Signature extends Actor {
  /** Licence or certificate number, as shown to every reader (E-06). */
  licence: string;
  /** The authorisation as it stood at `signedAt`. */
  authorisation: Authorisation;
  /** What is certified, word for word as shown to the signer. */
  statement: string;
  signedAt: string;
  method: SignatureMethod;
  /** The sign-in or sheet that the signature leads back to (E-08). */
  evidence: string;
}

export function isSignature(by: Actor | Signature): by is Signature {
  return 'authorisation' in by;
}
