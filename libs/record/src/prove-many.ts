import { assertSize } from './growing-tree.js';
import { nodeHash, type Hash } from './hash.js';
import { rangeRoot, type LeafReader } from './range-root.js';
import { splitOf } from './subtree.js';

/**
 * The proofs of inclusion of several entries at once. The leaves are read one time, from first to last, however many
 * entries are asked for: the history of an aircraft costs one reading of the record, and not one for each entry.
 * @param indexes counted from 0, in any order
 * @returns the hashes for each index, as `proveInclusion` gives them
 * @throws RangeError when there is no such entry, or the reader gives fewer leaves than asked for
 */
export async function proveInclusions(
  read: LeafReader,
  indexes: readonly number[],
  size: number,
): Promise<Map<number, Hash[]>> {
  assertSize(size);
  const wanted = [...new Set(indexes)].toSorted((one, other) => one - other);
  const outside = wanted.find((index) => !Number.isSafeInteger(index) || index < 0 || index >= size);
  if (outside !== undefined) throw new RangeError(`There is no entry ${outside + 1} in a record of ${size}.`);
  const proofs = new Map<number, Hash[]>(wanted.map((index) => [index, []]));
  if (wanted.length > 0) await climb({ read, proofs }, wanted, 0, size);
  return proofs;
}

interface Proving {
  read: LeafReader;
  proofs: Map<number, Hash[]>;
}

/** The root of the entries `from` up to `to`; each proof inside it grows by the other half on the way up. */
async function climb(proving: Proving, wanted: readonly number[], from: number, to: number): Promise<Hash> {
  if (wanted.length === 0 || to - from === 1) return rangeRoot(proving.read, from, to);
  const middle = from + splitOf(to - from);
  const [below, above] = [wanted.filter((index) => index < middle), wanted.filter((index) => index >= middle)];
  const left = await climb(proving, below, from, middle);
  const right = await climb(proving, above, middle, to);
  for (const index of below) proving.proofs.get(index)?.push(right);
  for (const index of above) proving.proofs.get(index)?.push(left);
  return nodeHash(left, right);
}
