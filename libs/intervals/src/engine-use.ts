import type { RectificationClock } from './clock.js';
import { everyLimit } from './every-limit.js';
import type { EngineUse, Leg } from './leg.js';
import type { CountingSettings } from './settings.js';
import type { Used } from './used.js';

type EngineUsed = Pick<Used, 'engineMinutes' | 'engineCycles'>;

/**
 * What an engine used, where the interval asks for it. An engine that a leg does not name ran with the aircraft. Where
 * the interval names no engine, the one that was used most counts, each counter by itself: the stricter way.
 */
export function engineUse(
  clock: RectificationClock,
  legs: readonly Leg[],
  hourClock: CountingSettings['hourClock'],
): EngineUsed {
  if (!everyLimit(clock).some(({ unit }) => unit.startsWith('engine-'))) return {};
  const named = [...new Set(legs.flatMap((leg) => Object.keys(leg.engines ?? {})))];
  const asked = clock.kind === 'counted' ? clock.engine : undefined;
  const positions = asked === undefined ? ['', ...named] : [asked];
  const used = positions.map((position) => {
    const uses = legs.map((leg) => useOf(leg, position, hourClock));
    return { minutes: total(uses.map((use) => use.minutes)), cycles: total(uses.map((use) => use.cycles)) };
  });
  return {
    engineMinutes: Math.max(...used.map(({ minutes }) => minutes)),
    engineCycles: Math.max(...used.map(({ cycles }) => cycles)),
  };
}

/** What a leg used of the engine at a position. */
export function useOf(leg: Leg, position: string, hourClock: CountingSettings['hourClock']): EngineUse {
  const own = leg.engines && Object.hasOwn(leg.engines, position) ? leg.engines[position] : undefined;
  return own ?? { minutes: hourClock === 'block' ? leg.blockMinutes : leg.flightMinutes, cycles: leg.cycles };
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0);
}
