/** Rule 6: the bounds of a choice, and the verdict that they give. */
import type { NowAfter, Verdict, VerdictCode } from './verdict.js';

export type Bound = Verdict['lo'];

/** By the ranks that the compiled evaluator gives: 0, 1, 2. */
export const BOUNDS: readonly Bound[] = ['may-not-fly', 'after-work', 'may-fly'];

const RANK: Record<Bound, number> = { 'may-not-fly': 0, 'after-work': 1, 'may-fly': 2 };

/** What is certain: whatever the unknown turns out to be, it is at least this. */
export function lowest({ now, after }: NowAfter): Bound {
  return now === 'T' ? 'may-fly' : after === 'T' ? 'after-work' : 'may-not-fly';
}

/** What is possible: however well the unknown turns out, it is at most this. */
export function highest({ now, after }: NowAfter): Bound {
  return now !== 'F' ? 'may-fly' : after !== 'F' ? 'after-work' : 'may-not-fly';
}

export function better(a: Bound, b: Bound): Bound {
  return RANK[a] >= RANK[b] ? a : b;
}

export function compareBounds(a: Bound, b: Bound): number {
  return RANK[a] - RANK[b];
}

export function verdictOf(lo: Bound, hi: Bound): Exclude<VerdictCode, 'nothing-open'> {
  if (lo !== 'may-not-fly') return lo;
  return hi === 'may-not-fly' ? 'may-not-fly' : 'not-settled';
}
