import { createHash } from 'node:crypto';

// The recursive definitions of RFC 9162 section 2.1, as written there and as slow: the oracle of libs/record.

type Hash = Uint8Array;

const node = (left: Hash, right: Hash): Hash =>
  createHash('sha256').update(Uint8Array.of(1)).update(left).update(right).digest();

const split = (size: number): number => 2 ** Math.ceil(Math.log2(size) - 1);

/** MTH(D_n), section 2.1.1. */
export function rootByDefinition(leaves: readonly Hash[]): Hash {
  if (leaves.length === 0) return createHash('sha256').digest();
  if (leaves.length === 1) return leaves[0] as Hash;
  const k = split(leaves.length);
  return node(rootByDefinition(leaves.slice(0, k)), rootByDefinition(leaves.slice(k)));
}

/** PATH(m, D_n), section 2.1.3.1. */
export function pathByDefinition(index: number, leaves: readonly Hash[]): Hash[] {
  if (leaves.length === 1) return [];
  const k = split(leaves.length);
  const [left, right] = [leaves.slice(0, k), leaves.slice(k)];
  return index < k
    ? [...pathByDefinition(index, left), rootByDefinition(right)]
    : [...pathByDefinition(index - k, right), rootByDefinition(left)];
}

/** SUBPROOF(m, D_n, b), section 2.1.4.1; PROOF(m, D_n) is that with b true. */
export function consistencyByDefinition(first: number, leaves: readonly Hash[], b = true): Hash[] {
  if (first === leaves.length) return b ? [] : [rootByDefinition(leaves)];
  const k = split(leaves.length);
  const [left, right] = [leaves.slice(0, k), leaves.slice(k)];
  return first <= k
    ? [...consistencyByDefinition(first, left, b), rootByDefinition(right)]
    : [...consistencyByDefinition(first - k, right, false), rootByDefinition(left)];
}
