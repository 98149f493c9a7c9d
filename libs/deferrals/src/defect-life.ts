/**
 * One defect of one aircraft, from write-up to release.
 *
 * It begins when somebody writes it in the log. From then on the aircraft may not fly until it is answered: rectified and
 * released, deferred on a basis, reset and watched, found to be no fault, or raised in error. A deferral gives it a limit
 * that counts from the day in the log; procedures, placards and things left on the aircraft belong to it until they are
 * undone. It ends with a release or another closing answer, signed, and with nothing of it left on the aircraft. After
 * that only corrections are written, and the originals stay.
 *
 * A life is never changed: each act makes a new one. It is rebuilt from its acts alone.
 */
import type {
  Act,
  Aircraft,
  AuthorityGranted,
  CorrectionAsked,
  Extended,
  FailedItem,
  GenerallyVerified,
  Inspected,
  LeftItem,
  ProcedureSigned,
  Rectification,
  Restored,
  Tested,
  WhenFound,
} from './acts.js';
import type { Basis } from './basis.js';
import type { CardWork } from './cards/card-life.js';
import type { Actor, Signature } from './people.js';
import type { SignedLimit } from './signed-limit.js';

/** A procedure that was done, by itself or by its card. */
export type ProcedureDone = Omit<ProcedureSigned, 'kind' | 'defect'>;

/** The deferral in force. */
export interface Deferral {
  basis: Basis;
  signedBy: Signature;
  /** Id of the act that put this basis in force. */
  act: string;
  deferredAt: string;
}

/** Work begun and not yet released. What was seen before the last piece of work does not count for it. */
export interface OpenWork {
  openedAt: string;
  done: readonly Rectification[];
  tested: Tested | null;
  inspected: Inspected | null;
  restored: Restored | null;
  /** The look over the aircraft for tools, panels and everything in the register. */
  verified: GenerallyVerified | null;
}

export interface Closing {
  how: 'rectified and released' | 'no fault found' | 'raised in error' | 'reset and watched' | 'joined to another';
  at: string;
  by: Signature;
}

export interface DefectLife {
  defect: string;
  aircraft: Aircraft;
  acts: readonly Act[];
  /** As written, corrections applied. */
  recordedAt: string;
  occurredAt: string | null;
  enteredAt: string;
  writtenBy: Actor | Signature;
  origin: 'technician' | 'crew' | 'cabin';
  sheet: string | null;
  description: string;
  system: string | null;
  faultMessage: string | null;
  /** Null while nobody has said; never guessed from the times. */
  whenFound: WhenFound | null;
  item: FailedItem | null;
  deferral: Deferral | null;
  /** Every basis that was ever signed for it, the first one first. */
  bases: readonly Basis[];
  /** All of them must hold. */
  limits: readonly SignedLimit[];
  extensions: readonly Extended[];
  grants: readonly AuthorityGranted[];
  procedures: readonly ProcedureDone[];
  /** Every work card that was started for it, the first one first. */
  cards: readonly CardWork[];
  left: readonly LeftItem[];
  /** True once anything was altered on the aircraft for it: then somebody must sign that all is back to normal. */
  altered: boolean;
  /** Corrections that wait for a second person to look at the aircraft. */
  asked: readonly CorrectionAsked[];
  work: OpenWork | null;
  /** Who answers for it now: a shift, a station, an organisation. */
  heldBy: string | null;
  closed: Closing | null;
}
