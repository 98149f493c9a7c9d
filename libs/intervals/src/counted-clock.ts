import { Temporal } from 'temporal-polyfill';
import { minutesBetween } from './calendar-day.js';
import type { CountedClock } from './clock.js';
import { explainCounted } from './explain-counted.js';
import { fixedEnd, type FixedEnd } from './fixed-end.js';
import { writeInstant } from './instant.js';
import type { Recorded } from './recorded.js';
import type { CountingSettings } from './settings.js';
import type { Start } from './start-of-counting.js';
import type { Interval } from './whole-interval.js';

type CountedPart = Omit<
  CountedClock,
  'category' | 'interval' | 'limits' | 'recordedAt' | 'dayOfDiscovery' | 'base' | 'tzdb'
>;

interface Asked {
  interval: Interval;
  recorded: Recorded;
  start: Start;
  base: string;
  engine: string | undefined;
  flightDay: CountingSettings['flightDay'];
}

/** The parts of a clock whose limits are not calendar days alone. */
export function countedClock({ interval, recorded, start, base, engine, flightDay }: Asked): CountedPart {
  const { limits, joint, within, timeLimited } = interval;
  const fixed = limits.map((limit) => fixedEnd(limit, start, base)).filter((end) => end !== null);
  const end = joint === 'first-of' ? firstOf(fixed) : fixed.length === limits.length ? lastOf(fixed) : null;
  const lengthMinutes = end ? minutesBetween(start.instant, end.ends) : null;
  return {
    kind: 'counted',
    days: null,
    firstDay: end?.lastDay ? start.day.add({ days: 1 }).toString() : null,
    lastDay: end?.lastDay?.toString() ?? null,
    startsAt: writeInstant(start.instant),
    countsFrom: start.countsFrom,
    endsAt: end ? writeInstant(end.ends) : null,
    lengthMinutes,
    lengthHours: lengthMinutes === null ? null : lengthMinutes / 60,
    ...(joint === 'last-of' && { joint }),
    ...(within.length > 0 && { within }),
    ...(timeLimited && { timeLimited }),
    ...(engine !== undefined && isOfEngine(interval) && { engine }),
    ...(start.stated !== null && { stated: start.stated }),
    ...(start.usedBefore > 0 && { usedBefore: start.usedBefore }),
    explanation: explainCounted({ interval, fixed, recorded, start, base, engine, flightDay }),
  };
}

function isOfEngine({ limits, within }: Interval): boolean {
  return [...limits, ...within.flatMap((one) => one.limits)].some(({ unit }) => unit.startsWith('engine-'));
}

function firstOf(ends: readonly FixedEnd[]): FixedEnd | null {
  return ends.reduce<FixedEnd | null>((first, end) => (first && !isBefore(end, first) ? first : end), null);
}

function lastOf(ends: readonly FixedEnd[]): FixedEnd | null {
  return ends.reduce<FixedEnd | null>((last, end) => (last && !isBefore(last, end) ? last : end), null);
}

function isBefore(one: FixedEnd, other: FixedEnd): boolean {
  return Temporal.Instant.compare(one.ends, other.ends) < 0;
}
