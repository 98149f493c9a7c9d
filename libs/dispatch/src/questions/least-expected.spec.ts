import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { VerdictCode } from '../verdict.js';
import { learn, nothingKnown, openFacts, type Known, type Lattice } from './lattice.js';
import { LeastExpected } from './least-expected.js';
import { likeliest } from './likeliest.js';

type Formula = { fact: number; holds: boolean[] } | { join: 'all' | 'any'; parts: Formula[] };

const MOST_REPLIES = 3;

function formula(facts: number): fc.Arbitrary<Formula> {
  return fc.letrec<{ tree: Formula }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 3, withCrossShrink: true },
      fc.record({
        // One more than there are: what nobody can be asked.
        fact: fc.nat(facts),
        holds: fc.array(fc.boolean(), { minLength: MOST_REPLIES, maxLength: MOST_REPLIES }),
      }),
      fc.record({
        join: fc.constantFrom<('all' | 'any')[]>('all', 'any'),
        parts: fc.array(tie('tree'), { minLength: 2, maxLength: 3 }),
      }),
    ),
  })).tree;
}

/** By Kleene: 0 false, 1 unknown, 2 true. */
function value(one: Formula, known: Known): number {
  if ('fact' in one) {
    const reply = known[one.fact] ?? null;
    return reply === null ? 1 : one.holds[reply] === true ? 2 : 0;
  }
  const parts = one.parts.map((part) => value(part, known));
  return one.join === 'all' ? Math.min(...parts) : Math.max(...parts);
}

/** The better of two choices, each by itself, as rule 6 has it: "p or not p" is not settled. */
function latticeOf(choices: Formula[], weights: number[][]): Lattice {
  return {
    facts: weights.map((own, index) => ({ key: `fact ${index}`, weights: own })),
    verdict: (known): VerdictCode => {
      const values = choices.map((one) => value(one, known));
      return values.includes(2) ? 'may-fly' : values.includes(1) ? 'not-settled' : 'may-not-fly';
    },
  };
}

const lattices = (most: number): fc.Arbitrary<Lattice> =>
  fc.integer({ min: 1, max: most }).chain((count) =>
    fc
      .tuple(
        fc.array(formula(count), { minLength: 1, maxLength: 2 }),
        fc.array(fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: MOST_REPLIES }), {
          minLength: count,
          maxLength: count,
        }),
      )
      .map(([choices, drawn]) => {
        const weights = drawn.map((own) => own.map((by) => by / own.reduce((sum, one) => sum + one, 0)));
        return latticeOf(choices, weights);
      }),
  );

const settled = (lattice: Lattice, known: Known): boolean => lattice.verdict(known) !== 'not-settled';

/** Every state in which at least this is known. */
function above(lattice: Lattice, known: Known): Known[] {
  return openFacts(known).reduce<Known[]>(
    (states, fact) =>
      states.flatMap((one) => [one, ...lattice.facts[fact]!.weights.map((_, reply) => learn(one, fact, reply))]),
    [known],
  );
}

/** Every order of questions tried, without a memory and with questions that cannot matter among them. */
function fewest(lattice: Lattice, known: Known): number {
  if (settled(lattice, known) || !above(lattice, known).some((one) => settled(lattice, one))) return 0;
  return Math.min(
    ...openFacts(known).map((fact) =>
      lattice.facts[fact]!.weights.reduce(
        (sum, by, reply) => sum + by * fewest(lattice, learn(known, fact, reply)),
        1,
      ),
    ),
  );
}

it('the expected number of questions is the least of all orders', () => {
  let asked = 0;
  fc.assert(
    fc.property(lattices(4), (lattice) => {
      const { expected } = new LeastExpected(lattice).step(nothingKnown(lattice));
      expect(expected).toBeCloseTo(fewest(lattice, nothingKnown(lattice)), 9);
      if (expected > 1) asked += 1;
    }),
    { numRuns: 250, seed: 2 },
  );
  expect(asked).toBeGreaterThan(40);
});

it('no question is asked whose reply cannot settle the answer, and asking ends settled wherever it can', () => {
  fc.assert(
    fc.property(lattices(4), (lattice) => {
      const least = new LeastExpected(lattice);
      const waiting: Known[] = [nothingKnown(lattice)];
      for (let known = waiting.pop(); known !== undefined; known = waiting.pop()) {
        const state = known;
        const { ask } = least.step(state);
        if (ask === null) {
          const can = above(lattice, state).some((one) => settled(lattice, one));
          expect(settled(lattice, state) || !can).toBe(true);
          continue;
        }
        const without = above(lattice, state).filter((one) => one[ask] === null && !settled(lattice, one));
        const replies = (one: Known) => lattice.facts[ask]!.weights.map((_, reply) => learn(one, ask, reply));
        expect(without.some((one) => replies(one).some((after) => settled(lattice, after)))).toBe(true);
        waiting.push(...replies(state));
      }
    }),
    { numRuns: 150, seed: 4 },
  );
});

it('with many facts the first question is the one most likely to settle, and each one named can matter', () => {
  let named = 0;
  fc.assert(
    fc.property(lattices(5), (lattice) => {
      const start = nothingKnown(lattice);
      const asked = likeliest(lattice);
      const chance = (fact: number): number =>
        lattice.facts[fact]!.weights.reduce(
          (sum, by, reply) => sum + (settled(lattice, learn(start, fact, reply)) ? by : 0),
          0,
        );
      if (settled(lattice, start)) return expect(asked).toEqual([]);
      const best = Math.max(...openFacts(start).map(chance));
      if (best > 0) expect(chance(asked[0]!)).toBeCloseTo(best, 9);
      const least = new LeastExpected(lattice);
      for (const fact of asked) expect(least.matters(start, fact)).toBe(true);
      named += asked.length;
    }),
    { numRuns: 200, seed: 6 },
  );
  expect(named).toBeGreaterThan(200);
});

it('every whole lattice that can be settled gets a first question, however many facts are open', () => {
  const facts = 9;
  const all: Lattice = {
    facts: Array.from({ length: facts }, (_, index) => ({ key: `fact ${index}`, weights: [0.5, 0.5] })),
    verdict: (known) => {
      const pairs = [0, 2, 4, 6].map((at) => [known[at] ?? null, known[at + 1] ?? null]);
      if (pairs.some(([one, other]) => one === 1 && other === 1)) return 'may-fly';
      return pairs.every(([one, other]) => one === 0 || other === 0) ? 'may-not-fly' : 'not-settled';
    },
  };
  // No reply settles alone; any pair of yes does. Fact 8 matters to nothing.
  const asked = likeliest(all);
  expect(asked.length).toBeGreaterThan(0);
  expect(asked).not.toContain(8);
});
