import type { Temporal } from 'temporal-polyfill';
import { dayOf } from './calendar-day.js';
import { readTime } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';

/** When a defect was written in the log: the instant, the calendar day of discovery, and a caution if the reading was odd. */
export interface Recorded {
  instant: Temporal.Instant;
  day: Temporal.PlainDate;
  caution: string | null;
}

/**
 * Reads the time of the record. With `Z` or an offset it is an instant; without, it is a clock reading in `base`.
 *
 * The day of discovery is the day written in the log, whatever the clocks did on it:
 * - a reading that came twice (clocks back): both are on that day; the earlier is taken, so no hour is gained;
 * - a reading that never came (clocks forward): the nearest instant on the written day is taken;
 * - a day that the zone left out altogether: refused, nobody can have written on it.
 *
 * Read again from the instant, the same day comes out.
 */
export function readRecorded(text: string, base: string, field = 'recordedAt'): Recorded {
  const time = readTime(field, text);
  if ('instant' in time) return { instant: time.instant, day: dayOf(time.instant, base), caution: null };
  const written = time.wallClock;
  const day = written.toPlainDate();
  const earlier = written.toZonedDateTime(base, { disambiguation: 'earlier' });
  const later = written.toZonedDateTime(base, { disambiguation: 'later' });
  if (earlier.epochNanoseconds === later.epochNanoseconds)
    return { instant: earlier.toInstant(), day, caution: null };
  if (earlier.toPlainDateTime().equals(written)) {
    return { instant: earlier.toInstant(), day, caution: 'that clock reading came twice, the earlier one is taken' };
  }
  const onWrittenDay = [earlier, later].find((reading) => reading.toPlainDate().equals(day));
  if (!onWrittenDay) {
    throw new IntervalInputError(field, text, `is on a day that did not exist in ${base}.`);
  }
  return {
    instant: onWrittenDay.toInstant(),
    day,
    caution: 'that clock reading did not exist (clocks went forward), the day as written counts',
  };
}
