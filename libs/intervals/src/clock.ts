import type { Category } from './category.js';
import type { Limit } from './interval-text.js';

/** From when use is counted: FAA and EASA text say from the deferral, Canadian text says with the next flight. */
export type CountsFrom = 'record' | 'next-flight';

interface ClockOfAnyKind {
  category: Category;
  /** As parseInterval reads it; for B, C, D the days that really count. */
  interval: string;
  limits: Limit[];
  /** The instant of the record, UTC. */
  recordedAt: string;
  /** Calendar day of discovery in `base`, YYYY-MM-DD. */
  dayOfDiscovery: string;
  /** UTC or one IANA zone. */
  base: string;
  /** Version of the time-zone data that the instants were computed with. */
  tzdb: string;
  /** The arithmetic, step by step, in one sentence. */
  explanation: string;
}

/**
 * A rectification interval in calendar days only. It begins with the record of the defect, and nothing restarts it; only
 * an extension moves its end.
 *
 * Half-open: from the first instant of the day after discovery to the first instant of the day after the last day.
 * `lastDay` is the legal truth, `endsAt` follows from it and the zone data.
 */
export interface CalendarClock extends ClockOfAnyKind {
  kind: 'calendar';
  /** The interval's own length in days, whatever extensions were added since. */
  days: number;
  firstDay: string;
  lastDay: string;
  startsAt: string;
  /** Exclusive. */
  endsAt: string;
  lengthMinutes: number;
  lengthHours: number;
}

/**
 * A rectification interval of category A with at least one limit that is not calendar days: flights, flight-days,
 * cycles, flight hours, or hours on the clock. What has a fixed end (calendar days, hours) gives `endsAt`; the rest is
 * counted from the legs flown.
 */
export interface CountedClock extends ClockOfAnyKind {
  kind: 'counted';
  days: null;
  firstDay: string | null;
  lastDay: string | null;
  /** The instant of the record: hours run, and flights, flight hours and cycles count, from here. */
  startsAt: string;
  /** Whether a leg under way at the record still counts its rest (`record`), or counting waits for the next flight. */
  countsFrom: CountsFrom;
  /** Exclusive; the earliest fixed end, null when every limit is counted from use. */
  endsAt: string | null;
  lengthMinutes: number | null;
  lengthHours: number | null;
}

export type RectificationClock = CalendarClock | CountedClock;
