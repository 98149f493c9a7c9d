/** Least to fix beside every set of defects, each judged under every choice of rows. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastToFix, type Situation } from '#dispatch';
import type { Mel } from '#mel';
import { everyChoice } from './oracles/every-choice.js';
import { plainOf } from './plain-of.js';
import { proposalCase } from './proposals.random.js';

function mayFly(mel: Mel, situation: Situation, closed: readonly string[]): boolean {
  const defects = situation.defects.filter(({ id }) => !closed.includes(id));
  return [...everyChoice(plainOf(mel, { ...situation, defects }))].some(({ lo }) => lo > 0);
}

function subsets(ids: readonly string[]): string[][] {
  return ids.reduce<string[][]>((all, id) => [...all, ...all.map((some) => [...some, id])], [[]]);
}

function everyRepair(mel: Mel, situation: Situation): string[][] {
  const ids = situation.defects.map(({ id }) => id).sort();
  const good = subsets(ids).filter((some) => mayFly(mel, situation, some));
  if (good.some((some) => some.length === 0)) return [];
  return good.filter(
    (some) => !good.some((other) => other.length < some.length && other.every((id) => some.includes(id))),
  );
}

describe('least to fix', () => {
  it('is every set of defects that suffices and holds no smaller one', async () => {
    const seen = { none: 0, one: 0, several: 0, ofTwo: 0 };
    fc.assert(
      fc.property(proposalCase, ({ mel, situation }) => {
        const expected = everyRepair(mel, situation);
        const { repairs, isWhole } = leastToFix(mel, situation);
        expect(repairs.map(({ defects }) => defects.join()).sort()).toEqual(expected.map((one) => one.join()).sort());
        expect(isWhole).toBe(true);
        expect(repairs.map(({ defects }) => defects.length)).toEqual(expected.map((one) => one.length).sort());
        if (expected.length === 0) seen.none += 1;
        else if (expected.length === 1) seen.one += 1;
        else seen.several += 1;
        if (expected.some((one) => one.length > 1)) seen.ofTwo += 1;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(1);
  });
});
