/** The counters of an interval, one planned flight later. A counter that is not known stays unknown. */
import { useAfter } from '#intervals';
import { clockOf } from '../frame/counting.js';
import { millisOf } from '../frame/moment.js';
import type { PlannedFlight, Situation, Used } from '../situation.js';

/** `recordedAt` is where the count began; a flight that left the blocks before it is not counted. */
export function countFlight(used: Used, recordedAt: string, flight: PlannedFlight, situation: Situation): Used {
  const { base, counting = {} } = situation.settings;
  const clock = clockOf({ category: 'B', recordedAt, base, tzdb: situation.tzdb });
  if (millisOf('offBlockAt', flight.offBlockAt) < millisOf('recordedAt', clock.recordedAt)) return used;
  return useAfter(clock, used, flight, counting);
}
