import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastDown } from './down.js';
import { unitKey, type Unit } from './unit.js';

const UNITS: Unit[] = ['a', 'b', 'c', 'd', 'e', 'f'].map((entry) => ({ entry, unit: '1' }));
const graph = fc.array(fc.tuple(fc.nat(5), fc.nat(5)), { maxLength: 14 });
const failed = fc.uniqueArray(fc.nat(5), { maxLength: 3 });

const follow = (edges: [number, number][]) => (unit: Unit) =>
  edges.filter(([from]) => UNITS[from]!.entry === unit.entry).map(([, to]) => ({ row: '1', units: [UNITS[to]!] }));

// Oracle: start from nothing and apply the whole rule again until nothing changes.
function naive(edges: [number, number][], roots: number[]): Set<number> {
  let set = new Set<number>();
  for (;;) {
    const next = new Set([...roots, ...edges.filter(([from]) => set.has(from)).map(([, to]) => to)]);
    if (next.size === set.size) return set;
    set = next;
  }
}

describe('the set of units that are down', () => {
  it('is the least fixpoint that naive iteration finds, cycles and long chains included', () => {
    fc.assert(
      fc.property(graph, failed, (edges, roots) => {
        const down = leastDown(
          roots.map((root) => UNITS[root]!),
          follow(edges),
        );
        expect([...down.keys()].sort()).toEqual([...naive(edges, roots)].map((unit) => unitKey(UNITS[unit]!)).sort());
      }),
      { numRuns: 2000 },
    );
  });

  it('holds nothing when nothing failed, whatever the rows say about each other', () => {
    const cycle: [number, number][] = [
      [0, 1],
      [1, 0],
    ];
    expect(leastDown([], follow(cycle)).size).toBe(0);
  });

  it('keeps a failed unit as failed though another row considers it inoperative', () => {
    const down = leastDown(
      [UNITS[0]!, UNITS[1]!],
      follow([
        [0, 1],
        [1, 2],
      ]),
    );
    expect(down.get('b/1')?.cause).toEqual({ failed: true });
    expect(down.get('c/1')?.cause).toEqual({ failed: false, by: UNITS[1], row: '1' });
  });
});
