import { Temporal } from 'temporal-polyfill';

/** Instants in here are whole minutes since 1970-01-01T00:00Z, days are whole days since then: messages know no more. */
export const minutesPerDay = 1440;

/** `2026-01-21T11:00:00Z`. */
export function writeMinute(minute: number): string {
  return Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toString();
}

/** `2026-01-21`. */
export function writeDay(day: number): string {
  return Temporal.PlainDate.from('1970-01-01').add({ days: day }).toString();
}

export function dayOfMonth(day: number): number {
  return Temporal.PlainDate.from('1970-01-01').add({ days: day }).day;
}

export function dayOfMinute(minute: number): number {
  return Math.floor(minute / minutesPerDay);
}

/** The first instant not before `floor` at which clocks in UTC show this minute of the day. */
export function firstAtOrAfter(clock: number, floor: number): number {
  return floor + modulo(clock - floor, minutesPerDay);
}

/** The last instant not after `ceiling` at which clocks in UTC show this minute of the day. */
export function lastAtOrBefore(clock: number, ceiling: number): number {
  return ceiling - modulo(ceiling - clock, minutesPerDay);
}

function modulo(number: number, by: number): number {
  return ((number % by) + by) % by;
}
