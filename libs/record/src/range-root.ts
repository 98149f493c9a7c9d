import { GrowingTree } from './growing-tree.js';
import type { Hash } from './hash.js';

/** Reads the leaf hashes with index `from` (counted from 0) up to but not including `to`, in order. */
export type LeafReader = (from: number, to: number) => AsyncIterable<Hash> | Iterable<Hash>;

/** The root over the entries `from` up to `to`, by themselves. */
export async function rangeRoot(read: LeafReader, from: number, to: number): Promise<Hash> {
  const tree = GrowingTree.empty();
  for await (const leaf of read(from, to)) tree.append(leaf);
  if (tree.size !== to - from) {
    throw new RangeError(`The leaves ${from} up to ${to} were asked for, and ${tree.size} came.`);
  }
  return tree.root();
}
