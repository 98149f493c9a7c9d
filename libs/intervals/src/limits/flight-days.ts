import { Temporal } from 'temporal-polyfill';
import { dayOf, startOfDay } from '../calendar-day.js';
import type { RectificationClock } from '../clock.js';
import { sayDay, sayLocal } from '../explain-time.js';
import { FLIGHT_DAY_HOURS } from '../flight-days-of.js';
import { readInstant } from '../instant.js';
import type { Limit } from '../interval-text.js';
import type { LimitAnswer } from '../limit-answer.js';
import type { CountingSettings } from '../settings.js';
import type { Used } from '../used.js';

interface Asked {
  limit: Limit;
  clock: Pick<RectificationClock, 'base' | 'dayOfDiscovery'>;
  used: Used;
  offBlock: Temporal.Instant;
  onBlock: Temporal.Instant | null;
  settings: Pick<CountingSettings, 'flightDay' | 'expiryInFlight'>;
}

/**
 * Flight-days: a flight on a day that already counts uses nothing; on a new day it starts one more, which may reach the
 * limit. Only the day of departure counts, however late it lands, unless a flight must also arrive inside: then it must
 * be on blocks before the last flight-day is over. A flight on the day of discovery starts none.
 */
export function askFlightDays(asked: Asked): LimitAnswer {
  const { limit, clock, used, offBlock, settings } = asked;
  const { flightDays } = used;
  const say = (because: string, answer: LimitAnswer['answer']): LimitAnswer => ({ limit, answer, because });
  const departsOn = dayOf(offBlock, clock.base);
  const day = sayDay(departsOn);
  if (settings.flightDay === 'calendar-day' && departsOn.toString() <= clock.dayOfDiscovery)
    return say(`${day} is the day of discovery, which is no counted flight-day.`, 'holds');
  if (flightDays === undefined)
    return say(`How many of the ${limit.amount} flight-days are used is not known.`, 'unknown');
  if (flightDays > limit.amount) return say(`${flightDays} of ${limit.amount} flight-days are used up.`, 'fails');
  const running = isRunning(asked);
  if (running === null && flightDays === limit.amount) {
    return say(
      `All ${limit.amount} flight-days are used; whether ${day} is the last of them is not known.`,
      'unknown',
    );
  }
  const which = running === true ? flightDays : flightDays + 1;
  if (which > limit.amount) return say(`${day} would be flight-day ${which}; the limit is ${limit.amount}.`, 'fails');
  const last = which === limit.amount && running === true ? ', the last one' : '';
  const told = `${day} is flight-day ${which} of ${limit.amount}${last}`;
  if (which < limit.amount || settings.expiryInFlight === 'departure-inside') return say(`${told}.`, 'holds');
  return mustArrive(asked, told, running === true);
}

/** Whether the flight-day that was counted last still runs at this departure; null when that is not known. */
function isRunning({ clock, used, offBlock, settings }: Asked): boolean | null {
  const { lastFlightDayOn, lastFlightDayStartsAt } = used;
  if (settings.flightDay === 'calendar-day')
    return lastFlightDayOn === undefined ? null : lastFlightDayOn === dayOf(offBlock, clock.base).toString();
  if (lastFlightDayStartsAt === undefined) return null;
  return lastFlightDayStartsAt !== null && isBefore(offBlock, endOfFlightDay(lastFlightDayStartsAt));
}

function mustArrive({ limit, clock, used, offBlock, onBlock, settings }: Asked, told: string, running: boolean) {
  const say = (because: string, answer: LimitAnswer['answer']): LimitAnswer => ({ limit, answer, because });
  if (onBlock === null)
    return say(`${told}, but it must also arrive inside, and when it arrives is not known.`, 'unknown');
  const start = (running ? used.lastFlightDayStartsAt : null) ?? offBlock.toString();
  const ends =
    settings.flightDay === 'from-first-out'
      ? endOfFlightDay(start)
      : startOfDay(dayOf(offBlock, clock.base).add({ days: 1 }), clock.base);
  const arrives = `and must also arrive inside; on blocks ${sayLocal(onBlock, clock.base)}`;
  return isBefore(onBlock, ends)
    ? say(`${told} ${arrives} is not after it.`, 'holds')
    : say(`${told} ${arrives} is after it.`, 'fails');
}

/** The end, exclusive, of a flight-day of 24 hours. */
export function endOfFlightDay(startsAt: string): Temporal.Instant {
  return readInstant('used.lastFlightDayStartsAt', startsAt).add({ hours: FLIGHT_DAY_HOURS });
}

function isBefore(one: Temporal.Instant, other: Temporal.Instant): boolean {
  return Temporal.Instant.compare(one, other) < 0;
}
