/** What happens to things left on the aircraft besides fitting and undoing, and what the last look before a release saw. */
import type { ActBase, LeftItem } from './act-parts.js';
import type { CorrectableField, Owner } from './act-base.js';

/** Things that are on the aircraft already belong to this defect from now on: to it alone, or to it as well. */
export interface TakenOver extends ActBase<'taken-over'> {
  items: LeftItem[];
  from: Owner | null;
  /** True when the other one keeps them too. */
  together: boolean;
  reason: string;
}

/** Things belong to this defect no longer; they stay on the aircraft for another owner. */
export interface GivenOver extends ActBase<'given-over'> {
  items: string[];
  to: Owner;
  reason: string;
}

/** A first person says that something stands wrong; it is corrected once a second person looked at the aircraft. */
export interface CorrectionAsked extends ActBase<'correction-asked'> {
  /** Id of the act that is wrong. */
  act: string;
  field: CorrectableField;
  item: string | null;
  /** Which of several, from 0; absent: the first or only one. */
  part?: number;
  was: string | null;
  now: string;
  reason: string;
}

/** A correction that was asked for is not made: what was written is right. */
export interface StaysAsWritten extends ActBase<'stays-as-written'> {
  /** Id of the act that asked. */
  asked: string;
  reason: string;
}

/** The look over the aircraft after the work: tools, panels, and everything in the register. 145.A.48. */
export interface GenerallyVerified extends ActBase<'generally-verified'> {
  toolsAccounted: boolean;
  panelsClosed: boolean;
  /** Everything left for this defect was counted against the register. */
  registerChecked: boolean;
  remarks: string;
}

/** The write-up is of a defect that is open already, and goes on as an entry of that one. */
export interface Joined extends ActBase<'joined'> {
  /** The defect that it is an entry of. */
  other: string;
  reason: string;
}
