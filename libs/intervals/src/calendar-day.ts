import type { Temporal } from 'temporal-polyfill';

/**
 * The first instant of a calendar day in a zone. Not always 00:00: some zones skip midnight when clocks go forward, and
 * a day that a zone left out altogether begins where the next one does.
 */
export function startOfDay(day: Temporal.PlainDate, base: string): Temporal.Instant {
  return day.toZonedDateTime(base).toInstant();
}

/** The calendar day on which an instant falls in a zone. */
export function dayOf(instant: Temporal.Instant, base: string): Temporal.PlainDate {
  return instant.toZonedDateTimeISO(base).toPlainDate();
}

/** False for a day that a zone left out, as when it moved across the date line. */
export function dayExists(day: Temporal.PlainDate, base: string): boolean {
  return dayOf(startOfDay(day, base), base).equals(day);
}

/** Whole minutes from one instant to another; negative when the second is earlier. A begun minute is not counted. */
export function minutesBetween(from: Temporal.Instant, to: Temporal.Instant): number {
  return Math.trunc((to.epochMilliseconds - from.epochMilliseconds) / 60_000);
}
