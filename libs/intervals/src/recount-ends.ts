import { Temporal } from 'temporal-polyfill';
import { minutesBetween, startOfDay } from './calendar-day.js';
import { sayEnd } from './calendar-window.js';
import type { RectificationClock } from './clock.js';
import { dayExcluded } from './fixed-end.js';
import { readInstant, writeInstant } from './instant.js';

/** The first instant, UTC, of a calendar day (YYYY-MM-DD) in a zone, by some version of the time-zone data. */
export type StartOfDayIn = (day: string, base: string) => string;

/** By the zone data of this machine. */
export const startOfDayHere: StartOfDayIn = (day, base) =>
  writeInstant(startOfDay(Temporal.PlainDate.from(day), base));

/**
 * The same clock under another version of the time-zone data. Its days are the legal truth and stay; only the instants at
 * which they begin and end are found anew. `startOfDayIn` is the zone data, so that a test can bring other ones.
 */
export function recountEnds<Clock extends RectificationClock>(
  clock: Clock,
  tzdb: string,
  startOfDayIn: StartOfDayIn = startOfDayHere,
): Clock {
  if (clock.kind === 'calendar') {
    const startsAt = startOfDayIn(clock.firstDay, clock.base);
    return { ...clock, tzdb, startsAt, ...endingAt(clock, startsAt, endOfDay(clock.lastDay, clock, startOfDayIn)) };
  }
  const ends = clock.limits.flatMap(({ amount, unit }) => {
    if (unit === 'hours') return [writeInstant(readInstant('startsAt', clock.startsAt).add({ hours: amount }))];
    if (unit !== 'calendar-days') return [];
    return [endOfDay(dayExcluded(clock).add({ days: amount }).toString(), clock, startOfDayIn)];
  });
  const order = ends.sort((one, other) =>
    Temporal.Instant.compare(readInstant('end', one), readInstant('end', other)),
  );
  const end = clock.joint === 'last-of' ? order.at(-1) : order[0];
  if (clock.endsAt === null || end === undefined) return { ...clock, tzdb };
  return { ...clock, tzdb, ...endingAt(clock, clock.startsAt, end) };
}

function endOfDay(day: string, { base }: RectificationClock, startOfDayIn: StartOfDayIn): string {
  return startOfDayIn(Temporal.PlainDate.from(day).add({ days: 1 }).toString(), base);
}

function endingAt(clock: RectificationClock, startsAt: string, endsAt: string) {
  const lengthMinutes = minutesBetween(readInstant('startsAt', startsAt), readInstant('endsAt', endsAt));
  return { endsAt, lengthMinutes, lengthHours: lengthMinutes / 60, explanation: explained(clock, endsAt) };
}

function explained({ explanation, endsAt: before, base }: RectificationClock, endsAt: string): string {
  if (before === endsAt) return explanation;
  return `${explanation} Counted again with other time-zone data: ${sayEnd(readInstant('endsAt', endsAt), base)}.`;
}
