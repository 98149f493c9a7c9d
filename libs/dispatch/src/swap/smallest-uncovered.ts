/**
 * The smallest set of flights that cannot be flown together, whoever takes them.
 *
 * Every way to hand out the aircraft leaves some flights uncovered. A set cannot be covered exactly when it has a flight
 * in each of these remainders, so the smallest such set is a least hitting set. The remainders are found as they are
 * needed: the least set that hits those known so far is tried; when it can be covered after all, the assignment that
 * covers it and as much as possible besides gives one more remainder.
 */
import { solve, type Program, type Sum } from './solver.js';
import type { Pair, Pairing } from './pairing.js';

export async function smallestUncovered(pairing: Pairing): Promise<string[]> {
  const flights = pairing.rotations.flatMap((rotation) => rotation.flights.map(({ id }) => id));
  const remainders: ReadonlySet<string>[] = [];
  for (;;) {
    const hit = await leastHitting(flights, remainders);
    const left = await coverWith(pairing, hit);
    if (left === null) return hit;
    remainders.push(left);
  }
}

async function leastHitting(flights: readonly string[], sets: readonly ReadonlySet<string>[]): Promise<string[]> {
  const chosen = await solve({
    variables: flights.length,
    minimise: flights.map((_, index) => [index, 1] as const),
    where: sets.map((set) => ({
      sum: flights.flatMap((id, index) => (set.has(id) ? [[index, 1] as const] : [])),
      is: '>=' as const,
      than: 1,
    })),
  });
  if (chosen === null) throw new Error('All flights can be covered together.');
  return flights.filter((_, index) => chosen.has(index));
}

/** The flights left uncovered by an assignment that covers all of these and most of the others; null when none does. */
async function coverWith(pairing: Pairing, wanted: readonly string[]): Promise<Set<string> | null> {
  const pairs = pairing.pairs.filter(({ misses }) => !wanted.some((flight) => misses.has(flight)));
  const missed: Sum = pairs.map(
    ({ rotation, misses }, index) => [index, misses.size - rotation.flights.length] as const,
  );
  const chosen = await solve({ variables: pairs.length, minimise: missed, where: rules(pairing, pairs, wanted) });
  if (chosen === null) return null;
  const flown = pairs.filter((_, index) => chosen.has(index));
  return new Set(
    pairing.rotations.flatMap((one) => {
      const pair = flown.find(({ rotation }) => rotation === one);
      return one.flights.map(({ id }) => id).filter((id) => pair === undefined || pair.misses.has(id));
    }),
  );
}

/** A rotation none of whose flights is wanted may stay on the ground. */
function rules(pairing: Pairing, pairs: readonly Pair[], wanted: readonly string[]): Program['where'] {
  const of = (is: (pair: Pair) => boolean): Sum =>
    pairs.flatMap((pair, index) => (is(pair) ? [[index, 1] as const] : []));
  return [
    ...pairing.rotations.map((one) => ({
      sum: of(({ rotation }) => rotation === one),
      is: one.flights.some(({ id }) => wanted.includes(id)) ? ('=' as const) : ('<=' as const),
      than: 1,
    })),
    ...pairing.aircraft.map(({ id }) => ({ sum: of(({ aircraft }) => aircraft === id), is: '<=' as const, than: 1 })),
  ];
}
