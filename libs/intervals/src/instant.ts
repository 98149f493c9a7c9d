import { Temporal } from 'temporal-polyfill';
import { IntervalInputError } from './interval-input-error.js';

const SHAPE = /^(\d{4})-\d\d-\d\dT\d\d:\d\d(?::[0-5]\d(?:\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)?$/;
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
  const parts = typeof text === 'string' ? SHAPE.exec(text) : null;
  if (!parts) {
    throw new IntervalInputError(
      field,
      text,
      'is not a date and time such as 2026-01-26T10:00 or 2026-01-26T10:00Z.',
    );
  }
  const year = Number(parts[1]);
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    throw new IntervalInputError(field, text, `has a year outside ${FIRST_YEAR} to ${LAST_YEAR}.`);
  }
  const offset = parts[2];
  if (offset !== undefined && !isOffsetInUse(offset)) {
    throw new IntervalInputError(
      field,
      text,
      'has an offset outside -12:00 to +14:00, which no place on earth uses.',
    );
  }
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
  const time = readTime(field, text);
  if ('wallClock' in time) {
    throw new IntervalInputError(field, text, 'has neither Z nor an offset, so it is no single instant.');
  }
  return time.instant;
}

/** Writes an instant as `2026-01-30T05:00:00Z`, always UTC; fractions only where there are any. */
export function writeInstant(instant: Temporal.Instant): string {
  return instant.toString();
}

function isOffsetInUse(offset: string): boolean {
  if (offset === 'Z') return true;
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return Number(offset.slice(4, 6)) < 60 && minutes <= (offset.startsWith('-') ? 12 * 60 : 14 * 60);
}
