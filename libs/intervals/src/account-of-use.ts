import { Temporal } from 'temporal-polyfill';
import type { RectificationClock } from './clock.js';
import { countUsed, startOf, type CountOptions } from './count-used.js';
import { everyLimit } from './every-limit.js';
import { sayLocal, sayMinutes } from './explain-time.js';
import { readInstant, writeInstant } from './instant.js';
import { writeLimit, type Limit } from './interval-text.js';
import { hasFlown, type Leg } from './leg.js';
import { leftOf } from './limit-left.js';
import { readLegs, type ReadLeg } from './read-legs.js';
import { countingSettings } from './settings.js';

/** One leg, and what is used of the interval once it is counted. */
export interface UseStep {
  offBlockAt: string;
  text: string;
}

/**
 * How use adds up, leg by leg in the order flown: `14 May 2026 07:40 UTC: 1 of 4 flights`. Empty where nothing is counted
 * from use. A leg that counts nothing says why. Throws IntervalInputError as countUsed does.
 */
export function accountOfUse(clock: RectificationClock, legs: readonly Leg[], options: CountOptions = {}): UseStep[] {
  const counted = everyLimit(clock).filter(({ unit }) => unit !== 'calendar-days' && unit !== 'hours');
  if (counted.length === 0) return [];
  const settings = countingSettings(undefined, options);
  const until = options.at === undefined ? null : readInstant('at', options.at);
  const begun = readLegs(legs).filter(
    ({ offBlock }) => until === null || Temporal.Instant.compare(offBlock, until) <= 0,
  );
  return begun.map((one, index) => {
    const used = countUsed(
      clock,
      begun.slice(0, index + 1).map(({ leg }) => leg),
      options,
    );
    const texts = counted.map((limit) => sayUsed(limit, leftOf(limit, clock, one.offBlock, used, settings).used));
    return {
      offBlockAt: writeInstant(one.offBlock),
      text: `${sayLocal(one.offBlock, clock.base)}${sayOdd(one, clock)}: ${texts.join(', ')}`,
    };
  });
}

/** What makes a leg count otherwise than a flight from the start on. */
function sayOdd({ leg, offBlock }: ReadLeg, clock: RectificationClock): string {
  const isBefore = Temporal.Instant.compare(offBlock, startOf(clock)) < 0;
  const odd = [...(isBefore ? ['left before the start'] : []), ...(hasFlown(leg) ? [] : [whyNotFlown(leg)])];
  return odd.length === 0 ? '' : ` (${odd.join(', ')})`;
}

function whyNotFlown({ onlyEngines, onBlockAt }: Leg): string {
  if (onlyEngines) return 'engine alone';
  return onBlockAt === undefined ? 'not yet airborne' : 'back on the ramp';
}

function sayUsed(limit: Limit, used: number | null): string {
  const whole = writeLimit(limit);
  if (used === null) return `how much of ${whole} is not known`;
  if (limit.unit.endsWith('-hours')) return `${sayMinutes(used)} of ${whole}`;
  if (limit.unit.endsWith('departures') || limit.unit.endsWith('opportunities'))
    return used === 0 ? `not yet the ${whole}` : `past the ${whole}`;
  return `${used} of ${whole}`;
}
