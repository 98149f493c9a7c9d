/** The counters of an interval, one planned flight later. A counter that is not known stays unknown. */
import { clockOf } from '../frame/counting.js';
import { dayIn, millisOf } from '../frame/moment.js';
import type { PlannedFlight, Situation, Used } from '../situation.js';

/** `recordedAt` is where the count began; a flight that left the blocks before it is not counted. */
export function countFlight(used: Used, recordedAt: string, flight: PlannedFlight, situation: Situation): Used {
  const { base } = situation.settings;
  const clock = clockOf({ category: 'B', recordedAt, base, tzdb: situation.tzdb });
  if (millisOf('offBlockAt', flight.offBlockAt) < millisOf('recordedAt', clock.recordedAt)) return used;
  const counted: Used = {
    ...plus(used, 'flights', 1),
    ...plus(used, 'cycles', 1),
    ...plus(used, 'flightMinutes', flight.flightMinutes),
    ...plus(used, 'blockMinutes', blockMinutesOf(flight)),
  };
  const day = dayIn(base, 'offBlockAt', flight.offBlockAt);
  return { ...counted, ...(day > clock.dayOfDiscovery ? onDay(used, day) : daysOf(used)) };
}

function plus(used: Used, counter: 'flights' | 'cycles' | 'flightMinutes' | 'blockMinutes', by?: number): Used {
  const before = used[counter];
  return before === undefined || by === undefined ? {} : { [counter]: before + by };
}

function daysOf({ flightDays, lastFlightDayOn }: Used): Used {
  return {
    ...(flightDays === undefined ? {} : { flightDays }),
    ...(lastFlightDayOn === undefined ? {} : { lastFlightDayOn }),
  };
}

/** Whether the day counts already can be told only where the last counted day is known, or none was. */
function onDay({ flightDays, lastFlightDayOn }: Used, day: string): Used {
  const last = lastFlightDayOn ?? (flightDays === 0 || lastFlightDayOn === null ? '' : undefined);
  if (flightDays === undefined || last === undefined) return { lastFlightDayOn: day };
  return day > last ? { flightDays: flightDays + 1, lastFlightDayOn: day } : { flightDays, lastFlightDayOn: last };
}

/** As planned, or from the blocks times. */
function blockMinutesOf({ blockMinutes, offBlockAt, onBlockAt }: PlannedFlight): number | undefined {
  if (blockMinutes !== undefined || onBlockAt === undefined) return blockMinutes;
  const minutes = Math.round((millisOf('onBlockAt', onBlockAt) - millisOf('offBlockAt', offBlockAt)) / 60_000);
  return Math.max(0, minutes);
}
