import type { Leg } from '#intervals';
import type { ProcedureDone } from '../defect-life.js';

/** The aircraft left the blocks, or is planned to. Planned ones carry the times and minutes of the plan. */
export interface Departure {
  /** The flight it is of; null where nobody knows which planned flight it was. */
  flight: string | null;
  /** The station it leaves; null where it is not known. */
  from: string | null;
  flown: boolean;
  leg: Leg;
}

/**
 * One time that repeated work was done, is owed, or was not done.
 *
 * - `done`: signed; `before` is the first departure that it was good for.
 * - `missed`: the aircraft left without it; `departures` tells how often, `before` the first of them.
 * - `not-known`: the aircraft left, and whether the work was still good then is not known. It is no `done`.
 * - `due`: owed before that planned departure.
 * - `coming`: still good; `because` says what is left of it.
 */
export interface Obligation {
  work: string;
  state: 'done' | 'missed' | 'not-known' | 'due' | 'coming';
  before: Departure | null;
  departures: number;
  done: ProcedureDone | null;
  because: string;
}
