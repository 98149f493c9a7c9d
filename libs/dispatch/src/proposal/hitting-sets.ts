/** Sets that hold at least one element of each of some sets, and contain no smaller set that does. */
import { byCode } from '../units/unit.js';

/** By size, then by code units; the empty set when there is nothing to hit. */
export function smallestFirst(sets: readonly (readonly string[])[]): string[][] {
  let hits: string[][] = [[]];
  for (const set of sets) {
    const kept = hits.filter((hit) => hit.some((one) => set.includes(one)));
    const grown = hits
      .filter((hit) => !kept.includes(hit))
      .flatMap((hit) => set.map((one) => [...hit, one].sort(byCode)))
      .filter((hit) => !kept.some((smaller) => smaller.every((one) => hit.includes(one))));
    hits = [...kept, ...smallest(grown)];
  }
  return hits.sort((a, b) => a.length - b.length || byCode(a.join('\n'), b.join('\n')));
}

function smallest(hits: readonly string[][]): string[][] {
  const distinct = [...new Map(hits.map((hit) => [hit.join('\n'), hit])).values()];
  return distinct.filter(
    (hit) => !distinct.some((other) => other.length < hit.length && other.every((one) => hit.includes(one))),
  );
}
