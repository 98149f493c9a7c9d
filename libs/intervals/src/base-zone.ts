import { Temporal } from 'temporal-polyfill';
import { IntervalInputError } from './interval-input-error.js';

const ZONE_NAME = /^[A-Za-z][A-Za-z0-9_+/-]{0,63}$/;

/**
 * Reads the operator's time base: `UTC` or one IANA zone name. Answers the name in its own spelling.
 *
 * A bare offset (`+01:00`) is refused: it has no clock changes, so a deadline counted in it would be wrong half the year.
 * Throws IntervalInputError.
 */
export function baseZone(base: string): string {
  const name = typeof base === 'string' && ZONE_NAME.test(base) ? knownZone(base) : null;
  if (name === null) {
    throw new IntervalInputError('base', base, 'is neither UTC nor the name of a time zone such as "Europe/Paris".');
  }
  return name;
}

function knownZone(name: string): string | null {
  try {
    return new Temporal.ZonedDateTime(0n, name).timeZoneId;
  } catch {
    return null;
  }
}
