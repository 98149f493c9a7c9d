import { describe, expect, it } from 'vitest';
import { agreed, allOfPairs, anyOfPairs, notPair } from '../kleene.js';
import { compareBounds, highest, lowest, type Bound } from '../bounds.js';
import type { NowAfter, Truth } from '../verdict.js';
import { agreedCode, codeOf, highRank, lowRank, notCode, pairOf } from './code.js';

const TRUTHS: Truth[] = ['F', 'U', 'T'];
const PAIRS: NowAfter[] = TRUTHS.flatMap((now) => TRUTHS.map((after) => ({ now, after })));
const RANK: Bound[] = ['may-not-fly', 'after-work', 'may-fly'];

describe('two values in four bits', () => {
  it('are read back as they were written', () => {
    for (const pair of PAIRS) expect(pairOf(codeOf(pair))).toEqual(pair);
  });

  it('fold as the pairs do, in all 81 cases of two', () => {
    for (const a of PAIRS) {
      expect(pairOf(notCode(codeOf(a)))).toEqual(notPair(a));
      for (const b of PAIRS) {
        expect(pairOf(codeOf(a) & codeOf(b))).toEqual(allOfPairs([a, b]));
        expect(pairOf(codeOf(a) | codeOf(b))).toEqual(anyOfPairs([a, b]));
        const both = { now: agreed([a.now, b.now]), after: agreed([a.after, b.after]) };
        expect(pairOf(agreedCode([codeOf(a), codeOf(b)]))).toEqual(both);
      }
    }
    expect(pairOf(agreedCode([]))).toEqual({ now: 'U', after: 'U' });
  });

  it('have the bounds of the pairs', () => {
    for (const pair of PAIRS) {
      expect(compareBounds(RANK[lowRank(codeOf(pair))]!, lowest(pair))).toBe(0);
      expect(compareBounds(RANK[highRank(codeOf(pair))]!, highest(pair))).toBe(0);
    }
  });
});
