import { emptyRoot, hashLength, nodeHash, sameHash, type Hash } from './hash.js';
import { isSubtree } from './subtree.js';

export interface InclusionClaim {
  /** Counted from 0: the entry's number - 1. */
  readonly index: number;
  readonly size: number;
  readonly leafHash: Hash;
  readonly root: Hash;
  readonly proof: readonly Hash[];
}

export interface ConsistencyClaim {
  readonly first: number;
  readonly second: number;
  readonly firstRoot: Hash;
  readonly secondRoot: Hash;
  readonly proof: readonly Hash[];
}

export interface SubtreeClaim {
  readonly start: number;
  readonly end: number;
  readonly size: number;
  readonly subtreeRoot: Hash;
  readonly root: Hash;
  readonly proof: readonly Hash[];
}

/** Whether the entry with this leaf hash stands at this index of the record with this root. Needs nothing else. */
export function provesInclusion({ index, size, leafHash, root, proof }: InclusionClaim): boolean {
  if (leafHash.length !== hashLength) return false;
  return provesSubtree({ start: index, end: index + 1, size, subtreeRoot: leafHash, root, proof });
}

/** Whether the longer record begins with the shorter one. From an empty record nothing follows: false. */
export function provesConsistency({ first, second, firstRoot, secondRoot, proof }: ConsistencyClaim): boolean {
  if (first === 0) return false;
  return provesSubtree({ start: 0, end: first, size: second, subtreeRoot: firstRoot, root: secondRoot, proof });
}

/**
 * Whether the entries `start` up to `end`, with this root of their own, stand at that place of the record.
 * Inclusion is the case of one entry, consistency the case of `start` 0. An empty stretch is proved by no hashes.
 */
export function provesSubtree({ start, end, size, subtreeRoot, root, proof }: SubtreeClaim): boolean {
  if (![start, end, size].every((count) => Number.isSafeInteger(count) && count >= 0) || end > size) return false;
  if (start === end) return proof.length === 0 && sameHash(subtreeRoot, emptyRoot());
  if (!isSubtree(start, end) || proof.some((hash) => hash.length !== hashLength)) return false;
  return climb({ first: start, last: end - 1, top: size - 1 }, { subtreeRoot, root, proof });
}

/** The place of the subtree's first and last node and of the record's last node, on the level now looked at. */
interface Level {
  first: number;
  last: number;
  top: number;
}

/** RFC 9162 section 2.1.4.2, with a start of its own. Halving by division, since places may exceed 32 bits. */
function climb(
  level: Level,
  { subtreeRoot, root, proof }: Pick<SubtreeClaim, 'subtreeRoot' | 'root' | 'proof'>,
): boolean {
  const reachesTop = level.last === level.top;
  while (level.first !== level.last && (reachesTop || level.last % 2 === 1)) rise(level);
  const rest = [...proof];
  const seed = level.first === level.last ? subtreeRoot : rest.shift();
  if (seed === undefined) return false;
  let [old, now] = [seed, seed];
  for (const hash of rest) {
    if (level.top === 0) return false;
    if (level.last % 2 === 1 || level.last === level.top) {
      if (level.first < level.last) old = nodeHash(hash, old);
      now = nodeHash(hash, now);
      while (level.last % 2 === 0) rise(level);
    } else {
      now = nodeHash(now, hash);
    }
    rise(level);
  }
  return level.top === 0 && sameHash(old, subtreeRoot) && sameHash(now, root);
}

function rise(level: Level): void {
  level.first = Math.floor(level.first / 2);
  level.last = Math.floor(level.last / 2);
  level.top = Math.floor(level.top / 2);
}
