/** Instants as this library needs them: compared, moved by minutes, and read as a day in the operator's base. */
import { dayOf, readInstant, writeInstant } from '#intervals';
import { remember } from './remember.js';

/** Milliseconds since the epoch of an ISO 8601 instant with offset. Throws IntervalInputError naming `field`. */
export const millisOf = remember(
  (_field: string, instant: string) => instant,
  (field, instant) => readInstant(field, instant).epochMilliseconds,
);

/** The calendar day of an instant in the base, YYYY-MM-DD. */
export const dayIn = remember(
  (base: string, _field: string, instant: string) => `${base} ${instant}`,
  (base, field, instant) => dayOf(readInstant(field, instant), base).toString(),
);

/** The instant so many minutes later, ISO 8601 UTC. */
export const plusMinutes = remember(
  (_field: string, instant: string, minutes: number) => `${instant} ${minutes}`,
  (field, instant, minutes) => writeInstant(readInstant(field, instant).add({ minutes })),
);

/** The same instant written in UTC. */
export function inUtc(field: string, instant: string): string {
  return plusMinutes(field, instant, 0);
}
