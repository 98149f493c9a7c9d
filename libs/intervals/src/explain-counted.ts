import { sayEnd } from './calendar-window.js';
import { sayDays } from './explain-time.js';
import type { FixedEnd } from './fixed-end.js';
import { writeLimit, type IntervalUnit, type Limit } from './interval-text.js';
import type { Recorded } from './recorded.js';
import type { CountingSettings } from './settings.js';
import { sayStart, type Start } from './start-of-counting.js';
import type { Interval } from './whole-interval.js';

interface Explained {
  interval: Interval;
  fixed: readonly FixedEnd[];
  recorded: Recorded;
  start: Start;
  base: string;
  engine: string | undefined;
  flightDay: CountingSettings['flightDay'];
}

/** The arithmetic of a counted interval, step by step, in one sentence. */
export function explainCounted(asked: Explained): string {
  const { interval, recorded, start, base } = asked;
  const { limits, joint, within, timeLimited } = interval;
  const parts = limits.map((limit) => sayLimit(limit, asked));
  const which = joint === 'last-of' ? 'whichever is reached last' : 'whichever is reached first';
  const steps = [
    sayStart(recorded, start, base),
    limits.length > 1 ? `${parts.join(' or ')}, ${which}` : parts.join(''),
    ...within.map(
      (one) => `unless ${one.until} is done, ${one.limits.map(writeLimit).join(' or ')} of these at most`,
    ),
    ...(timeLimited ? ['time-limited dispatch: never extended by the operator'] : []),
  ];
  return `${steps.join('; ')}.`;
}

function sayLimit(limit: Limit, { fixed, start, base, engine, flightDay }: Explained): string {
  const end = fixed.find((candidate) => candidate.limit === limit);
  const days = limit.unit === 'calendar-days' ? [sayDays(start.day.add({ days: 1 }), limit.amount)] : [];
  const how = [
    HOW_COUNTED[limit.unit]({ base, flightDay, engine }),
    ...days,
    ...(end ? [sayEnd(end.ends, base)] : []),
  ];
  return `${writeLimit(limit)} (${how.join(', ')})`;
}

interface How {
  base: string;
  flightDay: CountingSettings['flightDay'];
  engine: string | undefined;
}

const HOW_COUNTED: Record<IntervalUnit, (how: How) => string> = {
  'calendar-days': () => 'midnight to midnight, the day of discovery excluded',
  'flight-days': ({ base, flightDay }) =>
    flightDay === 'from-first-out'
      ? '24 hours from the first off-blocks, the next one from the first off-blocks after them'
      : `a day in ${base} on which a flight is initiated, the day of discovery excluded`,
  flights: () => 'every flight from the start counts, no day is excluded',
  cycles: () => 'every cycle from the start counts',
  'flight-hours': () => 'every flight minute from the start counts, and the planned flight with them',
  'engine-hours': (how) => `every minute of ${engineOf(how)} from the start counts, and the planned flight with them`,
  'engine-cycles': (how) => `every cycle of ${engineOf(how)} from the start counts`,
  hours: () => 'hours on the clock from the start, in use or not',
  'designated-departures': () => 'flights may leave until the aircraft stands at a designated station',
  'base-opportunities': () => 'flights may leave until the aircraft stands at a base long enough',
};

function engineOf({ engine }: How): string {
  return engine === undefined ? 'the engine that was used most' : `engine ${engine}`;
}
