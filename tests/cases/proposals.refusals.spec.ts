/** Why a row is refused, beside every set of conditions and open items of no greater size. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { whyRefused, type RefusedBy, type Situation } from '#dispatch';
import type { Mel, Row } from '#mel';
import { everyChoice } from './oracles/every-choice.js';
import { plainOf } from './plain-of.js';
import { proposalCase } from './proposals.random.js';

const MOST = 2;

/** Does no choice with this row keep the conditions that count, with these other defects open? */
function refuses(mel: Mel, s: Situation, one: { defect: string; row: string }, elements: readonly string[]): boolean {
  const open = new Set([one.defect, ...elements]);
  const situation: Situation = {
    ...s,
    defects: s.defects.filter(({ id }) => open.has(id)),
    gates: { unanswered: [], openWork: [], orphans: [] },
    settings: { ...s.settings, combinationNeedsAcceptance: false },
  };
  const counts = (id: string): boolean => elements.includes(id);
  return [...everyChoice(plainOf(mel, situation), counts)].every(
    ({ hi, list }) => hi === 0 || !list.some(([, , defect, row]) => defect === one.defect && row === one.row),
  );
}

/** Every id that a condition of this MEL may have. */
function conditionIds(mel: Mel, { directives }: Situation): string[] {
  const ofRow = (row: Row): string[] => [
    'covers',
    'number',
    ...directives.map(({ number }) => number),
    ...(row.needsDown ?? []).map(({ entry, units = [] }) => `down ${[entry, ...units].join(' ')}`),
    ...(row.provisos ?? []).map(({ id }) => id),
    ...(row.judgements ?? []).map(({ id }) => id),
    ...(row.procedures ?? []).map(({ id }) => id),
    'placard',
  ];
  return [
    ...new Set(
      mel.entries.flatMap(({ number, subEntries }) =>
        subEntries.flatMap(({ rows }) => rows.flatMap((row) => ofRow(row).map((id) => `${number}/${row.id}/${id}`))),
      ),
    ),
  ];
}

function setsOf(elements: readonly string[], size: number): string[][] {
  if (size === 0) return [[]];
  return elements.flatMap((first, at) => setsOf(elements.slice(at + 1), size - 1).map((rest) => [first, ...rest]));
}

const elementsOf = ({ conditions, openItems }: RefusedBy): string[] =>
  [...conditions.map(({ id }) => id), ...openItems].sort();

describe('why a row is refused', () => {
  it('is told by every smallest set of conditions and open items that refuses it', () => {
    const seen = { refused: 0, usable: 0, byOne: 0, byTwo: 0, byItems: 0 };
    fc.assert(
      fc.property(proposalCase, ({ mel, situation }) => {
        const found = whyRefused(mel, situation, { budget: 1000 });
        const all = conditionIds(mel, situation);
        for (const { id, entry } of situation.defects) {
          for (const row of new Set(mel.entry(entry!)!.subEntries.flatMap(({ rows }) => rows.map((one) => one.id)))) {
            const one = { defect: id, row };
            const told = found.find((other) => other.defect === id && other.row === row);
            const others = situation.defects.map((other) => other.id).filter((other) => other !== id);
            const bases = mel.entries.flatMap(({ number, subEntries }) =>
              subEntries[0]!.units.map((unit) => `${number}/${unit}/basis`),
            );
            expect(told !== undefined, `${id} ${row}`).toBe(
              refuses(mel, situation, one, [...all, ...bases, ...others]) && isOffered(mel, situation, entry!, row),
            );
            if (told === undefined) {
              seen.usable += 1;
              continue;
            }
            seen.refused += 1;
            if (!told.isWhole) continue;
            const sets = told.because.map(elementsOf);
            const size = sets[0]!.length;
            expect(new Set(sets.map((set) => set.length))).toEqual(new Set([size]));
            for (const set of sets) expect(refuses(mel, situation, one, set)).toBe(true);
            if (told.because.some(({ openItems }) => openItems.length > 0)) seen.byItems += 1;
            if (size > MOST || situation.work.some(({ possible }) => possible === false)) continue;
            // Where closing an item can hurt, all other items are taken as open.
            if (JSON.stringify(mel.content).includes('needsDown') || pairs(mel, situation)) continue;
            const exhaustive = Array.from({ length: size }, (_, at) => setsOf([...all, ...bases, ...others], at + 1));
            const refusing = exhaustive.flat().filter((set) => refuses(mel, situation, one, set));
            expect(refusing.map((set) => set.sort().join()).sort()).toEqual(sets.map((set) => set.join()).sort());
            if (size === 1) seen.byOne += 1;
            else seen.byTwo += 1;
          }
        }
      }),
      { numRuns: 80 },
    );
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(0);
  });
});

function isOffered(mel: Mel, { aircraft }: Situation, entry: string, row: string): boolean {
  const { subEntries } = mel.entry(entry)!;
  const fitted = aircraft.configuration?.[0]?.toLowerCase();
  return subEntries
    .filter(({ id }) => subEntries.length === 1 || fitted === undefined || id === fitted)
    .some(({ rows }) => rows.some(({ id }) => id === row));
}

/** A row for more than one unit down, where more than one defect is open. */
function pairs(mel: Mel, { defects }: Situation): boolean {
  return mel.entries.some(
    ({ number, subEntries }) =>
      defects.filter(({ entry }) => entry === number).length > 1 &&
      subEntries.some(({ units, rows }) => rows.some(({ numberRequired }) => numberRequired < units.length - 1)),
  );
}
