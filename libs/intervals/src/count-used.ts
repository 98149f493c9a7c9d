import type { Temporal } from 'temporal-polyfill';
import { minutesBetween } from './calendar-day.js';
import type { CountedClock, RectificationClock } from './clock.js';
import { engineUse } from './engine-use.js';
import { flightDaysOf, type FlightDays } from './flight-days-of.js';
import { readInstant } from './instant.js';
import { hasFlown, type Leg } from './leg.js';
import { isAfter, readLegs } from './read-legs.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { stationUse } from './station-use.js';
import type { CountedUse } from './used.js';

/** Settings of counting; `at` leaves out legs that leave the blocks after that instant. */
export interface CountOptions extends Partial<CountingSettings> {
  at?: string;
}

/**
 * Counts what the legs used of a clock, in any order of the list.
 *
 * A flight counts when it left the blocks at or after the start and got off the ground; a flight-day is a day in the
 * base on which such a flight left the blocks, the day of discovery excluded (FAA MMEL Policy Letter 25, DERIVED).
 * Throws IntervalInputError naming the leg.
 */
export function countUsed(clock: RectificationClock, legs: readonly Leg[], options: CountOptions = {}): CountedUse {
  const settings = countingSettings(undefined, options);
  const start = startOf(clock);
  const until = options.at === undefined ? null : readInstant('at', options.at);
  const begun = readLegs(legs).filter(({ offBlock }) => until === null || !isAfter(offBlock, until));
  const after = begun.filter(({ offBlock }) => !isAfter(start, offBlock));
  const moved = after.filter(({ leg }) => leg.onlyEngines !== true);
  const flown = moved.filter(({ leg }) => hasFlown(leg));
  const underWay = begun.filter(({ offBlock }) => isAfter(start, offBlock));
  const counting = [...after.map(({ leg }) => leg), ...underWay.map(({ leg }) => restOfLeg(leg, start, clock))];
  const days = flightDaysOf(settings.rampReturnMakesFlightDay ? moved : flown, clock, settings.flightDay);
  const used: CountedUse = {
    flights: flown.length,
    ...daysUsed(days, settings),
    flightMinutes: sum(counting, 'flightMinutes'),
    blockMinutes: sum(counting, 'blockMinutes'),
    cycles: sum(counting, 'cycles'),
    ...engineUse(clock, counting, settings.hourClock),
    ...stationUse(
      clock,
      begun.filter(({ leg }) => leg.onlyEngines !== true),
      moved,
      settings,
    ),
  };
  return clock.kind === 'counted' && clock.usedBefore !== undefined ? withUsedBefore(used, clock) : used;
}

/** From when a clock counts use: an interval of calendar days from the record, the others from their own start. */
export function startOf(clock: RectificationClock): Temporal.Instant {
  return clock.kind === 'counted'
    ? readInstant('startsAt', clock.startsAt)
    : readInstant('recordedAt', clock.recordedAt);
}

/** What a leg that was under way at the start still used after it; with unknown times all of it (the stricter way). */
function restOfLeg(leg: Leg, start: Temporal.Instant, clock: RectificationClock): Leg {
  const { engines: _, ...one } = leg;
  if (clock.kind === 'counted' && clock.countsFrom === 'next-flight') {
    return { ...one, flightMinutes: 0, blockMinutes: 0, cycles: 0, landings: 0 };
  }
  const after = (end: string | undefined, whole: number): number =>
    end === undefined ? whole : Math.min(whole, Math.max(0, minutesBetween(start, readInstant('leg', end))));
  const landedBefore = leg.landedAt !== undefined && !isAfter(readInstant('leg', leg.landedAt), start);
  const share = (minutes: number): number => (landedBefore ? 0 : after(leg.landedAt, minutes));
  const engines = Object.entries(leg.engines ?? {}).map(([position, use]) => [
    position,
    { minutes: share(use.minutes), cycles: landedBefore ? 0 : use.cycles },
  ]);
  return {
    ...one,
    flightMinutes: share(leg.flightMinutes),
    blockMinutes: after(leg.onBlockAt, leg.blockMinutes),
    cycles: landedBefore ? 0 : leg.cycles,
    ...(engines.length > 0 && { engines: Object.fromEntries(engines) }),
  };
}

function daysUsed(days: FlightDays, { flightDay }: CountingSettings) {
  const { count, lastOn, lastStartsAt } = days;
  const used = { flightDays: count, lastFlightDayOn: lastOn };
  return flightDay === 'from-first-out' ? { ...used, lastFlightDayStartsAt: lastStartsAt } : used;
}

/** A stated counter had used this much of its one limit before the legs here. */
function withUsedBefore(used: CountedUse, { limits, usedBefore = 0 }: CountedClock): CountedUse {
  switch (limits[0]?.unit) {
    case 'flights':
      return { ...used, flights: used.flights + usedBefore };
    case 'cycles':
      return { ...used, cycles: used.cycles + usedBefore };
    case 'flight-hours':
      return {
        ...used,
        flightMinutes: used.flightMinutes + usedBefore,
        blockMinutes: used.blockMinutes + usedBefore,
      };
    case 'engine-hours':
      return { ...used, engineMinutes: (used.engineMinutes ?? 0) + usedBefore };
    case 'engine-cycles':
      return { ...used, engineCycles: (used.engineCycles ?? 0) + usedBefore };
    default:
      return used;
  }
}

function sum(legs: readonly Leg[], counter: 'flightMinutes' | 'blockMinutes' | 'cycles'): number {
  return legs.reduce((total, leg) => total + leg[counter], 0);
}
