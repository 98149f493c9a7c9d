/**
 * What happens to things left on one aircraft that belong to no defect, and the hand-over of the whole register.
 *
 * They are written in order in the history of the aircraft, as the acts on a defect are in its own: once, and for ever.
 */
import type { Aircraft, DocumentOwner, Owner } from '../act-base.js';
import type { LeftItem, Times } from '../act-parts.js';
import type { Actor, Signature } from '../people.js';

interface RegisterActBase<Kind extends string, By extends Actor | Signature = Signature> extends Times {
  kind: Kind;
  id: string;
  aircraft: Aircraft;
  by: By;
}

/** Left altered under a modification, a directive or a permit. */
export interface Fitted extends RegisterActBase<'fitted'> {
  items: LeftItem[];
  owner: DocumentOwner;
}

/** Somebody found a thing on the aircraft of which nobody knows the owner: it stays on the ground until it has one. */
export interface Found extends RegisterActBase<'found', Actor | Signature> {
  items: LeftItem[];
  remarks: string;
}

export interface Removed extends RegisterActBase<'removed'> {
  items: string[];
}

/** Another person looked and saw that it is undone. */
export interface RemovalSeen extends RegisterActBase<'removal-seen'> {
  items: string[];
}

/** Taken over from a defect, or from nobody, under a document. */
export interface Adopted extends RegisterActBase<'adopted'> {
  items: LeftItem[];
  owner: DocumentOwner;
  from: Owner | null;
  reason: string;
}

/** Given over to a defect: it belongs to the register's own documents no longer. */
export interface HandedOn extends RegisterActBase<'handed-on'> {
  items: string[];
  to: Owner;
  reason: string;
}

/** The document ended or was withdrawn: whatever is still altered under it belongs to nobody. */
export interface DocumentEnded extends RegisterActBase<'document-ended'> {
  owner: DocumentOwner;
  reason: string;
}

export interface ThingCorrectionAsked extends RegisterActBase<'thing-correction-asked'> {
  item: string;
  field: 'where' | 'tag';
  was: string;
  now: string;
  reason: string;
}

/** Corrected after a second person looked at the aircraft. */
export interface ThingCorrected extends RegisterActBase<'thing-corrected'> {
  /** Id of the act that asked for it. */
  asked: string;
  secondLook: Signature;
}

/** A correction that was asked for is not made: what the register says is right. */
export interface ThingStaysAsWritten extends RegisterActBase<'thing-stays-as-written'> {
  /** Id of the act that asked for it. */
  asked: string;
  reason: string;
}

/** One line of what a shift hands over. */
export interface HandedLine {
  id: string;
  words: string;
  owner: string;
}

/** The shift that leaves says what is left on the aircraft and what is open. */
export interface ShiftGiven extends RegisterActBase<'shift-given'> {
  left: HandedLine[];
  /** Open items and open work, in words. */
  open: string[];
  to: string;
  note: string;
}

/** The shift that comes has read each line. */
export interface ShiftTaken extends RegisterActBase<'shift-taken'> {
  given: string;
  remarks: string;
}

export type RegisterAct =
  | Fitted
  | Found
  | Removed
  | RemovalSeen
  | Adopted
  | HandedOn
  | DocumentEnded
  | ThingCorrectionAsked
  | ThingCorrected
  | ThingStaysAsWritten
  | ShiftGiven
  | ShiftTaken;
export type RegisterActKind = RegisterAct['kind'];
export type RegisterActOf<Kind extends RegisterActKind> = Extract<RegisterAct, { kind: Kind }>;
