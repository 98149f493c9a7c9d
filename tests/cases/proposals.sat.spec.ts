/** lo and hi of a proposal beside an outside SAT solver (logic-solver 2.0.1), on 2,000 random cases: exactly the same. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { boundsOf, propose } from '#dispatch';
import { plainOf } from './plain-of.js';
import { drawCases } from './verdicts.draw.js';
import { RANK } from './verdicts.enumeration.js';
import { Tally } from './verdicts.tally.js';
import { SatBounds } from './oracles/sat-bounds.js';

const MELS = 400;
const CASES_EACH = 5;

it('a proposal has exactly the lo and the hi that a SAT solver finds', async () => {
  const tally = new Tally();
  const sat = new SatBounds();
  await fc.assert(
    fc.asyncProperty(fc.noBias(fc.nat()), async (seed) => {
      for (const [at, { mel, situation }] of drawCases(seed, CASES_EACH).entries()) {
        const { verdict } = await propose(mel, situation);
        const plain = plainOf(mel, situation);
        const { lo, hi } = sat.of(plain);
        expect([RANK[verdict.lo], RANK[verdict.hi]], `case ${at} of seed ${seed}`).toEqual([lo, hi]);
        const alone = boundsOf(mel, situation);
        expect([alone.verdict, alone.lo, alone.hi]).toEqual([verdict.verdict, verdict.lo, verdict.hi]);
        tally.add(plain, verdict.verdict, `${lo} ${hi}`);
      }
    }),
    { numRuns: MELS, endOnFailure: true },
  );
  expect(tally.cases).toBe(MELS * CASES_EACH);
  for (const bounds of ['0 0', '0 1', '0 2', '1 1', '1 2', '2 2'])
    expect(tally.times(bounds), `${tally}`).toBeGreaterThan(0);
  expect(tally.share('cycle'), `${tally}`).toBeGreaterThanOrEqual(0.05);
});
