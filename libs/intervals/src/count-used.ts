import { Temporal } from 'temporal-polyfill';
import { dayOf, minutesBetween } from './calendar-day.js';
import type { CountsFrom, RectificationClock } from './clock.js';
import { readInstant } from './instant.js';
import { hasFlown, type Leg } from './leg.js';
import { countingSettings, type CountingSettings } from './settings.js';
import type { CountedUse } from './used.js';
import { checkWholeNumbers } from './whole-numbers.js';

/** Settings of counting; `at` leaves out legs that leave the blocks after that instant. */
export interface CountOptions extends Partial<CountingSettings> {
  at?: string;
}

interface ReadLeg {
  leg: Leg;
  offBlock: Temporal.Instant;
}

/**
 * Counts what the legs used of a clock, in any order of the list.
 *
 * A flight counts when it left the blocks at or after the record and got off the ground; a flight-day is a day in the
 * base on which such a flight left the blocks, the day of discovery excluded (FAA MMEL Policy Letter 25, DERIVED).
 * Throws IntervalInputError naming the leg.
 */
export function countUsed(clock: RectificationClock, legs: readonly Leg[], options: CountOptions = {}): CountedUse {
  const settings = countingSettings(undefined, options);
  const start = readInstant('recordedAt', clock.recordedAt);
  const until = options.at === undefined ? null : readInstant('at', options.at);
  const begun = legs.map(readLeg).filter(({ offBlock }) => until === null || !isAfter(offBlock, until));
  const after = begun.filter(({ offBlock }) => !isAfter(start, offBlock));
  const flown = after.filter(({ leg }) => hasFlown(leg));
  const underWay = begun.filter(({ offBlock }) => isAfter(start, offBlock));
  const rest = underWay.map(({ leg }) => restOfLeg(leg, start, countsFromOf(clock)));
  const days = flightDays(settings.rampReturnMakesFlightDay ? after : flown, clock);
  return {
    flights: flown.length,
    flightDays: days.length,
    lastFlightDayOn: days.at(-1) ?? null,
    flightMinutes: sum([...after.map(({ leg }) => leg), ...rest], 'flightMinutes'),
    blockMinutes: sum([...after.map(({ leg }) => leg), ...rest], 'blockMinutes'),
    cycles: sum([...after.map(({ leg }) => leg), ...rest], 'cycles'),
  };
}

type Use = Pick<Leg, 'flightMinutes' | 'blockMinutes' | 'cycles'>;

/** What a leg that was under way at the record still used after it; with unknown times all of it (the stricter way). */
function restOfLeg(leg: Leg, start: Temporal.Instant, countsFrom: CountsFrom): Use {
  if (countsFrom === 'next-flight') return { flightMinutes: 0, blockMinutes: 0, cycles: 0 };
  const after = (end: string | undefined, whole: number): number =>
    end === undefined ? whole : Math.min(whole, Math.max(0, minutesBetween(start, readInstant('leg', end))));
  const landedBefore = leg.landedAt !== undefined && !isAfter(readInstant('leg', leg.landedAt), start);
  return {
    flightMinutes: landedBefore ? 0 : after(leg.landedAt, leg.flightMinutes),
    blockMinutes: after(leg.onBlockAt, leg.blockMinutes),
    cycles: landedBefore ? 0 : leg.cycles,
  };
}

function countsFromOf(clock: RectificationClock): CountsFrom {
  return clock.kind === 'counted' ? clock.countsFrom : 'record';
}

function flightDays(legs: ReadLeg[], clock: RectificationClock): string[] {
  const days = legs.map(({ offBlock }) => dayOf(offBlock, clock.base).toString());
  return [...new Set(days)].filter((day) => day > clock.dayOfDiscovery).sort();
}

function readLeg(leg: Leg, index: number): ReadLeg {
  checkWholeNumbers(`legs[${index}]`, leg, ['blockMinutes', 'flightMinutes', 'cycles', 'landings']);
  for (const time of ['airborneAt', 'landedAt', 'onBlockAt'] as const) {
    if (leg[time] !== undefined) readInstant(`legs[${index}].${time}`, leg[time]);
  }
  return { leg, offBlock: readInstant(`legs[${index}].offBlockAt`, leg.offBlockAt) };
}

function sum(legs: readonly Use[], counter: keyof Use): number {
  return legs.reduce((total, leg) => total + leg[counter], 0);
}

function isAfter(one: Temporal.Instant, other: Temporal.Instant): boolean {
  return Temporal.Instant.compare(one, other) > 0;
}
