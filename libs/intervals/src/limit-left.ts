import { Temporal } from 'temporal-polyfill';
import { dayOf, minutesBetween, startOfDay } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { endOf } from './counted-clock.js';
import { sayLocal, sayMinutes } from './explain-time.js';
import { writeInstant } from './instant.js';
import type { Limit } from './interval-text.js';
import type { Used } from './used.js';

/** What is left of one limit. `used` and `left` are null where the counter is not known. */
export interface LimitLeft {
  limit: Limit;
  countedIn: 'calendar-days' | 'flight-days' | 'flights' | 'cycles' | 'minutes';
  used: number | null;
  left: number | null;
  /** Clock time to a known end, whole minutes, never below 0. */
  minutesLeft: number | null;
  /** Exclusive; null while no end is known. */
  endsAt: string | null;
  lastDay: string | null;
  isOver: boolean | null;
  text: string;
}

/** What one limit of a clock leaves at `now`. */
export function leftOf(
  limit: Limit,
  clock: RectificationClock,
  now: Temporal.Instant,
  used: Used,
  hourClock: 'airborne' | 'block',
): LimitLeft {
  switch (limit.unit) {
    case 'calendar-days':
      return daysLeft(limit, clock, now);
    case 'hours':
      return hoursLeft(limit, clock, now);
    case 'flight-days':
      return flightDaysLeft(limit, clock, now, used);
    case 'flight-hours':
      return numberLeft(limit, hourClock === 'block' ? used.blockMinutes : used.flightMinutes, 60, sayMinutes);
    case 'flights':
    case 'cycles':
      return numberLeft(limit, used[limit.unit], 1, String);
  }
}

/** A day that has begun is still left until it ends; on the last day one is left. */
function daysLeft(limit: Limit, clock: RectificationClock, now: Temporal.Instant): LimitLeft {
  const discovery = Temporal.PlainDate.from(clock.dayOfDiscovery);
  const ends = endOf(limit, clock);
  const lastDay = clock.kind === 'calendar' ? clock.lastDay : discovery.add({ days: limit.amount }).toString();
  const total = discovery.until(Temporal.PlainDate.from(lastDay), { largestUnit: 'days' }).days;
  const begun = discovery.until(dayOf(now, clock.base), { largestUnit: 'days' }).days;
  const used = Math.min(total, Math.max(0, begun - 1));
  const end = timeLeft(ends, now);
  const text = end.isOver
    ? `all ${total} calendar days are over since ${sayLocal(ends, clock.base)}`
    : `${total - used} of ${total} calendar days left, until ${sayLocal(ends.subtract({ seconds: 1 }), clock.base)} (${sayMinutes(end.minutesLeft)})`;
  return { limit, countedIn: 'calendar-days', used, left: total - used, ...end, lastDay, text };
}

function hoursLeft(limit: Limit, clock: RectificationClock, now: Temporal.Instant): LimitLeft {
  const ends = endOf(limit, clock);
  const end = timeLeft(ends, now);
  const total = limit.amount * 60;
  const until = sayLocal(ends, clock.base);
  const text = end.isOver
    ? `all ${limit.amount} hours are over since ${until}`
    : `${sayMinutes(end.minutesLeft)} of ${limit.amount} hours left, until ${until}`;
  return {
    limit,
    countedIn: 'minutes',
    used: total - end.minutesLeft,
    left: end.minutesLeft,
    ...end,
    lastDay: null,
    text,
  };
}

/** Flight-days have an end as soon as the last of them has begun: the end of that day. */
function flightDaysLeft(limit: Limit, clock: RectificationClock, now: Temporal.Instant, used: Used): LimitLeft {
  const { flightDays, lastFlightDayOn } = used;
  if (flightDays === undefined || flightDays < limit.amount) return numberLeft(limit, flightDays, 1, String);
  const counted = numberLeft(limit, flightDays, 1, String);
  if (flightDays > limit.amount) return counted;
  if (lastFlightDayOn == null) {
    return {
      ...counted,
      isOver: null,
      text: `all ${limit.amount} flight-days used; which day was the last is not known`,
    };
  }
  const last = Temporal.PlainDate.from(lastFlightDayOn);
  const ends = startOfDay(last.add({ days: 1 }), clock.base);
  const end = timeLeft(ends, now);
  const until = sayLocal(ends.subtract({ seconds: 1 }), clock.base);
  const text = end.isOver
    ? `all ${limit.amount} flight-days are over since ${until}`
    : `the last of ${limit.amount} flight-days is running, until ${until}`;
  return { ...counted, ...end, lastDay: lastFlightDayOn, text };
}

/** A limit counted from use; `size` of its small units (minutes) make one of the limit's. */
function numberLeft(limit: Limit, used: number | undefined, size: number, say: (count: number) => string): LimitLeft {
  const total = limit.amount * size;
  const countedIn = limit.unit === 'flight-hours' || limit.unit === 'hours' ? 'minutes' : limit.unit;
  const open = { limit, countedIn, minutesLeft: null, endsAt: null, lastDay: null } as const;
  if (used === undefined) {
    return {
      ...open,
      used: null,
      left: null,
      isOver: null,
      text: `how many of ${limit.amount} ${limit.unit} are left is not known`,
    };
  }
  const left = Math.max(0, total - used);
  const of = size === 1 ? `${limit.amount} ${limit.unit}` : `${sayMinutes(total)} of flight`;
  return { ...open, used, left, isOver: left === 0, text: `${say(left)} of ${of} left` };
}

function timeLeft(
  ends: Temporal.Instant,
  now: Temporal.Instant,
): { minutesLeft: number; endsAt: string; isOver: boolean } {
  return {
    minutesLeft: Math.max(0, minutesBetween(now, ends)),
    endsAt: writeInstant(ends),
    isOver: Temporal.Instant.compare(now, ends) >= 0,
  };
}
