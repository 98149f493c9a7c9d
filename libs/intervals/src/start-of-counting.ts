import { Temporal } from 'temporal-polyfill';
import { sayRecorded } from './calendar-window.js';
import type { CountedClock, StatedStart } from './clock.js';
import type { CountsFrom } from './counts-from.js';
import { sayLocal, sayMinutes } from './explain-time.js';
import { readInstant } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';
import type { IntervalUnit } from './interval-text.js';
import { readRecorded, type Recorded } from './recorded.js';
import type { Interval } from './whole-interval.js';

/** From when a counted interval counts, and what a stated counter had used by then. */
export interface Start {
  instant: Temporal.Instant;
  /** The day that calendar days exclude. */
  day: Temporal.PlainDate;
  countsFrom: CountedClock['countsFrom'];
  stated: StatedStart | null;
  usedBefore: number;
  /** The step of the arithmetic that tells it; empty where it is the record itself. */
  said: string;
}

interface Asked {
  interval: Interval;
  recorded: Recorded;
  base: string;
  /** The operator's policy, where neither the row nor a document says from when. */
  policy: CountsFrom;
  deferredAt: string | undefined;
  stated: StatedStart | undefined;
}

const ON_A_COUNTER: readonly IntervalUnit[] = ['flights', 'cycles', 'flight-hours', 'engine-hours', 'engine-cycles'];

/**
 * A document's own start comes first, then what the row says, then the operator's policy. A deferral that is not known
 * is taken to be the record: that is never later. Throws IntervalInputError.
 */
export function startOfCounting({ interval, recorded, base, policy, deferredAt, stated }: Asked): Start {
  if (stated !== undefined) return statedStart(stated, interval, recorded, base);
  const countsFrom = interval.from ?? policy;
  const start = { instant: recorded.instant, day: recorded.day, countsFrom, stated: null, usedBefore: 0, said: '' };
  if (countsFrom === 'next-flight') return { ...start, said: 'use counts from the next flight' };
  if (countsFrom !== 'deferral' || deferredAt === undefined) return start;
  const deferred = readInstant('deferredAt', deferredAt);
  const order = Temporal.Instant.compare(deferred, recorded.instant);
  if (order < 0) throw new IntervalInputError('deferredAt', deferredAt, 'is before the record of the defect.');
  if (order === 0) return start;
  return { ...start, instant: deferred, said: `counted from the deferral, ${sayLocal(deferred, base)}` };
}

function statedStart(stated: StatedStart, interval: Interval, recorded: Recorded, base: string): Start {
  const start = { countsFrom: 'stated', stated } as const;
  if ('at' in stated) {
    const { instant, day, caution } = readRecorded(stated.at, base, 'start');
    const said = `counted from the stated instant, ${sayLocal(instant, base)}${caution ? ` (${caution})` : ''}`;
    return { ...start, instant, day, usedBefore: 0, said };
  }
  const [limit] = interval.limits;
  if (interval.limits.length !== 1 || limit === undefined || !ON_A_COUNTER.includes(limit.unit)) {
    throw new IntervalInputError('start', stated, `is a counter, and the interval is not of one counter alone.`);
  }
  const { counter, reading } = stated;
  for (const [name, value] of Object.entries({ counter, reading })) {
    if (!Number.isSafeInteger(value) || value < 0)
      throw new IntervalInputError(`start.${name}`, value, 'is not a whole number from 0 up.');
  }
  if (reading < counter)
    throw new IntervalInputError('start.reading', reading, `is before the stated start, ${counter}.`);
  const instant = readInstant('start.readAt', stated.readAt);
  const say = limit.unit.endsWith('-hours') ? sayMinutes : (count: number) => `${count} ${limit.unit}`;
  const said = `counted from ${say(counter)} on the counter, which read ${say(reading)} at ${sayLocal(instant, base)}, so ${say(reading - counter)} used by then`;
  return { ...start, instant, day: recorded.day, usedBefore: reading - counter, said };
}

/** The first step of an explanation: the record, and from when counting starts where that is another instant. */
export function sayStart(recorded: Recorded, start: Start, base: string): string {
  return [sayRecorded(recorded, base), ...(start.said === '' ? [] : [start.said])].join('; ');
}
