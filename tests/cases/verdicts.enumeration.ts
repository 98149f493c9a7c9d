/** One random case held against the enumeration of everything that is unknown; also by the bench, a million times. */
import { boundsOf, type BoundsOf } from '#dispatch';
import { boundsOfOneChoice, leastOfBestChoices, type Enumerated } from './oracles/enumeration.js';
import { plainOf } from './plain-of.js';
import type { DrawnCase } from './verdicts.draw.js';
import type { Tally } from './verdicts.tally.js';

export const RANK: Record<BoundsOf['lo'], number> = { 'may-not-fly': 0, 'after-work': 1, 'may-fly': 2 };

/**
 * Tells what is wrong, or null: every completion lies between lo and hi, under one choice that is good for all of them.
 * Counts how often the enumeration knows more than lo and hi say, and how often the answer would be better if the choice
 * could wait until everything is known, which nothing promises.
 */
export function wrongIn({ mel, situation }: DrawnCase, tally: Tally): string | null {
  const bounds = boundsOf(mel, situation);
  const plain = plainOf(mel, situation);
  const found = boundsOfOneChoice(plain);
  const isExact = found.lo === RANK[bounds.lo] && found.hi === RANK[bounds.hi];
  const wouldWait = bounds.verdict === 'not-settled' && leastOfBestChoices(plain) > found.lo;
  tally.add(
    plain,
    bounds.verdict,
    ...(isExact ? [] : ['settled by enumeration only']),
    ...(wouldWait ? ['better if the choice could wait'] : []),
  );
  return faultOf(bounds, found);
}

function faultOf({ verdict, lo, hi, isWhole }: BoundsOf, found: Enumerated): string | null {
  const said = `${verdict}, lo ${lo}, hi ${hi}; enumerated ${found.lo} to ${found.hi}`;
  if (!isWhole) return `the search was given up: ${said}`;
  if (found.lo < RANK[lo] || found.hi > RANK[hi]) return `a completion lies outside: ${said}`;
  if (!found.isOpen && RANK[lo] !== RANK[hi]) return `nothing is unknown, and yet: ${said}`;
  return null;
}
