/**
 * The proposal of rows on random MELs of two to four entries beside every choice, each judged by a plain reading of the
 * rules: the same lo, hi and verdict, and the same best choice.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeBoth, propose, type Proposal } from '#dispatch';
import { everyChoice } from './oracles/every-choice.js';
import { compareChoices, type OracleChoice } from './oracles/order.js';
import { plainOf } from './plain-of.js';
import { proposalCase } from './proposals.random.js';

const RANK: Record<Proposal['verdict']['lo'], number> = { 'may-not-fly': 0, 'after-work': 1, 'may-fly': 2 };
const CODES = ['may-not-fly', 'after-work', 'may-fly'] as const;

function verdictOf(lo: number, hi: number): string {
  return lo > 0 ? CODES[lo]! : hi === 0 ? 'may-not-fly' : 'not-settled';
}

/** What the proposal shows, as the oracle lists it. */
function shownList({ verdict, rows }: Proposal): string[] {
  const taken = verdict.items.filter(({ cause, row }) => cause.kind !== 'failed' && row !== null);
  return [
    ...rows.map(({ entry, units, defect, row }) => [entry, units.join('+'), defect, row].join('/')),
    ...taken.map(({ entry, unit, row }) => [entry, unit, '', row].join('/')),
  ].sort();
}

describe('a proposal of rows', () => {
  it('has the bounds, the verdict and the best choice of all choices', async () => {
    const seen: Record<string, number> = { changed: 0, chains: 0, cases: 0, sameEntry: 0, oneOf: 0 };
    await fc.assert(
      fc.asyncProperty(proposalCase, async ({ mel, situation }) => {
        const choices: OracleChoice[] = [...everyChoice(plainOf(mel, situation))];
        const best = choices.reduce((a, b) => (compareChoices(a, b) <= 0 ? a : b));
        const [lo, hi] = [Math.max(...choices.map((one) => one.lo)), Math.max(...choices.map((one) => one.hi))];
        const proposal = await propose(mel, situation);
        const { verdict } = proposal;
        expect([RANK[verdict.lo], RANK[verdict.hi], verdict.verdict]).toEqual([lo, hi, verdictOf(lo, hi)]);
        expect(shownList(proposal)).toEqual(best.list.map((one) => one.join('/')).sort());
        expect(proposal.rows.filter(({ isChange }) => isChange)).toHaveLength(best.changes);
        expect([proposal.shownBest, proposal.reason]).toEqual([true, null]);
        seen[verdict.verdict] = (seen[verdict.verdict] ?? 0) + 1;
        seen.cases! += 1;
        if (best.changes > 0) seen.changed! += 1;
        if (verdict.items.some(({ cause }) => cause.kind !== 'failed')) seen.chains! += 1;
        if (verdict.items.some(({ perhaps }) => perhaps)) seen.oneOf! += 1;
        if (new Set(situation.defects.map(({ entry }) => entry)).size < situation.defects.length)
          seen.sameEntry! += 1;
      }),
      { numRuns: 500 },
    );
    const spread = JSON.stringify(seen);
    for (const code of ['may-fly', 'after-work', 'not-settled', 'may-not-fly', 'changed', 'oneOf']) {
      expect((seen[code] ?? 0) / seen.cases!, `${code} of ${spread}`).toBeGreaterThan(0.1);
    }
    expect(seen.chains! / seen.cases!, spread).toBeGreaterThan(0.2);
    expect(seen.sameEntry! / seen.cases!, spread).toBeGreaterThan(0.1);
  });
});

describe('the two evaluators', () => {
  it('give the same verdict on recorded rows, word for word', async () => {
    await fc.assert(
      fc.asyncProperty(proposalCase, async ({ mel, situation }) => {
        expect((await judgeBoth(mel, situation)).disagreement).toBeNull();
      }),
      { numRuns: 150 },
    );
  });
});
