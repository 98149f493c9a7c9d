/**
 * What can happen to a work card under a defect, as it is written down: started, its steps done one by one, inspected,
 * signed or stopped. The card stands in the act that started it, as it read that day.
 */
import type { Card } from '#mel';
import type { ActBase, LeftItem } from '../act-parts.js';
import type { Actor, Authorisation, Signature } from '../people.js';

/** A revision of a manual, as it was recorded. A `task` of null speaks for the whole manual. */
export interface ManualRevision {
  manual: string;
  task: string | null;
  revision: string;
  /** Calendar day, YYYY-MM-DD. */
  issuedOn: string;
}

/** An authorised person held a card, written from one revision, against a newer one, and found it still right. */
export interface CardConfirmation {
  card: string;
  /** The revision that the card cites. */
  wrote: string;
  /** The revision it was held against. */
  against: string;
  by: Signature;
}

export interface CardStarted extends ActBase<'card-started', Actor> {
  card: Card;
  /** The work that it does, `<entry>/<row>/<procedure id>`; null for a card of a library. */
  procedure: string | null;
  /** The flight it is done for, where it is owed before each departure. */
  forFlight: string | null;
  /** The authorisation of whoever started it, as it stood then. */
  on: Authorisation;
}

export interface ReadingTaken {
  id: string;
  value: number;
  unit: string;
}

/** What was done in a step. Each kind of step takes its own. */
export type StepResult =
  | { kind: 'done' }
  | { kind: 'measured'; value: number; unit: string }
  /** `batch` is the batch or serial number of what was fitted new; `certificate` the reference of its release. */
  | { kind: 'renewed'; partNumber: string; batch: string; count: number; certificate?: string }
  /** A wait or a run begins. `minutes`: what the aircraft showed, or what the card says. */
  | { kind: 'begun'; minutes: number }
  | { kind: 'waited' }
  | { kind: 'ran'; readings: ReadingTaken[] }
  | { kind: 'looked'; findings: string }
  /** Counted out. `item` is how it stands in the register; null for what is only counted. */
  | { kind: 'out'; count: number; item: LeftItem | null }
  /** Counted in. `item` is the id of what stood in the register; `number` is what was read on it. */
  | { kind: 'in'; count: number; number: string | null; item: string | null };

/** Which piece of equipment was used in a step. */
export interface EquipmentUsed {
  /** As the card calls it. */
  what: string;
  number: string;
  /** The last day of its calibration, YYYY-MM-DD; null where the card asks for none. */
  calibratedUntil: string | null;
  /** The operator's calendar day on which it was used. */
  usedOn: string;
}

/** A step needs no secret, but nobody does one without the right: `on` is the authorisation as it stood then. */
export interface CardStepped extends ActBase<'card-stepped', Actor> {
  /** Id of the act that started the card. */
  work: string;
  step: string;
  on: Authorisation;
  result: StepResult;
  /** Who was there with whoever did it, where the step needs two: the rule takes nobody who did not sign. */
  second?: Actor | Signature;
  /** What was used, where the card asks which one. */
  used?: EquipmentUsed[];
}

export interface CardInspected extends ActBase<'card-inspected'> {
  work: string;
  step: string;
  findings: string;
}

export interface CardSigned extends ActBase<'card-signed'> {
  work: string;
  /** The newest revision recorded for the card's reference, where it is newer than the card's; otherwise null. */
  newerRevision: ManualRevision | null;
  confirmation: CardConfirmation | null;
}

/** The work on a card ends without being done, with nothing of it left on the aircraft. */
export interface CardStopped extends ActBase<'card-stopped'> {
  work: string;
  reason: string;
}

export type CardAct = CardStarted | CardStepped | CardInspected | CardSigned | CardStopped;
