/** Instants as they stand on paper and in a record: ISO 8601 with an offset, compared by the moment they mean. */
import { IntervalInputError, readMilliseconds } from '#intervals';
import { Refusal } from './refusal.js';

/** Milliseconds since 1970-01-01T00:00Z. Throws Refusal `not-an-instant` naming the value and where it stood. */
export function millisecondsOf(written: string, where: string): number {
  try {
    return readMilliseconds(where, written);
  } catch (error) {
    if (error instanceof IntervalInputError) throw new Refusal('not-an-instant', { value: written, where });
    throw error;
  }
}

export function before(one: string, other: string): boolean {
  return millisecondsOf(one, 'time') < millisecondsOf(other, 'time');
}

/** The earliest of those that are there, or null. */
export function earliest(instants: readonly (string | null)[]): string | null {
  return instants.reduce(
    (first, next) => (first === null || (next !== null && before(next, first)) ? next : first),
    null,
  );
}

export function latest(first: string, ...others: string[]): string {
  return others.reduce((last, next) => (before(last, next) ? next : last), first);
}

/** Whole minutes from one instant to another, rounded down; negative when the second is earlier. */
export function minutesBetween(from: string, to: string): number {
  return Math.floor((millisecondsOf(to, 'time') - millisecondsOf(from, 'time')) / 60_000);
}
