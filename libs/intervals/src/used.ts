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
  /** When the last flight-day began, where a flight-day is 24 hours from the first off-blocks; null when there was none. */
  lastFlightDayStartsAt?: string | null;
  /** Of the engine that the interval is about. */
  engineMinutes?: number;
  engineCycles?: number;
  /** Departures from designated stations, and departures after an opportunity at a base, since the start. */
  designatedDepartures?: number;
  baseOpportunities?: number;
  /** Where the aircraft stands and since when; absent when not known. */
  station?: string;
  standsSince?: string;
  /** What was done of that which a shorter limit inside the interval waits for, such as `M1`. */
  done?: readonly string[];
}

/** As counted from a list of legs: what every clock needs is there, the rest where the clock asks for it. */
export type CountedUse = Used &
  Required<Pick<Used, 'flights' | 'flightDays' | 'lastFlightDayOn' | 'flightMinutes' | 'blockMinutes' | 'cycles'>>;

const COUNTERS = [
  'flights',
  'flightDays',
  'flightMinutes',
  'blockMinutes',
  'cycles',
  'engineMinutes',
  'engineCycles',
  'designatedDepartures',
  'baseOpportunities',
] as const;

/** Refuses counters that are no whole numbers from 0 up. Throws IntervalInputError. */
export function checkUsed(used: Used): void {
  checkWholeNumbers('used', used, [...COUNTERS]);
}
