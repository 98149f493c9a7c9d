import { Temporal } from 'temporal-polyfill';
import { dayOf, startOfDay } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { readInstant } from './instant.js';
import type { Limit } from './interval-text.js';
import type { Start } from './start-of-counting.js';

/** A fixed end of a counted clock: that of its calendar days, or of its hours. */
export interface FixedEnd {
  limit: Limit;
  ends: Temporal.Instant;
  lastDay: Temporal.PlainDate | null;
}

/** The end of a limit that runs by itself; null for one that is counted from use. */
export function fixedEnd(limit: Limit, start: Pick<Start, 'instant' | 'day'>, base: string): FixedEnd | null {
  if (limit.unit === 'hours') return { limit, ends: start.instant.add({ hours: limit.amount }), lastDay: null };
  if (limit.unit !== 'calendar-days') return null;
  const lastDay = start.day.add({ days: limit.amount });
  return { limit, ends: startOfDay(lastDay.add({ days: 1 }), base), lastDay };
}

/** The end of a limit of this clock. A calendar clock keeps its own, which an extension may have moved. */
export function endOf(limit: Limit, clock: RectificationClock): Temporal.Instant {
  if (clock.kind === 'calendar') return readInstant('endsAt', clock.endsAt);
  const instant = readInstant('startsAt', clock.startsAt);
  const end = fixedEnd(limit, { instant, day: dayExcluded(clock) }, clock.base);
  if (!end) throw new Error(`${limit.unit} have no fixed end`);
  return end.ends;
}

/** The day that calendar days do not count: that of a stated start, else the day of discovery. */
export function dayExcluded(clock: RectificationClock): Temporal.PlainDate {
  return clock.kind === 'counted' && clock.stated !== undefined && 'at' in clock.stated
    ? dayOf(readInstant('startsAt', clock.startsAt), clock.base)
    : Temporal.PlainDate.from(clock.dayOfDiscovery);
}
