/** The counters of an interval, one planned flight later. A counter that is not known stays unknown. */
import { useAfter, type FlightFlown } from '#intervals';
import { clockOf } from '../frame/counting.js';
import { dayIn, millisOf } from '../frame/moment.js';
import type { PlannedFlight, Situation, Used } from '../situation.js';

/** `recordedAt` is where the count began; a flight that left the blocks before it is not counted. */
export function countFlight(used: Used, recordedAt: string, flight: FlightFlown, situation: Situation): Used {
  const { base, counting = {} } = situation.settings;
  const clock = clockOf({ category: 'B', recordedAt, base, tzdb: situation.tzdb });
  if (millisOf('offBlockAt', flight.offBlockAt) < millisOf('recordedAt', clock.recordedAt)) return used;
  return useAfter(clock, used, flight, counting);
}

/** Day and minutes are read once for a flight, and not again for every defect that it counts for. */
export function flownAs(flight: PlannedFlight, { settings: { base } }: Situation): FlightFlown {
  const { offBlockAt, onBlockAt, blockMinutes = minutesBetween(offBlockAt, onBlockAt) } = flight;
  const leavesOn = dayIn(base, 'flight.offBlockAt', offBlockAt);
  return { ...flight, leavesOn, ...(blockMinutes === undefined ? {} : { blockMinutes }) };
}

function minutesBetween(offBlockAt: string, onBlockAt: string | undefined): number | undefined {
  if (onBlockAt === undefined) return undefined;
  const millis = millisOf('flight.onBlockAt', onBlockAt) - millisOf('flight.offBlockAt', offBlockAt);
  return Math.max(0, Math.floor(millis / 60_000));
}
