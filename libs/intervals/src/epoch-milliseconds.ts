/** Of a date and time in UTC, as numbers; the month from 1. */
export type Reading = [year: number, month: number, day: number, hour: number, minute: number, second: number];

const DAY_MS = 86_400_000;
const DAYS_BEFORE_1970 = 719_468;
const SHORT = [4, 6, 9, 11];

/**
 * Milliseconds from 1970-01-01T00:00Z to a reading in UTC, by the Gregorian calendar; null for one that does not exist.
 *
 * Here because every comparison of two instants needs it, and a date object for each costs more than all the rest.
 */
export function epochMilliseconds([year, month, day, hour, minute, second]: Reading): number | null {
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  if (hour > 23 || minute > 59 || second > 59) return null;
  return daysSince1970(year, month, day) * DAY_MS + ((hour * 60 + minute) * 60 + second) * 1000;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return SHORT.includes(month) ? 30 : 31;
}

function isLeap(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** The year is taken from March on, so that the day that comes and goes is its last. */
function daysSince1970(year: number, month: number, day: number): number {
  const from = month > 2 ? year : year - 1;
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return (
    from * 365 + Math.floor(from / 4) - Math.floor(from / 100) + Math.floor(from / 400) + ofYear - DAYS_BEFORE_1970
  );
}
