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

/**
 * Those of the least size that hold one element of each set, at most so many; one empty set when there is nothing to hit.
 * Null when `take`, asked at each step, says that the budget ended.
 */
export function hittingSetsOf(
  sets: readonly (readonly string[])[],
  most: number,
  take: () => boolean,
): string[][] | null {
  for (let size = atLeast(sets); ; size++) {
    const found = new Map<string, string[]>();
    const isWhole = hit(sets, size, [], take, (elements) => {
      const sorted = [...elements].sort(byCode);
      if (found.size < most) found.set(sorted.join('\n'), sorted);
    });
    if (!isWhole) return null;
    if (found.size > 0) return [...found.values()].sort((a, b) => byCode(a.join('\n'), b.join('\n')));
  }
}

/** False when the budget ended. */
function hit(
  sets: readonly (readonly string[])[],
  size: number,
  chosen: readonly string[],
  take: () => boolean,
  found: (elements: readonly string[]) => void,
): boolean {
  if (!take()) return false;
  const open = sets.filter((set) => !set.some((one) => chosen.includes(one)));
  const [first] = open;
  if (first === undefined) {
    found(chosen);
    return true;
  }
  if (chosen.length + atLeast(open) > size) return true;
  const smallestSet = open.reduce((a, b) => (b.length < a.length ? b : a), first);
  return smallestSet.every((one) => hit(sets, size, [...chosen, one], take, found));
}

/** Sets that share no element need an element each. */
function atLeast(sets: readonly (readonly string[])[]): number {
  const used = new Set<string>();
  let count = 0;
  for (const set of sets) {
    if (set.some((one) => used.has(one))) continue;
    for (const one of set) used.add(one);
    count += 1;
  }
  return count;
}
