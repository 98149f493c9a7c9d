import { emptyRoot, hashLength, hashOfHex, hexOf, nodeHash, type Hash } from './hash.js';

/** What is kept of a tree so that it can grow: the roots of its full subtrees, largest first, as hex. At most 53. */
export interface Frontier {
  readonly size: number;
  readonly hashes: readonly string[];
}

/** The published state of a record: how many entries, and the root over them as hex. */
export interface Head {
  readonly size: number;
  readonly root: string;
}

/**
 * The tree of one record, growing by one leaf at a time. It begins empty or at a kept frontier, each sealed entry
 * appends its leaf hash, and it never shrinks: a correction is a further entry. It holds one hash per set bit of its
 * size, so a million entries cost no more memory than twenty hashes.
 */
export class GrowingTree {
  private constructor(
    private count: number,
    private readonly peaks: Hash[],
  ) {}

  static empty(): GrowingTree {
    return new GrowingTree(0, []);
  }

  /** @throws RangeError when the frontier is not one that `frontier()` could have given */
  static from(frontier: Frontier): GrowingTree {
    const { size, hashes } = frontier;
    assertSize(size);
    const expected = [...size.toString(2)].filter((bit) => bit === '1').length;
    if (!Array.isArray(hashes) || hashes.length !== expected) {
      throw new RangeError(`A frontier of size ${size} has ${expected} hashes, not ${hashes?.length}.`);
    }
    return new GrowingTree(size, hashes.map(hashOfHex));
  }

  get size(): number {
    return this.count;
  }

  append(leaf: Hash): void {
    if (leaf.length !== hashLength) throw new RangeError(`A leaf hash has 32 bytes, not ${leaf.length}.`);
    let peak = leaf;
    for (let rest = this.count; rest % 2 === 1; rest = (rest - 1) / 2)
      peak = nodeHash(this.peaks.pop() as Hash, peak);
    this.peaks.push(peak);
    this.count += 1;
  }

  /** The RFC 9162 root over everything appended so far. */
  root(): Hash {
    if (this.count === 0) return emptyRoot();
    return this.peaks.reduceRight((right, left) => nodeHash(left, right));
  }

  head(): Head {
    return { size: this.count, root: hexOf(this.root()) };
  }

  frontier(): Frontier {
    return { size: this.count, hashes: this.peaks.map(hexOf) };
  }
}

export function assertSize(size: number): void {
  if (!Number.isSafeInteger(size) || size < 0) throw new RangeError(`${size} is not a number of entries.`);
}

/** The root over a list of leaf hashes (RFC 9162 section 2.1.1). */
export function treeRoot(leaves: Iterable<Hash>): Hash {
  const tree = GrowingTree.empty();
  for (const leaf of leaves) tree.append(leaf);
  return tree.root();
}
