/**
 * Everything that can happen to a defect, as it is written down.
 *
 * An act is written once, with its result (the window, not the request for one), and never altered: a correction is an
 * act of its own that points at the one it corrects, which stays readable. The life of a defect is the list of its acts
 * and nothing else.
 */
import type { Aircraft, CorrectableField, FailedItem, Part } from './act-base.js';
import type { ActBase, LeftItem } from './act-parts.js';
import type { Basis } from './basis.js';
import type { CardAct } from './cards/card-acts.js';
import type { Actor, Signature } from './people.js';
import type { SignedLimit } from './signed-limit.js';
import type {
  CorrectionAsked,
  GenerallyVerified,
  GivenOver,
  Joined,
  StaysAsWritten,
  TakenOver,
} from './acts-of-things.js';

export type * from './cards/card-acts.js';
export type { LeftItem, Times } from './act-parts.js';
export type {
  Aircraft,
  CorrectableDetail,
  CorrectableField,
  CorrectableWord,
  DocumentOwner,
  FailedItem,
  Owner,
  Part,
} from './act-base.js';
export type {
  CorrectionAsked,
  GenerallyVerified,
  GivenOver,
  Joined,
  StaysAsWritten,
  TakenOver,
} from './acts-of-things.js';

/** Where its flight was when it was found: not moving, on the way to the take-off, or after it. */
export type WhenFound = 'before-moving' | 'own-power' | 'after-take-off';

export interface WrittenUp extends ActBase<'written-up', Actor | Signature> {
  aircraft: Aircraft;
  origin: 'technician' | 'crew' | 'cabin';
  /** Number of the paper or electronic log sheet. */
  sheet: string | null;
  description: string;
  /** System (ATA chapter), two digits; null while nobody has said. */
  system: string | null;
  faultMessage: string | null;
  /** Absent while nobody has said. */
  whenFound?: WhenFound;
}

export interface Identified extends ActBase<'identified', Actor | Signature> {
  item: FailedItem;
}

export interface Deferred extends ActBase<'deferred'> {
  basis: Basis;
  item: FailedItem;
  /** One for each interval that counts; all of them must hold. */
  limits: SignedLimit[];
  concurrence: Signature | null;
}

export interface ProcedureSigned extends ActBase<'procedure-signed'> {
  /** `<entry>/<row>/<procedure id>`, or `<reference>/<procedure id>` for a basis other than the MEL. */
  work: string;
  doneAt: string;
  /** Good until (exclusive); null when it is good for as long as the row says. */
  validUntil: string | null;
  /** The flight it was done for, where it is owed before each departure. */
  forFlight: string | null;
  leaves: LeftItem[];
}

export interface PlacardFitted extends ActBase<'placard-fitted', Actor | Signature> {
  text: string;
  item: LeftItem;
}

export interface PlacardRemoved extends ActBase<'placard-removed'> {
  item: string;
}

export interface LeftOnTheAircraft extends ActBase<'left-on-the-aircraft'> {
  items: LeftItem[];
}

export interface Undone extends ActBase<'undone'> {
  items: string[];
}

export interface RowChanged extends ActBase<'row-changed'> {
  basis: Basis;
  item: FailedItem;
  /** One for each interval that counts; all of them must hold. */
  limits: SignedLimit[];
  reason: string;
  concurrence: Signature | null;
  /** The closed defect of another unit that had forced the stricter row; only then may the deadline move back. */
  causeClosed: string | null;
  /** The operator's setting in force: the earliest window signed for the unit, or the row's own from the same day. */
  policy: 'keep-earliest' | 'own-window';
}

/** Why an operator asks for more time; granted by somebody else. */
export interface ExtensionRequest {
  by: Actor;
  requestedAt: string;
  /** The reason, which must lie outside the operator's control. */
  reason: string;
  outsideOperatorsControl: boolean;
  whyNotFixed: string;
  plan: string;
}

export interface Extended extends ActBase<'extended'> {
  request: ExtensionRequest;
  /** The operator's approved procedure under which it is granted. */
  procedure: string;
  /** The authority's agreement, where the rules ask for one beforehand. */
  agreement: string | null;
  /** How often the rules in force let the operator extend; null where they set no number. */
  timesAllowed: number | null;
  /** The limits in force from now on, in the order in which they were signed. */
  limits: SignedLimit[];
  /** When the authority must have been told, ISO 8601; null when the setting names no such time. */
  noticeDueAt: string | null;
}

