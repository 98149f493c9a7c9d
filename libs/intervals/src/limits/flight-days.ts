import { sayDay } from '../explain-time.js';
import { Temporal } from 'temporal-polyfill';
import type { Limit } from '../interval-text.js';
import type { LimitAnswer } from '../limit-answer.js';
import type { Used } from '../used.js';

/**
 * Flight-days: a flight on a day that already counts uses nothing; on a new day it starts one more, which may reach the
 * limit. Only the day of departure counts, however late it lands. A flight on the day of discovery starts none.
 */
export function askFlightDays(limit: Limit, used: Used, dayOfDiscovery: string, departsOn: string): LimitAnswer {
  const { flightDays, lastFlightDayOn } = used;
  const say = (because: string, answer: LimitAnswer['answer']): LimitAnswer => ({ limit, answer, because });
  const day = sayDay(Temporal.PlainDate.from(departsOn));
  if (departsOn <= dayOfDiscovery)
    return say(`${day} is the day of discovery, which is no counted flight-day.`, 'holds');
  if (flightDays === undefined)
    return say(`How many of the ${limit.amount} flight-days are used is not known.`, 'unknown');
  if (flightDays < limit.amount) {
    const which = lastFlightDayOn === departsOn ? flightDays : flightDays + 1;
    return say(`${day} is flight-day ${which} of ${limit.amount}.`, 'holds');
  }
  if (flightDays > limit.amount) return say(`${flightDays} of ${limit.amount} flight-days are used up.`, 'fails');
  if (lastFlightDayOn === undefined) {
    return say(
      `All ${limit.amount} flight-days are used; whether ${day} is the last of them is not known.`,
      'unknown',
    );
  }
  return lastFlightDayOn === departsOn
    ? say(`${day} is flight-day ${flightDays} of ${limit.amount}, the last one.`, 'holds')
    : say(`${day} would be flight-day ${flightDays + 1}; the limit is ${limit.amount}.`, 'fails');
}
