import { dayOf } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { writeInstant } from './instant.js';
import { isAfter, type ReadLeg } from './read-legs.js';
import type { CountingSettings } from './settings.js';

export interface FlightDays {
  count: number;
  /** The last one: the day on which it began. */
  lastOn: string | null;
  /** When it began: its first off-blocks. */
  lastStartsAt: string | null;
}

export const FLIGHT_DAY_HOURS = 24;

/**
 * Flight-days of these legs, in the order flown: the days in the base on which one of them left the blocks, that of
 * discovery excluded; or stretches of 24 hours, each from the first off-blocks that lies in none before it.
 */
export function flightDaysOf(
  legs: readonly ReadLeg[],
  clock: Pick<RectificationClock, 'base' | 'dayOfDiscovery'>,
  flightDay: CountingSettings['flightDay'],
): FlightDays {
  const found: FlightDays = { count: 0, lastOn: null, lastStartsAt: null };
  let ends: ReadLeg['offBlock'] | null = null;
  for (const { offBlock } of legs) {
    const on = dayOf(offBlock, clock.base).toString();
    const isNew =
      flightDay === 'from-first-out'
        ? ends === null || !isAfter(ends, offBlock)
        : on > (found.lastOn ?? clock.dayOfDiscovery);
    if (!isNew) continue;
    ends = offBlock.add({ hours: FLIGHT_DAY_HOURS });
    found.count += 1;
    found.lastOn = on;
    found.lastStartsAt = writeInstant(offBlock);
  }
  return found;
}
