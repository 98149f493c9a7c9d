import { Temporal } from 'temporal-polyfill';
import { useOf } from '../engine-use.js';
import { readInstant } from '../instant.js';
import type { EngineUse, Leg } from '../leg.js';
import { isAfter, readLegs, type ReadLeg } from '../read-legs.js';
import type { CountingSettings } from '../settings.js';
import { checkWholeNumbers } from '../whole-numbers.js';
import type { EngineCounts, EngineReading, EngineRun } from './engine-count.js';

/** The counters of one engine: what was read last, with what it used since. */
export interface EngineCounter {
  position: string;
  serial: string;
  minutes: number;
  cycles: number;
  reading: EngineReading;
  /** What legs and runs make since the reading. */
  since: EngineUse;
  /** The reading less what was counted from the one before of the same engine; null where there is none before. */
  differed: EngineUse | null;
}

export interface CountedAt extends Pick<CountingSettings, 'hourClock'> {
  /** Nothing that began after it is counted. */
  at: string;
}

/**
 * The counters of each engine of which something was read, by position: the newest reading, with the legs and runs that
 * began from then on added. A reading of another serial number at the same position is another engine, which counts from
 * its own. Throws IntervalInputError naming the place.
 */
export function engineCounters(
  { readings, runs }: EngineCounts,
  legs: readonly Leg[],
  { at, hourClock }: CountedAt,
): EngineCounter[] {
  const until = readInstant('at', at);
  const flown = readLegs(legs);
  const known = inOrder(readings).filter(({ instant }) => !isAfter(instant, until));
  const positions = [...new Set(known.map(({ reading }) => reading.position))].sort();
  return positions.flatMap((position) => {
    const own = known.filter(({ reading }) => reading.position === position);
    const last = own.at(-1);
    if (last === undefined) return [];
    const used = usedBetween(position, flown, runs, { from: last.instant, until, hourClock, whole: true });
    const { serial, minutes, cycles } = last.reading;
    const differed = differenceOf(own, own.length - 1, { flown, runs, hourClock });
    const now = { minutes: minutes + used.minutes, cycles: cycles + used.cycles };
    return [{ position, serial, ...now, reading: last.reading, since: used, differed }];
  });
}

export interface KnownReading {
  reading: EngineReading;
  instant: Temporal.Instant;
}

/** Readings with their instants, the oldest first. Throws IntervalInputError. */
export function inOrder(readings: readonly EngineReading[]): KnownReading[] {
  return readings
    .map((reading, index) => {
      checkWholeNumbers(`readings[${index}]`, reading, ['minutes', 'cycles']);
      return { reading, instant: readInstant(`readings[${index}].readAt`, reading.readAt) };
    })
    .sort((one, other) => Temporal.Instant.compare(one.instant, other.instant));
}

interface Counted extends Pick<CountingSettings, 'hourClock'> {
  flown: readonly ReadLeg[];
  runs: readonly EngineRun[];
}

/** How far a reading is from what was counted since the one before it; null where that is of another engine, or none is. */
export function differenceOf(
  own: readonly KnownReading[],
  index: number,
  { flown, runs, hourClock }: Counted,
): EngineUse | null {
  const [last, before] = [own[index], own[index - 1]];
  if (last === undefined || before?.reading.serial !== last.reading.serial) return null;
  const span = { from: before.instant, until: last.instant, hourClock, whole: false };
  const used = usedBetween(last.reading.position, flown, runs, span);
  return {
    minutes: last.reading.minutes - before.reading.minutes - used.minutes,
    cycles: last.reading.cycles - before.reading.cycles - used.cycles,
  };
}

interface Span extends Pick<CountingSettings, 'hourClock'> {
  from: Temporal.Instant;
  until: Temporal.Instant;
  /** Whether what begins at `until` itself still belongs to it. */
  whole: boolean;
}

function usedBetween(
  position: string,
  flown: readonly ReadLeg[],
  runs: readonly EngineRun[],
  { from, until, hourClock, whole }: Span,
): EngineUse {
  const inside = (instant: Temporal.Instant) =>
    !isAfter(from, instant) && (whole ? !isAfter(instant, until) : isAfter(until, instant));
  const uses = [
    ...flown.filter(({ offBlock }) => inside(offBlock)).map(({ leg }) => useOf(leg, position, hourClock)),
    ...runs.filter((run) => run.position === position && inside(readInstant('run', run.at))),
  ];
  return {
    minutes: uses.reduce((sum, { minutes }) => sum + minutes, 0),
    cycles: uses.reduce((sum, { cycles }) => sum + cycles, 0),
  };
}
