/**
 * Rules 1 to 7 on 20,000 random cases: under one choice of rows every completion of what is unknown lies in [lo, hi]. The
 * cases are spread over all verdicts, chains, cycles and units of which nobody knows which failed.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawCases } from './verdicts.draw.js';
import { wrongIn } from './verdicts.enumeration.js';
import { Tally } from './verdicts.tally.js';

const MELS = 2000;
const CASES_EACH = 10;

it('every completion of the unknown lies between lo and hi, under one choice of rows', () => {
  const tally = new Tally();
  fc.assert(
    fc.property(fc.noBias(fc.nat()), (seed) => {
      for (const [at, drawn] of drawCases(seed, CASES_EACH).entries()) {
        expect(wrongIn(drawn, tally), `case ${at} of seed ${seed}`).toBeNull();
      }
    }),
    { numRuns: MELS, endOnFailure: true },
  );
  expect(tally.cases).toBe(MELS * CASES_EACH);
  for (const verdict of ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly']) {
    expect(tally.share(verdict), `${verdict}: ${tally}`).toBeGreaterThanOrEqual(0.1);
  }
  expect(tally.share('chain'), `${tally}`).toBeGreaterThanOrEqual(0.2);
  expect(tally.share('cycle'), `${tally}`).toBeGreaterThanOrEqual(0.05);
  expect(tally.share('one of these'), `${tally}`).toBeGreaterThanOrEqual(0.1);
  // Rule 7: "row A if p, row B if not p" stays not settled, though it would be if the choice could wait.
  expect(tally.times('better if the choice could wait'), `${tally}`).toBeGreaterThan(0);
});
