/** Random days on small invented MELs: what is said to save a flight does, when it is done. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../../tests/support/small-mel.js';
import type { PlannedFlight } from '../../situation.js';
import { nextFlights } from '../judge-next-flights.js';
import { underRow } from '../../proposal/rows-of-defect.js';

const rvsm = { fact: 'flight.rvsm', operator: 'equal', value: false } as const;
const night = { fact: 'flight.overWater', operator: 'equal', value: false } as const;
const other = { fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry: 'c' } } as const;
const M1 = { id: 'M1', kind: 'M', text: 'Do it.', minutes: 30, repeat: 'each-departure' } as const;
const mel = melOf(
  entry('a', [{ provisos: [rvsm] }, { provisos: [night] }]),
  entry('b', [{ provisos: [night] }, { provisos: [rvsm, other] }]),
  entry('c', [{ procedures: [M1] }, { provisos: [rvsm, night] }]),
);

const day = fc.record({
  rows: fc.tuple(...['a', 'b', 'c'].map(() => fc.constantFrom('1', '2'))),
  open: fc.subarray(['a', 'b', 'c'], { minLength: 2 }),
  facts: fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 3 }),
  maintenance: fc.tuple(fc.boolean(), fc.boolean()),
});

function planOf(facts: [boolean, boolean][]): PlannedFlight[] {
  return facts.map(([high, water], at) => ({
    id: `F${at + 1}`,
    from: at % 2 === 0 ? 'Northmere' : 'Saltby',
    to: at % 2 === 0 ? 'Saltby' : 'Northmere',
    offBlockAt: `2026-03-10T${String(8 + 4 * at).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-03-10T${String(10 + 4 * at).padStart(2, '0')}:00Z`,
    flightMinutes: 100,
    facts: { 'flight.rvsm': high, 'flight.overWater': water },
  }));
}

describe('several changes together', () => {
  it('let the broken flight leave when they are made, and need at least two', async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(day, async ({ rows, open, facts, maintenance }) => {
        const defects = open.map((one) => ({ entry: one, row: rows['abc'.indexOf(one)] ?? '1' }));
        const situation = situationOf(defects);
        const flights = planOf(facts);
        const stations = ['Northmere', 'Saltby'].map((station, at) => ({
          station,
          maintenance: maintenance[at] ?? true,
        }));
        const { savers, breaks, kept } = await nextFlights(mel, situation, flights, { stations });
        const several = savers.filter(({ kind }) => kind === 'several');
        seen += several.length;
        if (several.length > 0) expect(savers.every(({ size }) => size > 1)).toBe(true);
        for (const { parts = [], stops, defects: ids = [], size, keeps, flights: left = [] } of several) {
          expect(parts.length).toBeGreaterThan(1);
          expect(size).toBeGreaterThanOrEqual(parts.length);
          expect(keeps).toBeGreaterThan(kept - left.length);
          // Made before the first flight, where they can be made there, they keep as many as they promise at best.
          const isFirst = stops.at(-1)?.beforeFlight === 'F1' && left.length === 0;
          if (!isFirst || parts.some(({ kind }) => kind === 'send-person' || kind === 'do-work')) continue;
          const changed = parts.reduce((before, { kind, words }) => {
            const id = ids.find((one) =>
              words.includes(`Item ${situation.defects.find((d) => d.id === one)?.entry}`),
            )!;
            const row = / to row (\d)/.exec(words)?.[1] ?? null;
            const kept = before.defects.filter((one) => kind !== 'fix' || one.id !== id);
            return {
              ...before,
              defects: kept.map((one) => (one.id === id && row !== null ? underRow(one, row) : one)),
            };
          }, situation);
          const again = await nextFlights(mel, changed, flights, { stations });
          const broken = flights.findIndex(({ id }) => id === breaks?.flight);
          expect(again.kept).toBeGreaterThan(broken);
        }
      }),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThan(2);
  });
});
