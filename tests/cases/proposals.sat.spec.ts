/** lo and hi of a proposal beside an outside SAT solver (logic-solver 2.0.1), on random small MELs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { propose, type Proposal } from '#dispatch';
import { proposalCase } from './proposals.random.js';
import { boundsBySat } from './proposals.sat.js';

const RANK: Record<Proposal['verdict']['lo'], number> = { 'may-not-fly': 0, 'after-work': 1, 'may-fly': 2 };

describe('a proposal beside a SAT solver', () => {
  it('has exactly its lo and its hi', async () => {
    const seen = new Map<string, number>();
    await fc.assert(
      fc.asyncProperty(proposalCase, async ({ mel, situation }) => {
        const { verdict } = await propose(mel, situation);
        const { lo, hi } = boundsBySat(mel, situation);
        expect([RANK[verdict.lo], RANK[verdict.hi]]).toEqual([lo, hi]);
        seen.set(`${lo} ${hi}`, (seen.get(`${lo} ${hi}`) ?? 0) + 1);
      }),
      { numRuns: 80 },
    );
    const open = [...seen.keys()].filter((pair) => pair.startsWith('0') && pair !== '0 0');
    expect([...seen.keys()], JSON.stringify([...seen])).toEqual(expect.arrayContaining(['0 0', '1 1', '2 2']));
    expect(open, JSON.stringify([...seen])).not.toEqual([]);
  });
});
