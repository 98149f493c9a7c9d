import type { RectificationClock } from './clock.js';
import { writeInstant } from './instant.js';
import { dayOfLeg, type ReadLeg } from './read-legs.js';
import type { CountingSettings } from './settings.js';

export interface FlightDays {
  count: number;
  /** The last one: the day on which it began. */
  lastOn: string | null;
  /** When it began: its first off-blocks. */
  lastStartsAt: string | null;
}

export const FLIGHT_DAY_HOURS = 24;
const FLIGHT_DAY_MS = FLIGHT_DAY_HOURS * 3_600_000;

/**
 * Flight-days of these legs, in the order flown: the days in the base on which one of them left the blocks, that of
 * discovery excluded; or stretches of 24 hours, each from the first off-blocks that lies in none before it.
 */
export function flightDaysOf(
  legs: readonly ReadLeg[],
  clock: Pick<RectificationClock, 'base' | 'dayOfDiscovery'>,
  flightDay: CountingSettings['flightDay'],
): FlightDays {
  const found = { count: 0, lastOn: null as string | null };
  let last: ReadLeg['offBlock'] | null = null;
  for (const leg of legs) {
    const on = dayOfLeg(leg, clock.base);
    const isNew =
      flightDay === 'from-first-out'
        ? last === null || leg.offBlock.epochMilliseconds - last.epochMilliseconds >= FLIGHT_DAY_MS
        : on > (found.lastOn ?? clock.dayOfDiscovery);
    if (!isNew) continue;
    last = leg.offBlock;
    found.count += 1;
    found.lastOn = on;
  }
  return { ...found, lastStartsAt: last === null ? null : writeInstant(last) };
}
