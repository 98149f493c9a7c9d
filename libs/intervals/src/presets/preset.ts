import type { CountsFrom } from '../counts-from.js';

/** How well a value is known: read, quoted, reported, derived by us, remembered, or common practice without a source. */
export type ValueMark = 'SEEN' | 'SEEN-Q' | 'SEEN-2' | 'DERIVED' | 'FROM MEMORY' | 'COMMON PRACTICE';

/** One setting with where it comes from. */
export interface Sourced<T> {
  value: T;
  source: string;
  mark: ValueMark;
}

/** Up to where the MEL decides about the flight on which something fails; the operator's own MEL says it where no text does. */
export type MelStops = 'take-off-power' | 'commencement-of-flight' | 'not-settled';

export type PresetName = 'easa' | 'faa' | 'tcca-2006' | 'tcca-2022';

/** When the authority must have been told: so many hours on the clock, calendar months, or the end of a working day. */
export type NoticeRule = { hours: number } | { months: number } | { workingDays: number };

/** What an operator may grant itself beyond the interval, under a procedure that the authority approved. */
export interface ExtensionRules {
  categories: Sourced<readonly ('B' | 'C' | 'D')[]>;
  /** How often one deferral may be extended; null where the rules set no number. */
  times: Sourced<number | null>;
  /** At most this many times the interval of the operator's own list, counted from the old deadline. */
  longest: Sourced<'own-interval'>;
  notice: Sourced<NoticeRule | null>;
  /** The authority must agree to each one before it is granted. */
  needsAgreement: Sourced<boolean>;
  /** The paragraph that a refusal cites. */
  paragraph: string;
}

/**
 * The rules of one regime as data. An operator picks a preset; a value that differs from it is the operator's own, and
 * is recorded with its reason elsewhere.
 */
export interface Preset {
  name: PresetName | 'custom';
  countsFrom: Sourced<CountsFrom>;
  /** Whether a flight must only leave, or also arrive, inside the interval. */
  expiryInFlight: Sourced<'departure-inside' | 'arrival-inside'>;
  /** What a flight hour of an interval is: off the ground to touch-down, or off blocks to on blocks. */
  hourClock: Sourced<'airborne' | 'block'>;
  /** Whether the planned flight's own time must fit into what is left, or only its departure. */
  hoursCountedAt: Sourced<'arrival' | 'departure'>;
  /** Whether an off-blocks that came back to the ramp makes its day a flight-day. */
  rampReturnMakesFlightDay: Sourced<boolean>;
  flightDay: Sourced<'calendar-day' | 'from-first-out'>;
  /** Whether counted hours may reach their limit to the minute. */
  equalityAtLimit: Sourced<'inside' | 'outside'>;
  /** Stations are the operator's own: no regime names them, and until the operator does they are not known. */
  designatedStations: Sourced<readonly string[] | null>;
  bases: Sourced<readonly string[] | null>;
  /** How long the aircraft stands at a base until that is an opportunity. */
  opportunityMinutes: Sourced<number>;
  /** Where the MEL stops deciding about the flight on which something fails. */
  melStops: Sourced<MelStops>;
  extension: ExtensionRules;
}
