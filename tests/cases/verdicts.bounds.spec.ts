/**
 * The verdict's meaning on random MELs of two to four entries: chains and cycles of considered-inoperative units,
 * defects of one of two units, unknown configurations, work of every standing, judgements, directives, gates.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge, type Verdict } from '#dispatch';
import { boundsOfOneChoice } from './oracles/enumeration.js';
import { plainOf } from './plain-of.js';
import { randomCase, type RandomCase } from './verdicts.random.js';

const RANK: Record<Verdict['lo'], number> = { 'may-not-fly': 0, 'after-work': 1, 'may-fly': 2 };

describe('a verdict', () => {
  it('by recorded rows has every completion of the unknown between its lo and its hi', async () => {
    const seen: Record<string, number> = {};
    let exact = 0;
    await fc.assert(
      fc.asyncProperty(randomCase, async ({ mel, situation }: RandomCase) => {
        const { verdict, lo, hi, questions } = await judge(mel, situation);
        seen[verdict] = (seen[verdict] ?? 0) + 1;
        const found = boundsOfOneChoice(plainOf(mel, situation, 'recorded'));
        expect(found.lo).toBeGreaterThanOrEqual(RANK[lo]);
        expect(found.hi).toBeLessThanOrEqual(RANK[hi]);
        if (found.isOpen) return;
        expect([RANK[lo], RANK[hi], questions]).toEqual([found.lo, found.hi, []]);
        exact += 1;
      }),
      { numRuns: 700 },
    );
    // The property means something only if every answer came up.
    for (const code of ['may-fly', 'after-work', 'not-settled', 'may-not-fly']) {
      expect(seen[code] ?? 0, JSON.stringify(seen)).toBeGreaterThan(20);
    }
    expect(exact).toBeGreaterThan(100);
  });

  it('is lowered at lo, and raised at hi, by no fact made known', async () => {
    const value = (key: string): (string | number | boolean)[] =>
      ({
        'flight.rvsm': [true, false],
        'flight.icing': ['none', 'forecast', 'known'],
        'flight.etopsMinutes': [0, 60, 121],
      })[key] ?? [];
    await fc.assert(
      fc.asyncProperty(randomCase, async ({ mel, situation }) => {
        const before = await judge(mel, situation);
        for (const [key, fact] of Object.entries(situation.facts)) {
          if (fact.value !== null) continue;
          const asked = before.questions.some((question) => question.fact === key);
          for (const known of value(key)) {
            const after = await judge(mel, { ...situation, facts: { ...situation.facts, [key]: { value: known } } });
            expect(RANK[after.lo]).toBeGreaterThanOrEqual(RANK[before.lo]);
            expect(RANK[after.hi]).toBeLessThanOrEqual(RANK[before.hi]);
            // A question whose answer settles something is asked.
            if (after.verdict !== before.verdict) expect(asked, key).toBe(true);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
