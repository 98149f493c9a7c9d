/**
 * Gives every rotation one aircraft and no aircraft two. Of all such assignments the one with fewest flights flown by
 * another aircraft than planned; of these the one with the least work without a figure, then with fewest minutes.
 */
import { solve, type Program, type Sum } from './solver.js';
import type { Pair, Pairing } from './pairing.js';

/** The aims, the most important first. */
const AIMS: readonly ((pair: Pair, pairing: Pairing) => number)[] = [
  changedFlights,
  ({ aircraft, rotation }, pairing) => flightsWithoutFigure(pairing, aircraft, rotation),
  ({ aircraft, rotation }, pairing) => minutesWithFigure(pairing, aircraft, rotation),
];

export function changedFlights({ aircraft, rotation }: Pair): number {
  return rotation.planned === aircraft ? 0 : rotation.flights.length;
}

export function flightsWithoutFigure(pairing: Pairing, aircraft: string, { flights }: Pair['rotation']): number {
  return flights.filter(({ id }) => pairing.minutes(aircraft, id) === null).length;
}

export function minutesWithFigure(pairing: Pairing, aircraft: string, { flights }: Pair['rotation']): number {
  return flights.reduce((sum, { id }) => sum + (pairing.minutes(aircraft, id) ?? 0), 0);
}

/** Null when not all flights may be flown. */
export async function assign(pairing: Pairing): Promise<Pair[] | null> {
  const pairs = pairing.pairs.filter(({ misses }) => misses.size === 0);
  const where = [...oneEach(pairing, pairs)];
  let chosen: Set<number> | null = null;
  for (const aim of AIMS) {
    const cost: Sum = pairs.map((pair, index) => [index, aim(pair, pairing)] as const).filter(([, by]) => by > 0);
    chosen = await solve({ variables: pairs.length, minimise: cost, where });
    if (chosen === null) return null;
    const least = cost.reduce((sum, [index, by]) => sum + (chosen?.has(index) === true ? by : 0), 0);
    where.push({ sum: cost, is: '<=', than: least });
  }
  return pairs.filter((_, index) => chosen?.has(index) === true);
}

/** Exactly one aircraft for each rotation, at most one rotation for each aircraft. */
export function oneEach(pairing: Pairing, pairs: readonly Pair[]): Program['where'][number][] {
  const of = (is: (pair: Pair) => boolean): Sum =>
    pairs.flatMap((pair, index) => (is(pair) ? [[index, 1] as const] : []));
  return [
    ...pairing.rotations.map((one) => ({ sum: of(({ rotation }) => rotation === one), is: '=' as const, than: 1 })),
    ...pairing.aircraft.map(({ id }) => ({ sum: of(({ aircraft }) => aircraft === id), is: '<=' as const, than: 1 })),
  ];
}
