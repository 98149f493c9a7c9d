import { Temporal } from 'temporal-polyfill';
import { dayOf, minutesBetween } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { readInstant } from './instant.js';
import type { PlannedLeg } from './limit-answer.js';
import { endOfFlightDay } from './limits/flight-days.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { isAmong } from './station-use.js';
import type { Used } from './used.js';

/** A planned flight with where it goes. */
export interface FlightFlown extends PlannedLeg {
  to?: string;
  /** The calendar day of its off-block in the base, for whoever has read it before; read from `offBlockAt` when absent. */
  leavesOn?: string;
}

/**
 * The counters of an interval, one flight later, flown as it is planned. A counter that is not known stays unknown.
 *
 * The flight must have left after the start of the interval. Throws IntervalInputError.
 */
export function useAfter(
  clock: Pick<RectificationClock, 'base' | 'dayOfDiscovery'>,
  used: Used,
  flight: FlightFlown,
  settings: Partial<CountingSettings> = {},
): Used {
  const settled = countingSettings(undefined, settings);
  const block = flight.blockMinutes ?? blockMinutesOf(flight);
  const engine = flight.engineMinutes ?? (settled.hourClock === 'block' ? block : flight.flightMinutes);
  return {
    ...(used.done === undefined ? {} : { done: used.done }),
    ...plus('flights', used.flights, 1),
    ...plus('cycles', used.cycles, flight.cycles ?? 1),
    ...plus('flightMinutes', used.flightMinutes, flight.flightMinutes),
    ...plus('blockMinutes', used.blockMinutes, block),
    ...plus('engineMinutes', used.engineMinutes, engine),
    ...plus('engineCycles', used.engineCycles, flight.engineCycles ?? flight.cycles ?? 1),
    ...daysAfter(clock, used, flight, settled),
    ...stationsAfter(used, flight, settled),
  };
}

function plus(counter: keyof Used, before: number | undefined, by: number | undefined): Used {
  return before === undefined || by === undefined ? {} : { [counter]: before + by };
}

function daysAfter(
  { base, dayOfDiscovery }: Pick<RectificationClock, 'base' | 'dayOfDiscovery'>,
  used: Used,
  flight: FlightFlown,
  { flightDay }: CountingSettings,
): Used {
  const { flightDays, lastFlightDayOn, lastFlightDayStartsAt } = used;
  const day = flight.leavesOn ?? dayOf(readInstant('flight.offBlockAt', flight.offBlockAt), base).toString();
  if (flightDay === 'from-first-out') {
    const runs =
      lastFlightDayStartsAt == null ? flightDays !== 0 && undefined : isInside(flight, lastFlightDayStartsAt);
    if (flightDays === undefined || runs === undefined) return {};
    if (runs)
      return {
        flightDays,
        lastFlightDayOn: lastFlightDayOn ?? null,
        lastFlightDayStartsAt: lastFlightDayStartsAt ?? null,
      };
    return { flightDays: flightDays + 1, lastFlightDayOn: day, lastFlightDayStartsAt: flight.offBlockAt };
  }
  if (day <= dayOfDiscovery) {
    return {
      ...(flightDays === undefined ? {} : { flightDays }),
      ...(lastFlightDayOn === undefined ? {} : { lastFlightDayOn }),
    };
  }
  // Whether the day counts already can be told only where the last counted day is known, or none was.
  const last = lastFlightDayOn ?? (flightDays === 0 || lastFlightDayOn === null ? '' : undefined);
  if (flightDays === undefined || last === undefined) return { lastFlightDayOn: day };
  return day > last ? { flightDays: flightDays + 1, lastFlightDayOn: day } : { flightDays, lastFlightDayOn: last };
}

function stationsAfter(
  used: Used,
  flight: FlightFlown,
  { designatedStations, bases, opportunityMinutes }: CountingSettings,
): Used {
  const designated = isAmong(flight.from, designatedStations);
  const atBase = isAmong(flight.from, bases);
  const stood = atBase === true ? stoodLongEnough(used, flight, opportunityMinutes) : atBase;
  return {
    ...(designated === null ? {} : plus('designatedDepartures', used.designatedDepartures, Number(designated))),
    ...(stood === null ? {} : plus('baseOpportunities', used.baseOpportunities, Number(stood))),
    ...(flight.to === undefined || flight.onBlockAt === undefined
      ? {}
      : { station: flight.to, standsSince: flight.onBlockAt }),
  };
}

function stoodLongEnough(
  { station, standsSince }: Used,
  { from, offBlockAt }: FlightFlown,
  needed: number,
): boolean | null {
  if (needed === 0) return true;
  if (station !== from || standsSince === undefined) return null;
  return (
    minutesBetween(readInstant('used.standsSince', standsSince), readInstant('offBlockAt', offBlockAt)) >= needed
  );
}

function isInside({ offBlockAt }: FlightFlown, startsAt: string): boolean {
  const offBlock = readInstant('flight.offBlockAt', offBlockAt);
  return Temporal.Instant.compare(offBlock, endOfFlightDay(startsAt)) < 0;
}

function blockMinutesOf({ offBlockAt, onBlockAt }: FlightFlown): number | undefined {
  if (onBlockAt === undefined) return undefined;
  const minutes = minutesBetween(
    readInstant('flight.offBlockAt', offBlockAt),
    readInstant('flight.onBlockAt', onBlockAt),
  );
  return Math.max(0, minutes);
}
