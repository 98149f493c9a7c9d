import { GrowingTree, type Frontier, type Head } from './growing-tree.js';
import { hashLength, leafHash, sameHash, type Hash } from './hash.js';

/** One sealed entry as it was kept: its gapless number counted from 1, its exact bytes, and its leaf hash. */
export interface RecordEntry {
  readonly number: number;
  readonly bytes: Uint8Array;
  readonly leafHash: Hash;
}

/** Why an entry does not fit; `bytes-or-leaf` where no head tells which of the two was altered. */
export type Misfit = 'gap' | 'repeated' | 'bytes' | 'leaf' | 'bytes-or-leaf' | 'rewritten' | 'cut-short';

export type RecordCheck =
  | { readonly fits: true; readonly head: Head; readonly frontier: Frontier }
  | { readonly fits: false; readonly number: number; readonly misfit: Misfit; readonly sentence: string };

export interface RecordCheckOptions {
  /** Heads published earlier, in any order. Each narrows down where a rewritten entry stands. */
  readonly heads?: readonly Head[];
  /** Where an earlier check ended; entries up to its size are then not read again. */
  readonly from?: Frontier;
}

/**
 * Reads a record once, in flat memory, and names the first entry that does not fit. Without a head it finds a gap and
 * an entry whose bytes and leaf hash disagree; an entry rewritten together with its leaf hash, and entries cut off at
 * the end, show only against a head that was kept elsewhere.
 * @throws RangeError when a head or the frontier is itself malformed, or a head lies before the frontier
 */
export async function verifyRecord(
  entries: AsyncIterable<RecordEntry> | Iterable<RecordEntry>,
  { heads = [], from }: RecordCheckOptions = {},
): Promise<RecordCheck> {
  const reading = new Reading(from, heads);
  const early = reading.compare();
  if (early) return early;
  for await (const entry of entries) {
    const end = reading.take(entry);
    if (end) return end;
  }
  return reading.finish();
}

/** The two trees, over what was kept and over what the bytes give, run apart at the first entry that disagrees. */
class Reading {
  private readonly kept: GrowingTree;
  private readonly computed: GrowingTree;
  private readonly heads: Head[];
  private agreedUpTo: number;
  private disagreeing: number | undefined;

  constructor(from: Frontier | undefined, heads: readonly Head[]) {
    this.kept = from ? GrowingTree.from(from) : GrowingTree.empty();
    this.computed = from ? GrowingTree.from(from) : GrowingTree.empty();
    this.agreedUpTo = this.kept.size;
    this.heads = heads.map(checkedHead).sort((one, other) => one.size - other.size);
    const first = this.heads[0];
    if (first && first.size < this.kept.size) {
      throw new RangeError(`The head of size ${first.size} lies before the frontier of size ${this.kept.size}.`);
    }
  }

  take({ number, bytes, leafHash: leaf }: RecordEntry): RecordCheck | undefined {
    const expected = this.kept.size + 1;
    if (number !== expected) return this.disagreement() ?? outOfOrder(expected, number);
    const computed = leafHash(bytes);
    const wellFormed = leaf.length === hashLength;
    if (!wellFormed || !sameHash(leaf, computed)) this.disagreeing ??= number;
    this.kept.append(wellFormed ? leaf : new Uint8Array(hashLength));
    this.computed.append(computed);
    return this.compare();
  }

  /** Ends the reading where the heads of this size allow an answer. */
  compare(): RecordCheck | undefined {
    if (this.heads.length === 0) return this.disagreement();
    while (this.heads[0]?.size === this.kept.size) {
      const { root } = this.heads.shift() as Head;
      if (this.disagreeing !== undefined) return this.disagreement(root);
      if (root !== this.kept.head().root) return this.rewritten();
      this.agreedUpTo = this.kept.size;
    }
    return undefined;
  }

  finish(): RecordCheck {
    const next = this.heads[0];
    const number = this.kept.size + 1;
    return (
      this.disagreement() ??
      (next
        ? misfit(number, 'cut-short', `Entry ${number} is missing: the head says that there are ${next.size}.`)
        : { fits: true, head: this.kept.head(), frontier: this.kept.frontier() })
    );
  }

  private disagreement(root?: string): RecordCheck | undefined {
    const number = this.disagreeing;
    if (number === undefined) return undefined;
    if (root === this.kept.head().root) {
      return misfit(number, 'bytes', `The bytes of entry ${number} were altered: its leaf hash fits the head.`);
    }
    if (root === this.computed.head().root) {
      return misfit(number, 'leaf', `The leaf hash of entry ${number} was altered: its bytes fit the head.`);
    }
    return misfit(number, 'bytes-or-leaf', `The bytes of entry ${number} do not give its leaf hash.`);
  }

  private rewritten(): RecordCheck {
    const [first, last] = [this.agreedUpTo + 1, this.kept.size];
    const which = first >= last ? `Entry ${last}` : `One or more of the entries ${first} to ${last}`;
    return misfit(
      Math.min(first, last),
      'rewritten',
      `${which} were rewritten with their leaf hashes: the head differs.`,
    );
  }
}

function outOfOrder(expected: number, found: number): RecordCheck {
  if (found > expected)
    return misfit(expected, 'gap', `Entry ${expected} is missing: entry ${found} stands in its place.`);
  return misfit(found, 'repeated', `Entry ${found} stands where entry ${expected} belongs.`);
}

function misfit(number: number, kind: Misfit, sentence: string): RecordCheck {
  return { fits: false, number, misfit: kind, sentence };
}

function checkedHead(head: Head): Head {
  if (!Number.isSafeInteger(head.size) || head.size < 0 || !/^[0-9a-f]{64}$/.test(head.root)) {
    throw new RangeError(`${JSON.stringify(head)} is not a head of a record.`);
  }
  return head;
}
