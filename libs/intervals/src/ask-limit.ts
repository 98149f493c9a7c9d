import type { RectificationClock } from './clock.js';
import { endOf } from './fixed-end.js';
import { readInstant } from './instant.js';
import type { Limit } from './interval-text.js';
import type { LimitAnswer, PlannedLeg } from './limit-answer.js';
import { askFixedEnd } from './limits/fixed-end.js';
import { askFlightDays } from './limits/flight-days.js';
import { askHours, askNumber } from './limits/number-limit.js';
import { askDesignated, askOpportunity } from './limits/stations.js';
import type { CountingSettings } from './settings.js';
import type { Used } from './used.js';

/** What one limit says to one flight. Throws IntervalInputError. */
export function askLimit(
  limit: Limit,
  clock: RectificationClock,
  flight: PlannedLeg,
  used: Used,
  settings: CountingSettings,
): LimitAnswer {
  const offBlock = readInstant('flight.offBlockAt', flight.offBlockAt);
  const onBlock = flight.onBlockAt === undefined ? null : readInstant('flight.onBlockAt', flight.onBlockAt);
  const block = settings.hourClock === 'block';
  const planned = block ? flight.blockMinutes : flight.flightMinutes;
  const hours = timeLimited(clock) ? { ...settings, hoursCountedAt: 'arrival' as const } : settings;
  switch (limit.unit) {
    case 'calendar-days':
    case 'hours':
      return askFixedEnd(limit, endOf(limit, clock), clock.base, offBlock, onBlock, settings);
    case 'flight-days':
      return askFlightDays({ limit, clock, used, offBlock, onBlock, settings });
    case 'flights':
      return askNumber(limit, used.flights, 1);
    case 'cycles':
      return askNumber(limit, used.cycles, flight.cycles ?? 1);
    case 'engine-cycles':
      return askNumber(limit, used.engineCycles, flight.engineCycles ?? flight.cycles ?? 1);
    case 'flight-hours':
      return askHours(limit, block ? used.blockMinutes : used.flightMinutes, planned, hours);
    case 'engine-hours':
      return askHours(limit, used.engineMinutes, flight.engineMinutes ?? planned, hours);
    case 'designated-departures':
      return askDesignated({ limit, flight, offBlock, used, settings });
    case 'base-opportunities':
      return askOpportunity({ limit, flight, offBlock, used, settings });
  }
}

/** Hours of time-limited dispatch count at arrival, whatever else the operator settled. Policy letter 45. */
function timeLimited(clock: RectificationClock): boolean {
  return clock.kind === 'counted' && clock.timeLimited === true;
}
