import { Temporal } from 'temporal-polyfill';
import { epochMilliseconds, type Reading } from './epoch-milliseconds.js';
import { IntervalInputError } from './interval-input-error.js';

const SHAPE = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::([0-5]\d)(?:\.(\d{1,9}))?)?(Z|[+-]\d\d:\d\d)?$/;
const BEYOND_MILLISECONDS = /^\d{3}.*[1-9]/;
const FIRST_YEAR = 1980;
const LAST_YEAR = 2199;

/** An instant, or a wall-clock reading that still waits for its zone. */
export type TimeRead = { instant: Temporal.Instant } | { wallClock: Temporal.PlainDateTime };

/**
 * Reads `2026-01-26T10:00` with optional seconds, and optionally `Z` or an offset. Nothing else: no date alone, no zone
 * in brackets, no hour 24, no year outside 1980 to 2199 (a mistyped year is worth a question, not a deadline).
 * Throws IntervalInputError naming `field`.
 */
export function readTime(field: string, text: string): TimeRead {
  const { offset } = partsOf(field, text);
  try {
    return offset === undefined
      ? { wallClock: Temporal.PlainDateTime.from(text, { overflow: 'reject' }) }
      : { instant: Temporal.Instant.from(text) };
  } catch {
    throw new IntervalInputError(field, text, 'names a day or an hour that does not exist.');
  }
}

/** Reads an instant; a time without `Z` or an offset is refused. */
export function readInstant(field: string, text: string): Temporal.Instant {
  const { milliseconds, exact } = read(field, text);
  return exact ? Temporal.Instant.fromEpochMilliseconds(milliseconds) : Temporal.Instant.from(text);
}

/** The same as whole milliseconds since 1970-01-01T00:00Z. */
export function readMilliseconds(field: string, text: string): number {
  return read(field, text).milliseconds;
}

/** `exact` is false where the text goes beyond milliseconds. */
function read(field: string, text: string): { milliseconds: number; exact: boolean } {
  const { reading, fraction, offset } = partsOf(field, text);
  if (offset === undefined) {
    throw new IntervalInputError(field, text, 'has neither Z nor an offset, so it is no single instant.');
  }
  const inUtc = epochMilliseconds(reading);
  if (inUtc === null) {
    throw new IntervalInputError(field, text, 'names a day or an hour that does not exist.');
  }
  const milliseconds = inUtc + Number(fraction.slice(0, 3).padEnd(3, '0')) - minutesOf(offset) * 60_000;
  return { milliseconds, exact: !BEYOND_MILLISECONDS.test(fraction) };
}

interface Parts {
  reading: Reading;
  fraction: string;
  offset: string | undefined;
}

function partsOf(field: string, text: string): Parts {
  const parts = typeof text === 'string' ? SHAPE.exec(text) : null;
  if (!parts) {
    throw new IntervalInputError(
      field,
      text,
      'is not a date and time such as 2026-01-26T10:00 or 2026-01-26T10:00Z.',
    );
  }
  const [, year, month, day, hour, minute, second = 0, fraction = '', offset] = parts;
  if (Number(year) < FIRST_YEAR || Number(year) > LAST_YEAR) {
    throw new IntervalInputError(field, text, `has a year outside ${FIRST_YEAR} to ${LAST_YEAR}.`);
  }
  if (offset !== undefined && !isOffsetInUse(offset)) {
    throw new IntervalInputError(
      field,
      text,
      'has an offset outside -12:00 to +14:00, which no place on earth uses.',
    );
  }
  const reading = [year, month, day, hour, minute, second].map(Number) as Reading;
  return { reading, fraction, offset };
}

/** Writes an instant as `2026-01-30T05:00:00Z`, always UTC; fractions only where there are any. */
export function writeInstant(instant: Temporal.Instant): string {
  return instant.toString();
}

function isOffsetInUse(offset: string): boolean {
  const minutes = minutesOf(offset);
  return Number(offset.slice(4, 6)) < 60 && minutes >= -12 * 60 && minutes <= 14 * 60;
}

/** Of an offset, negative west of Greenwich. */
function minutesOf(offset: string): number {
  if (offset === 'Z') return 0;
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return offset.startsWith('-') ? -minutes : minutes;
}
