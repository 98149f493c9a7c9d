import type { CountsFrom } from './counts-from.js';
import { IntervalInputError } from './interval-input-error.js';
import { LONGEST_TEXT, parseInterval, writeInterval, type Limit } from './interval-text.js';

/** Something that must be done before a shorter limit inside the interval is over, or the interval ends with it. */
export interface WithinLimit {
  /** What must be done: the id of a procedure of the row, such as `M1`. */
  until: string;
  limits: Limit[];
}

/** A row's interval with everything that its text says. */
export interface Interval {
  limits: Limit[];
  /** Whichever of the limits is reached first ends it, unless the row says that the later one does. */
  joint: 'first-of' | 'last-of';
  within: WithinLimit[];
  /** From when use counts, where the row says so; null leaves it to the operator's policy. */
  from: CountsFrom | null;
  /** Of a time-limited dispatch document of engine controls: hours count at arrival whatever the operator settled. */
  timeLimited: boolean;
}

const LATER = 'whichever is later';
const TIME_LIMITED = 'time-limited dispatch';
const WITHIN = /^([0-9A-Za-z](?:[0-9A-Za-z. _-]{0,38}[0-9A-Za-z])?) within (.+)$/;
const STARTS: Readonly<Record<CountsFrom, string>> = {
  record: 'from the record',
  deferral: 'from the deferral',
  'next-flight': 'from the next flight',
};

/**
 * Reads the whole interval of a row: limits, and after them what the row adds, each after a comma.
 *
 * `3 flights or 6 flight-hours` · `5 flights or 48 hours, whichever is later` · `3 flight-days, M1 within 1 flight-day` ·
 * `125 flight-hours, time-limited dispatch` · `4 cycles, from the next flight`. Throws IntervalInputError.
 */
export function readInterval(text: string): Interval {
  if (typeof text !== 'string' || text.length > LONGEST_TEXT) parseInterval(text);
  const [first = '', ...added] = text.split(', ');
  const interval: Interval = {
    limits: parseInterval(first, text),
    joint: 'first-of',
    within: [],
    from: null,
    timeLimited: false,
  };
  for (const part of added) add(interval, part, text);
  if (interval.joint === 'last-of' && interval.limits.length < 2) {
    throw new IntervalInputError('interval', text, 'says which of several is later, and names only one.');
  }
  if (interval.from !== null && interval.limits.every(({ unit }) => unit === 'calendar-days')) {
    throw new IntervalInputError(
      'interval',
      text,
      'says from when use counts, and calendar days count from the day of discovery.',
    );
  }
  if (interval.timeLimited && !interval.limits.some(({ unit }) => unit.endsWith('-hours'))) {
    throw new IntervalInputError(
      'interval',
      text,
      'is of a time-limited dispatch and names no flight-hours or engine-hours.',
    );
  }
  return interval;
}

/** Writes an interval as readInterval reads it. */
export function writeWholeInterval({ limits, joint, within, from, timeLimited }: Interval): string {
  return [
    writeInterval(limits),
    ...(joint === 'last-of' ? [LATER] : []),
    ...within.map((one) => `${one.until} within ${writeInterval(one.limits)}`),
    ...(from === null ? [] : [STARTS[from]]),
    ...(timeLimited ? [TIME_LIMITED] : []),
  ].join(', ');
}

function add(interval: Interval, part: string, whole: string): void {
  const twice = (): never => {
    throw new IntervalInputError('interval', whole, `says "${part}" beside another of its kind.`);
  };
  const start = (Object.keys(STARTS) as CountsFrom[]).find((from) => STARTS[from] === part);
  const within = WITHIN.exec(part);
  if (part === LATER) {
    if (interval.joint === 'last-of') twice();
    interval.joint = 'last-of';
  } else if (part === TIME_LIMITED) {
    if (interval.timeLimited) twice();
    interval.timeLimited = true;
  } else if (start !== undefined) {
    if (interval.from !== null) twice();
    interval.from = start;
  } else if (within !== null) {
    const [, until = '', limits = ''] = within;
    if (interval.within.some((one) => one.until === until)) twice();
    interval.within.push({ until, limits: parseInterval(limits, whole) });
  } else {
    throw new IntervalInputError(
      'interval',
      whole,
      `cannot be read from ", ${part}" on: after the limits may stand "${LATER}", "<what> within <limits>", "${Object.values(STARTS).join('", "')}" and "${TIME_LIMITED}".`,
    );
  }
}
