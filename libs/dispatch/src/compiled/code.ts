/**
 * The two values of a condition in four bits, so that a search can fold them without making objects.
 *
 * Each value is two bits: the lower says "not certainly false", the upper "certainly true". So F is 00, U is 01, T is 11;
 * the least of two is their AND, the greatest their OR. `now` stands in the lower pair, `after` in the upper pair.
 */
import type { NowAfter, Truth } from '../verdict.js';

export type Code = number;

export const ALL_TRUE: Code = 0b1111;
export const ALL_UNKNOWN: Code = 0b0101;
export const ALL_FALSE: Code = 0b0000;

const POSSIBLE = 0b0101;
const CERTAIN = 0b1010;

const TRUTHS: readonly Truth[] = ['F', 'U', 'U', 'T'];
const BITS: Record<Truth, number> = { F: 0b00, U: 0b01, T: 0b11 };

export const codeOf = ({ now, after }: NowAfter): Code => BITS[now] | (BITS[after] << 2);

export const pairOf = (code: Code): NowAfter => ({
  now: TRUTHS[code & 3] ?? 'U',
  after: TRUTHS[(code >> 2) & 3] ?? 'U',
});

/** Certainly true becomes not possible, and the other way round; unknown stays. */
export const notCode = (code: Code): Code => (((~code & CERTAIN) >> 1) | ((~code & POSSIBLE) << 1)) & ALL_TRUE;

/** What several readings agree on: certain where all are certain, possible where one is. Nothing agrees on nothing. */
export function agreedCode(codes: readonly Code[]): Code {
  if (codes.length === 0) return ALL_UNKNOWN;
  let [all, any] = [ALL_TRUE, 0];
  for (const code of codes) {
    all &= code;
    any |= code;
  }
  return (all & CERTAIN) | (any & POSSIBLE);
}

/** 2 may fly, 1 after work, 0 may not fly: what is certain, and what is possible (rule 6). */
export const lowRank = (code: Code): number => ((code & 0b0010) !== 0 ? 2 : (code & 0b1000) !== 0 ? 1 : 0);
export const highRank = (code: Code): number => ((code & 0b0001) !== 0 ? 2 : (code & 0b0100) !== 0 ? 1 : 0);
