/**
 * Whether two entries are of the same thing on the aircraft. A breaker is one breaker however its place is typed; several
 * placards may hang at one place and several tools lie there, so these are told apart by their numbers. 145.A.48.
 */
import type { LeftItem } from '../acts.js';

const TOLD_BY_NUMBER: readonly LeftItem['kind'][] = ['placard', 'tool'];

type Seen = Pick<LeftItem, 'kind' | 'where' | 'tag'>;

export function isSameThing(one: Seen, other: Seen): boolean {
  if (one.kind !== other.kind) return false;
  return TOLD_BY_NUMBER.includes(one.kind) ? sameText(one.tag, other.tag) : sameText(one.where, other.where);
}

/** Case, spaces, hyphens and commas make no difference: "P11-C4" is "p11, C4". */
function sameText(one: string, other: string): boolean {
  return letters(one) === letters(other);
}

function letters(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}