/** What an authority allows beyond the deadline. It moves no deadline: it carries the flights it names and no others. */
export interface AuthorityGranted extends ActBase<'authority-granted'> {
  document: { kind: 'permit' | 'authority-document'; number: string; authority: string };
  limit: string;
  conditions: string[];
  from: string;
  /** Exclusive. */
  until: string;
  /** How many flights it is good for; null when it names no number. */
  flights: number | null;
  /** The kinds of flight it allows, such as "ferry"; null when it names none. */
  kindsOfFlight: string[] | null;
}

/** The failed part moved to another position: the defect, its clock and what is left on the aircraft go with it. */
export interface Transferred extends ActBase<'transferred'> {
  fromUnit: string;
  toUnit: string;
  parts: Part[];
  reason: string;
  /** Where each thing that is left for it stands now: placards, breakers and pins go with the part. */
  moved: { item: string; where: string }[];
}

/** The same defect written on another sheet or another check. */
export interface ReEntered extends ActBase<'re-entered', Actor | Signature> {
  sheet: string;
  reason: string;
}

/** Another shift, station or organisation answers for it from now on. */
export interface HandedOver extends ActBase<'handed-over', Actor | Signature> {
  to: string;
  note: string;
}

export interface Rectification extends ActBase<'rectification'> {
  workDone: string;
  parts: Part[];
  /** Manual reference with its revision. */
  reference: string;
  /** False while something of the work is still to be done. */
  complete: boolean;
  testAsked: boolean;
  inspectionAsked: boolean;
}

export interface Tested extends ActBase<'tested'> {
  test: string;
  result: 'good' | 'not-good';
  readings: string[];
}

export interface Inspected extends ActBase<'inspected'> {
  findings: string;
  /** Why one of those who did the work inspected it: an unforeseen case, recorded. Absent when somebody else did. */
  unforeseen?: string;
}

/** The system is back in its normal configuration: everything altered for the deferral is undone. */
export interface Restored extends ActBase<'restored'> {
  reference: string;
}

export interface Released extends ActBase<'released'> {
  /** `stays-open`: the work is released, the defect is not rectified by it. */
  outcome: 'closed' | 'stays-open';
  /** What stays open, in words; incomplete work is stated in the release (145.A.50(e)). */
  staysOpen: string[];
  /** True when a B2 holder releases a minor task of their own under 66.A.20(a)4. */
  asMinorTask: boolean;
}

export interface NoFaultFound extends ActBase<'no-fault-found'> {
  checks: string;
  reference: string;
}

export interface RaisedInError extends ActBase<'raised-in-error'> {
  reason: string;
}

/** An approved reset followed by a good test. It is a rectification and counts towards repeats. */
export interface ResetAndWatch extends ActBase<'reset-and-watch'> {
  reference: string;
  test: string;
  result: 'good' | 'not-good';
  watch: string;
}

export interface Corrected extends ActBase<'corrected'> {
  /** Id of the act it corrects. */
  act: string;
  field: CorrectableField;
  /** The thing left on the aircraft that was mistyped; null for other corrections. */
  item: string | null;
  /** Which of several, from 0: the second part, the third line of what stays open. Absent: the first or only one. */
  part?: number;
  was: string | null;
  now: string;
  reason: string;
  /** A second person who looked: needed for things left on the aircraft, and for what decides something. */
  secondLook: Signature | null;
  /** The limits counted anew from an earlier log time; null when the clock is not touched. */
  limits: SignedLimit[] | null;
}

export type Act =
  | WrittenUp
  | Identified
  | Deferred
  | ProcedureSigned
  | PlacardFitted
  | PlacardRemoved
  | LeftOnTheAircraft
  | Undone
  | RowChanged
  | Extended
  | AuthorityGranted
  | Transferred
  | ReEntered
  | HandedOver
  | Rectification
  | Tested
  | Inspected
  | Restored
  | Released
  | NoFaultFound
  | RaisedInError
  | ResetAndWatch
  | Corrected
  | CardAct
  | CorrectionAsked
  | StaysAsWritten
  | TakenOver
  | GivenOver
  | GenerallyVerified
  | Joined;

export type ActKind = Act['kind'];
export type ActOf<Kind extends ActKind> = Extract<Act, { kind: Kind }>;
