/**
 * Instants as they stand on paper and in a record: ISO 8601 with an offset, kept as written.
 *
 * They are compared by the moment they mean, not by their letters: 10:00+01:00 is 09:00Z. Anything that is not a real
 * date, or lacks its offset, is refused.
 */
import { Refusal } from './refusal.js';

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,9}))?)?(?:Z|([+-])(\d{2}):(\d{2}))$/;

/** Milliseconds since 1970-01-01T00:00Z. Throws Refusal `not-an-instant` naming the value and where it stood. */
export function millisecondsOf(written: string, where = 'time'): number {
  const parts = WRITTEN.exec(written);
  if (parts === null) throw new Refusal('not-an-instant', { value: written, where });
  const at = (index: number): number => Number(parts[index] ?? 0);
  const [year, month, day, hour, minute, second] = [at(1), at(2), at(3), at(4), at(5), at(6)];
  const [offsetHours, offsetMinutes] = [at(9), at(10)];
  const real =
    month >= 1 &&
    month <= 12 &&
    day >= 1 &&
    day <= daysInMonth(year, month) &&
    hour < 24 &&
    minute < 60 &&
    second < 60 &&
    offsetHours < 19 &&
    offsetMinutes < 60;
  if (!real) throw new Refusal('not-an-instant', { value: written, where });
  const sign = parts[8] === '-' ? -1 : 1;
  const minutes =
    (daysSince1970(year, month, day) * 24 + hour) * 60 + minute - sign * (offsetHours * 60 + offsetMinutes);
  return minutes * 60_000 + second * 1000 + Math.floor(Number(`0.${parts[7] ?? '0'}`) * 1000);
}

export function before(one: string, other: string): boolean {
  return millisecondsOf(one) < millisecondsOf(other);
}

export function atOrAfter(one: string, other: string): boolean {
  return !before(one, other);
}

/** Whole minutes from one instant to another, rounded down; negative when the other is earlier. */
export function minutesBetween(from: string, to: string): number {
  return Math.floor((millisecondsOf(to) - millisecondsOf(from)) / 60_000);
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function isLeap(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

function daysSince1970(year: number, month: number, day: number): number {
  const y = year - 1;
  let days = y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) - 719_162;
  for (let m = 1; m < month; m += 1) days += daysInMonth(year, m);
  return days + day - 1;
}
