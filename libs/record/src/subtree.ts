/** The largest power of two smaller than `size` (2 or more): where RFC 9162 section 2.1.1 splits a tree. */
export function splitOf(size: number): number {
  let split = 1;
  while (split * 2 < size) split *= 2;
  return split;
}

/**
 * Whether the entries `start` up to `end` form a subtree whatever is appended later: at least one entry, beginning at
 * a multiple of the smallest power of two that holds them all (as in the IETF draft on Merkle tree certificates).
 */
export function isSubtree(start: number, end: number): boolean {
  if (!Number.isSafeInteger(start) || !Number.isSafeInteger(end) || start < 0 || start >= end) return false;
  let width = 1;
  while (width < end - start) width *= 2;
  return start % width === 0;
}
