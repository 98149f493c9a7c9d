import { Temporal } from 'temporal-polyfill';
import { dayOf, minutesBetween, startOfDay } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { dayExcluded, endOf } from './fixed-end.js';
import { sayLocal, sayMinutes } from './explain-time.js';
import { writeInstant } from './instant.js';
import { writeLimit, type Limit } from './interval-text.js';
import { endOfFlightDay } from './limits/flight-days.js';
import type { CountingSettings } from './settings.js';
import type { Used } from './used.js';

/** What is left of one limit. `used` and `left` are null where the counter is not known. */
export interface LimitLeft {
  limit: Limit;
  countedIn: 'calendar-days' | 'flight-days' | 'flights' | 'cycles' | 'engine-cycles' | 'minutes' | 'departures';
  used: number | null;
  left: number | null;
  /** Clock time to a known end, whole minutes, never below 0. */
  minutesLeft: number | null;
  /** Exclusive; null while no end is known. */
  endsAt: string | null;
  lastDay: string | null;
  isOver: boolean | null;
  text: string;
  /** Of a shorter limit inside the interval: what it waits for. */
  until?: string;
}

/** What one limit of a clock leaves at `now`. */
export function leftOf(
  limit: Limit,
  clock: RectificationClock,
  now: Temporal.Instant,
  used: Used,
  settings: Pick<CountingSettings, 'hourClock' | 'flightDay'>,
): LimitLeft {
  const block = settings.hourClock === 'block';
  switch (limit.unit) {
    case 'calendar-days':
      return daysLeft(limit, clock, now);
    case 'hours':
      return hoursLeft(limit, clock, now);
    case 'flight-days':
      return flightDaysLeft(limit, clock, now, used, settings.flightDay);
    case 'flight-hours':
      return minutesOf(limit, block ? used.blockMinutes : used.flightMinutes, 'of flight');
    case 'engine-hours':
      return minutesOf(limit, used.engineMinutes, 'of the engine');
    case 'flights':
    case 'cycles':
      return numberOf(limit, used[limit.unit], limit.unit);
    case 'engine-cycles':
      return numberOf(limit, used.engineCycles, limit.unit);
    case 'designated-departures':
      return untilStation(limit, used.designatedDepartures, used.station);
    case 'base-opportunities':
      return untilStation(limit, used.baseOpportunities, used.station);
  }
}

/** A day that has begun is still left until it ends; on the last day one is left. */
function daysLeft(limit: Limit, clock: RectificationClock, now: Temporal.Instant): LimitLeft {
  const discovery = dayExcluded(clock);
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
function flightDaysLeft(
  limit: Limit,
  clock: RectificationClock,
  now: Temporal.Instant,
  used: Used,
  flightDay: CountingSettings['flightDay'],
): LimitLeft {
  const { flightDays, lastFlightDayOn, lastFlightDayStartsAt } = used;
  const counted = numberOf(limit, flightDays, 'flight-days');
  if (flightDays === undefined || flightDays !== limit.amount) return counted;
  const startsAt = flightDay === 'from-first-out' ? lastFlightDayStartsAt : lastFlightDayOn;
  if (startsAt == null) {
    return {
      ...counted,
      isOver: null,
      text: `all ${limit.amount} flight-days used; which day was the last is not known`,
    };
  }
  const fromFirstOut = flightDay === 'from-first-out';
  const ends = fromFirstOut
    ? endOfFlightDay(startsAt)
    : startOfDay(Temporal.PlainDate.from(startsAt).add({ days: 1 }), clock.base);
  const end = timeLeft(ends, now);
  const until = sayLocal(fromFirstOut ? ends : ends.subtract({ seconds: 1 }), clock.base);
  const text = end.isOver
    ? `all ${limit.amount} flight-days are over since ${until}`
    : `the last of ${limit.amount} flight-days is running, until ${until}`;
  return { ...counted, ...end, lastDay: fromFirstOut ? null : startsAt, text };
}

const OPEN = { minutesLeft: null, endsAt: null, lastDay: null } as const;

function minutesOf(limit: Limit, used: number | undefined, of: string): LimitLeft {
  const total = limit.amount * 60;
  if (used === undefined) return notKnown(limit, 'minutes');
  const left = Math.max(0, total - used);
  const text = `${sayMinutes(left)} of ${sayMinutes(total)} ${of} left`;
  return { limit, countedIn: 'minutes', ...OPEN, used, left, isOver: left === 0, text };
}

type Counted = 'flight-days' | 'flights' | 'cycles' | 'engine-cycles';

function numberOf(limit: Limit, used: number | undefined, countedIn: Counted): LimitLeft {
  if (used === undefined) return notKnown(limit, countedIn);
  const left = Math.max(0, limit.amount - used);
  const text = `${left} of ${limit.amount} ${limit.unit} left`;
  return { limit, countedIn, ...OPEN, used, left, isOver: left === 0, text };
}

function notKnown(limit: Limit, countedIn: LimitLeft['countedIn']): LimitLeft {
  const text = `how many of ${limit.amount} ${limit.unit} are left is not known`;
  return { limit, countedIn, ...OPEN, used: null, left: null, isOver: null, text };
}

/** A limit by station is over once such a departure was made; until then it is told where the aircraft stands. */
function untilStation(limit: Limit, used: number | undefined, station: string | undefined): LimitLeft {
  const until = writeLimit(limit);
  const open = { limit, countedIn: 'departures', ...OPEN } as const;
  if (used === undefined) {
    const text = `whether the ${until} has come is not known`;
    return { ...open, used: null, left: null, isOver: null, text };
  }
  if (used > 0) return { ...open, used, left: 0, isOver: true, text: `the ${until} has passed` };
  const where = station === undefined ? '' : `; it is at ${station}`;
  return { ...open, used, left: 1, isOver: false, text: `until the ${until}${where}` };
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
