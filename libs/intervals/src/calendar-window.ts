import type { Temporal } from 'temporal-polyfill';
import { dayExists, minutesBetween, startOfDay } from './calendar-day.js';
import { sayDay, sayDays, sayLocal } from './explain-time.js';
import { writeInstant } from './instant.js';
import type { Recorded } from './recorded.js';

const DAY_MINUTES = 24 * 60;

/** The days after the day of discovery, and the half-open stretch of time that they cover. */
export interface CalendarWindow {
  firstDay: string;
  lastDay: string;
  startsAt: string;
  endsAt: string;
  lengthMinutes: number;
  lengthHours: number;
}

/**
 * `count` consecutive calendar days after `discovery`: no stopwatch, so a day of 23 or 25 hours is one day, and a record
 * late in the evening loses nothing. A day that the zone left out still has its date and is counted (the stricter way).
 */
export function calendarWindow(discovery: Temporal.PlainDate, count: number, base: string): CalendarWindow {
  const first = discovery.add({ days: 1 });
  const last = discovery.add({ days: count });
  const starts = startOfDay(first, base);
  const ends = startOfDay(last.add({ days: 1 }), base);
  const lengthMinutes = minutesBetween(starts, ends);
  return {
    firstDay: first.toString(),
    lastDay: last.toString(),
    startsAt: writeInstant(starts),
    endsAt: writeInstant(ends),
    lengthMinutes,
    lengthHours: lengthMinutes / 60,
  };
}

/** The arithmetic of a calendar window in one sentence. */
export function explainWindow(recorded: Recorded, count: number, base: string): string {
  const first = recorded.day.add({ days: 1 });
  const steps = [
    `${sayRecorded(recorded, base)}, day excluded`,
    sayDays(first, count),
    ...absentDays(first, count, base).map(
      (day) => `${sayDay(day)} did not exist in ${base} and is counted all the same`,
    ),
    sayEnd(startOfDay(first.add({ days: count }), base), base),
  ];
  return `${steps.join(', ')}.`;
}

/** `recorded 26 Jan 2026 10:00 local in Europe/Paris`, with a caution where the reading was odd. */
export function sayRecorded(recorded: Recorded, base: string): string {
  const where = base === 'UTC' ? '' : ` in ${base}`;
  const caution = recorded.caution ? ` (${recorded.caution})` : '';
  return `recorded ${sayLocal(recorded.instant, base)}${where}${caution}`;
}

/**
 * `ends 29 Jan 2026 23:59 local = 2026-01-30T04:59:59Z`: the last second inside, as the published wordings say it. Where
 * the base is UTC both would be the same, and it is said once: `ends 29 Jan 2026 23:59:59 UTC`.
 */
export function sayEnd(ends: Temporal.Instant, base: string): string {
  const lastSecond = ends.subtract({ seconds: 1 });
  if (base === 'UTC') return `ends ${sayLocal(lastSecond, base).replace(' UTC', `:${two(lastSecond)} UTC`)}`;
  return `ends ${sayLocal(lastSecond, base)} = ${lastSecond.toString()}`;
}

function two(instant: Temporal.Instant): string {
  return String(instant.toZonedDateTimeISO('UTC').second).padStart(2, '0');
}

/** A zone leaves out a day rarely, and then the window is nearly a day short: only such a window is searched. */
function absentDays(first: Temporal.PlainDate, count: number, base: string): Temporal.PlainDate[] {
  const length = minutesBetween(startOfDay(first, base), startOfDay(first.add({ days: count }), base));
  if (length > count * DAY_MINUTES - DAY_MINUTES / 2) return [];
  const days = Array.from({ length: count }, (_, index) => first.add({ days: index }));
  return days.filter((day) => !dayExists(day, base));
}
