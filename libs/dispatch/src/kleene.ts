/**
 * Truth with "not known" in it: strong Kleene logic over F < U < T.
 *
 * A condition is never yes because something about it is unknown. `all` is the least of its parts, `any` the greatest,
 * `not` swaps F and T and leaves U alone. Every condition carries two such values: as things are now, and after the
 * work that can still be done before the flight.
 */
import type { NowAfter, Truth } from './verdict.js';

const RANK: Record<Truth, number> = { F: 0, U: 1, T: 2 };

export const TT: NowAfter = Object.freeze({ now: 'T', after: 'T' });
export const UU: NowAfter = Object.freeze({ now: 'U', after: 'U' });
export const FF: NowAfter = Object.freeze({ now: 'F', after: 'F' });
/** Not so now, but it will be once work that is possible before the flight is done. */
export const FT: NowAfter = Object.freeze({ now: 'F', after: 'T' });
/** Not so now, and nobody knows whether the work is possible before the flight. */
export const FU: NowAfter = Object.freeze({ now: 'F', after: 'U' });

export function lesser(a: Truth, b: Truth): Truth {
  return RANK[a] <= RANK[b] ? a : b;
}

export function greater(a: Truth, b: Truth): Truth {
  return RANK[a] >= RANK[b] ? a : b;
}

export function swapped(a: Truth): Truth {
  return a === 'T' ? 'F' : a === 'F' ? 'T' : 'U';
}

/** The least of the values; T when there are none. */
export function allOf(values: readonly Truth[]): Truth {
  return values.reduce(lesser, 'T');
}

/** The greatest of the values; F when there are none (the loader refuses an empty `any`). */
export function anyOf(values: readonly Truth[]): Truth {
  return values.reduce(greater, 'F');
}

export function allOfPairs(pairs: readonly NowAfter[]): NowAfter {
  return { now: allOf(pairs.map((pair) => pair.now)), after: allOf(pairs.map((pair) => pair.after)) };
}

export function anyOfPairs(pairs: readonly NowAfter[]): NowAfter {
  return { now: anyOf(pairs.map((pair) => pair.now)), after: anyOf(pairs.map((pair) => pair.after)) };
}

export function notPair(pair: NowAfter): NowAfter {
  return { now: swapped(pair.now), after: swapped(pair.after) };
}

/** What a set of readings agree on: T or F when all say so, otherwise U. */
export function agreed(values: readonly Truth[]): Truth {
  const first = values[0];
  return first !== undefined && values.every((value) => value === first) ? first : 'U';
}
