import { assertSize } from './growing-tree.js';
import type { Hash } from './hash.js';
import { rangeRoot, type LeafReader } from './range-root.js';
import { isSubtree, splitOf } from './subtree.js';

/**
 * The hashes that lead from the entry with this index (its number - 1) to the root over `size` entries.
 * @throws RangeError when there is no such entry, or the reader gives fewer leaves than asked for
 */
export function proveInclusion(read: LeafReader, index: number, size: number): Promise<Hash[]> {
  return proveSubtree(read, index, index + 1, size);
}

/** The hashes that show the record of `second` entries to begin with the record of `first` entries (1 or more). */
export function proveConsistency(read: LeafReader, first: number, second: number): Promise<Hash[]> {
  return proveSubtree(read, 0, first, second);
}

/**
 * The same for the entries from `start` up to but not including `end`: a month of a record, say. `start` must be a
 * multiple of the smallest power of two that holds them all, or they are no subtree.
 */
export async function proveSubtree(read: LeafReader, start: number, end: number, size: number): Promise<Hash[]> {
  assertSize(size);
  if (!isSubtree(start, end) || end > size) {
    throw new RangeError(`The entries ${start} up to ${end} are no subtree of a record of ${size}.`);
  }
  return walk(read, { start, end, from: 0, to: size, known: true });
}

/** The part of the tree still to walk; `known` says that a verifier who holds the subtree's root needs no copy. */
interface Walk {
  start: number;
  end: number;
  from: number;
  to: number;
  known: boolean;
}

async function walk(read: LeafReader, { start, end, from, to, known }: Walk): Promise<Hash[]> {
  if (start === from && end === to) return known ? [] : [await rangeRoot(read, from, to)];
  const middle = from + splitOf(to - from);
  if (end <= middle) {
    const below = await walk(read, { start, end, from, to: middle, known });
    return [...below, await rangeRoot(read, middle, to)];
  }
  const inner = start >= middle ? { start, known } : { start: middle, known: false };
  const below = await walk(read, { ...inner, end, from: middle, to });
  return [...below, await rangeRoot(read, from, middle)];
}
