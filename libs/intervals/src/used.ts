import { checkWholeNumbers } from './whole-numbers.js';

/**
 * How much of an interval has been used since its start. A counter that is absent is not known, which is never zero.
 *
 * Minutes are integers. Days are YYYY-MM-DD in the base of the clock.
 */
export interface Used {
  flights?: number;
  flightDays?: number;
  /** The last day that was counted as a flight-day; null when there was none. Another flight on it uses nothing more. */
  lastFlightDayOn?: string | null;
  flightMinutes?: number;
  blockMinutes?: number;
  cycles?: number;
}

/** Every counter, as counted from a list of legs. */
export type CountedUse = Required<Used>;

/** Refuses counters that are no whole numbers from 0 up. Throws IntervalInputError. */
export function checkUsed(used: Used): void {
  checkWholeNumbers('used', used, ['flights', 'flightDays', 'flightMinutes', 'blockMinutes', 'cycles']);
}
