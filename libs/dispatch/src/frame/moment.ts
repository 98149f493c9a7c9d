/** Instants as this library needs them: compared, moved by minutes, and read as a day in the operator's base. */
import { dayOf, readInstant, writeInstant } from '#intervals';

/** Milliseconds since the epoch of an ISO 8601 instant with offset. Throws IntervalInputError naming `field`. */
export function millisOf(field: string, instant: string): number {
  return readInstant(field, instant).epochMilliseconds;
}

/** The calendar day of an instant in the base, YYYY-MM-DD. */
export function dayIn(base: string, field: string, instant: string): string {
  return dayOf(readInstant(field, instant), base).toString();
}

/** The instant so many minutes later, ISO 8601 UTC. */
export function plusMinutes(field: string, instant: string, minutes: number): string {
  return writeInstant(readInstant(field, instant).add({ minutes }));
}

/** The same instant written in UTC. */
export function inUtc(field: string, instant: string): string {
  return writeInstant(readInstant(field, instant));
}
