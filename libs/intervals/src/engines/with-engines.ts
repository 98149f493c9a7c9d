import { readInstant, writeInstant } from '../instant.js';
import type { EngineUse, Leg } from '../leg.js';
import { readLegs } from '../read-legs.js';
import type { CountingSettings } from '../settings.js';
import type { EngineCounts } from './engine-count.js';
import { differenceOf, inOrder } from './engine-counters.js';

/**
 * Legs with what people state of the engines beside them, as every interval counts them.
 *
 * A run counts when it was. Where a reading says more than was counted since the reading before, the rest counts at the
 * reading: nobody knows when it was used, and later is the stricter way. Where it says less nothing is given back.
 */
export function withEngines(
  legs: readonly Leg[],
  { readings, runs }: EngineCounts,
  hourClock: CountingSettings['hourClock'],
): Leg[] {
  const flown = readLegs(legs);
  const known = inOrder(readings);
  const positions = [...new Set(known.map(({ reading }) => reading.position))];
  const found = positions.flatMap((position) => {
    const own = known.filter(({ reading }) => reading.position === position);
    return own.flatMap(({ reading: { readAt } }, index) => {
      const { minutes, cycles } = differenceOf(own, index, { flown, runs, hourClock }) ?? { minutes: 0, cycles: 0 };
      const more = { minutes: Math.max(0, minutes), cycles: Math.max(0, cycles) };
      return more.minutes + more.cycles > 0 ? [engineAlone(readAt, position, more)] : [];
    });
  });
  return [
    ...legs,
    ...runs.map(({ at, position, minutes, cycles }) => engineAlone(at, position, { minutes, cycles })),
    ...found,
  ];
}

/** It is over as it begins, so that a count that starts later takes nothing of it. */
function engineAlone(at: string, position: string, use: EngineUse): Leg {
  const instant = writeInstant(readInstant('engine', at));
  return {
    offBlockAt: instant,
    landedAt: instant,
    onBlockAt: instant,
    blockMinutes: 0,
    flightMinutes: 0,
    cycles: 0,
    landings: 0,
    engines: { [position]: use },
    onlyEngines: true,
  };
}
