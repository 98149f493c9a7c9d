import { Vector3vl } from '3vl';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { agreed, allOf, allOfPairs, anyOf, anyOfPairs, greater, lesser, notPair, swapped } from './kleene.js';
import type { Truth } from './verdict.js';

// Oracle: npm 3vl 1.0.1, vectors over 0 / 1 / x. Its own tables were measured to be strong Kleene on all nine pairs.
const TRUTHS: Truth[] = ['F', 'U', 'T'];
const BIT: Record<Truth, string> = { F: '0', U: 'x', T: '1' };
const FROM_BIT: Record<string, Truth> = { '0': 'F', x: 'U', '1': 'T' };
const vector = (truth: Truth) => Vector3vl.fromBin(BIT[truth]);
const truth = (result: Vector3vl) => FROM_BIT[result.toBin()];

interface Tree {
  op: 'all' | 'any' | 'not' | 'leaf';
  leaf?: Truth;
  parts?: Tree[];
}
const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom(...TRUTHS).map((leaf): Tree => ({ op: 'leaf', leaf })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 4 }).map((parts): Tree => ({ op: 'all', parts })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 4 }).map((parts): Tree => ({ op: 'any', parts })),
    tie('tree').map((part): Tree => ({ op: 'not', parts: [part] })),
  ),
}));

function ours({ op, leaf = 'U', parts = [] }: Tree): Truth {
  if (op === 'leaf') return leaf;
  const values = parts.map(ours);
  return op === 'all' ? allOf(values) : op === 'any' ? anyOf(values) : swapped(values[0]!);
}

function theirs({ op, leaf = 'U', parts = [] }: Tree): Vector3vl {
  if (op === 'leaf') return vector(leaf);
  const vectors = parts.map(theirs);
  if (op === 'not') return vectors[0]!.not();
  return vectors.reduce((a, b) => (op === 'all' ? a.and(b) : a.or(b)));
}

describe('strong Kleene truth', () => {
  it('gives the tables of the 3vl oracle on all nine pairs', () => {
    for (const a of TRUTHS) {
      expect(swapped(a)).toBe(truth(vector(a).not()));
      for (const b of TRUTHS) {
        expect(lesser(a, b)).toBe(truth(vector(a).and(vector(b))));
        expect(greater(a, b)).toBe(truth(vector(a).or(vector(b))));
      }
    }
  });

  it('agrees with the 3vl oracle on random trees', () => {
    fc.assert(
      fc.property(tree, (t) => {
        expect(ours(t)).toBe(truth(theirs(t)));
      }),
      { numRuns: 2000 },
    );
  });

  it('takes both values of a pair through the same tables', () => {
    const pair = fc.record({ now: fc.constantFrom(...TRUTHS), after: fc.constantFrom(...TRUTHS) });
    fc.assert(
      fc.property(fc.array(pair, { minLength: 1, maxLength: 5 }), (pairs) => {
        const side = (name: 'now' | 'after') => pairs.map((p) => p[name]);
        expect(allOfPairs(pairs)).toEqual({ now: allOf(side('now')), after: allOf(side('after')) });
        expect(anyOfPairs(pairs)).toEqual({ now: anyOf(side('now')), after: anyOf(side('after')) });
        expect(notPair(pairs[0]!)).toEqual({ now: swapped(pairs[0]!.now), after: swapped(pairs[0]!.after) });
      }),
    );
  });

  it('says unknown when readings disagree', () => {
    expect(agreed(['T', 'T'])).toBe('T');
    expect(agreed(['F', 'F'])).toBe('F');
    expect(agreed(['T', 'F'])).toBe('U');
    expect(agreed(['U', 'U'])).toBe('U');
    expect(agreed([])).toBe('U');
  });
});
