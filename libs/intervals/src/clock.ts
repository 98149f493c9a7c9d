import type { Category } from './category.js';
import type { CountsFrom } from './counts-from.js';
import type { Limit } from './interval-text.js';
import type { WithinLimit } from './whole-interval.js';

/**
 * A start that a document states: an instant, ISO 8601, or what a counter read then. `reading` is what the same counter
 * read at `readAt`; from there on legs are counted. Counters of hours are in whole minutes.
 */
export type StatedStart = { at: string } | { counter: number; reading: number; readAt: string };

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
 * counted from the legs flown. When the later of several counts, `endsAt` is the latest of the fixed ends, and null when
 * one limit has none.
 */
export interface CountedClock extends ClockOfAnyKind {
  kind: 'counted';
  days: null;
  firstDay: string | null;
  lastDay: string | null;
  /** Hours run, and flights, flight hours and cycles count, from here. */
  startsAt: string;
  /** Under `next-flight` a leg under way at the start uses nothing, otherwise its rest. */
  countsFrom: CountsFrom | 'stated';
  /** Absent: the first of the limits ends it. */
  joint?: 'last-of';
  /** Shorter limits inside it, each until something is done. */
  within?: WithinLimit[];
  /** Of a time-limited dispatch document: hours count at arrival, and nobody at the operator extends it. */
  timeLimited?: true;
  /** Position of the engine whose hours and cycles count; absent: the most that any engine used. */
  engine?: string;
  stated?: StatedStart;
  /** What a stated counter had used of its limit before `startsAt`, in flights, cycles or whole minutes. */
  usedBefore?: number;
  /** Exclusive; the earliest fixed end, null when every limit is counted from use (see above for the later of several). */
  endsAt: string | null;
  lengthMinutes: number | null;
  lengthHours: number | null;
}

export type RectificationClock = CalendarClock | CountedClock;
