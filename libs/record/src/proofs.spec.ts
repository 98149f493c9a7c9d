import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  consistencyByDefinition,
  pathByDefinition,
  rootByDefinition,
} from '../../../tests/vectors/rfc9162-by-definition.js';
import {
  emptyRoot,
  leafHash,
  proveConsistency,
  proveInclusion,
  proveSubtree,
  provesConsistency,
  provesInclusion,
  provesSubtree,
  type Hash,
} from './index.js';

/** Hashes are places in the list `hashes`; numbers beyond 2^53 stand as text. */
interface Case {
  name: string;
  proof: number[];
  wantErr: boolean;
  [field: string]: unknown;
}
interface Vectors {
  source: string;
  hashes: string[];
  inclusion: Case[];
  consistency: Case[];
  subtreeinclusion: Case[];
  subtreeconsistency: Case[];
}

const path = new URL('../../../tests/vectors/merkle-proofs.json', import.meta.url);
const vectors = JSON.parse(readFileSync(path, 'utf8')) as Vectors;
const hash = (place: unknown): Hash =>
  Uint8Array.from(Buffer.from(vectors.hashes[place as number] as string, 'base64'));
const count = (field: unknown): number => Number(field);

describe(`proofs, against ${vectors.source}`, () => {
  it('are checked on all 518 published cases', () => {
    const { inclusion, consistency, subtreeinclusion, subtreeconsistency } = vectors;
    const all = [...inclusion, ...consistency, ...subtreeinclusion, ...subtreeconsistency];
    expect([all.length, all.filter(({ wantErr }) => !wantErr).length]).toEqual([518, 36]);
  });

  it.each(vectors.inclusion)('of inclusion: $name', ({ leafIdx, treeSize, leafHash: leaf, root, proof, wantErr }) => {
    const claim = { index: count(leafIdx), size: count(treeSize), leafHash: hash(leaf), root: hash(root) };
    expect(provesInclusion({ ...claim, proof: proof.map(hash) })).toBe(!wantErr);
  });

  it.each(vectors.consistency)('of consistency: $name', ({ size1, size2, root1, root2, proof, wantErr }) => {
    const claim = { first: count(size1), second: count(size2), firstRoot: hash(root1), secondRoot: hash(root2) };
    expect(provesConsistency({ ...claim, proof: proof.map(hash) })).toBe(!wantErr);
  });

  it.each(vectors.subtreeinclusion)('of inclusion in a subtree: $name', (given) => {
    const [start, end] = [count(given['start']), count(given['end'])];
    const stretch = { start: count(given['leafIdx']) - start, size: end - start };
    const claim = {
      index: stretch.start,
      size: stretch.size,
      leafHash: hash(given['leafHash']),
      root: hash(given['root']),
    };
    const wellPlaced = start === 0 || isPlaced(start, end);
    expect(wellPlaced && provesInclusion({ ...claim, proof: given.proof.map(hash) })).toBe(!given.wantErr);
  });

  it.each(vectors.subtreeconsistency)('of a subtree: $name', ({ start, end, size, root1, root2, proof, wantErr }) => {
    const claim = {
      start: count(start),
      end: count(end),
      size: count(size),
      subtreeRoot: hash(root1),
      root: hash(root2),
    };
    expect(provesSubtree({ ...claim, proof: proof.map(hash) })).toBe(!wantErr);
  });
});

const one = fc.uint8Array({ minLength: 32, maxLength: 32 });
const record = fc.array(one, { minLength: 1, maxLength: 40 });
const reader = (leaves: readonly Hash[]) => (from: number, to: number) => leaves.slice(from, to);

describe('a proof of inclusion', () => {
  it('is the one the definition gives, for every entry, and verifies', async () => {
    await fc.assert(
      fc.asyncProperty(record, async (leaves) => {
        const root = rootByDefinition(leaves);
        for (const [index, leaf] of leaves.entries()) {
          const proof = await proveInclusion(reader(leaves), index, leaves.length);
          expect(proof.map(text)).toEqual(pathByDefinition(index, leaves).map(text));
          expect(provesInclusion({ index, size: leaves.length, leafHash: leaf, root, proof })).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('does not hold for another leaf, place, root or hash', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(one, { minLength: 2, maxLength: 40, selector: text }),
        fc.nat(),
        async (leaves, n) => {
          const index = n % leaves.length;
          const other = (index + 1) % leaves.length;
          const proof = await proveInclusion(reader(leaves), index, leaves.length);
          const claim = {
            index,
            size: leaves.length,
            leafHash: leaves[index] as Hash,
            root: rootByDefinition(leaves),
            proof,
          };
          const broken = proof.map((step, at) => (at === n % proof.length ? flipped(step, n) : step));
          expect(provesInclusion({ ...claim, leafHash: leaves[other] as Hash })).toBe(false);
          expect(provesInclusion({ ...claim, index: other })).toBe(false);
          expect(provesInclusion({ ...claim, root: flipped(claim.root, n) })).toBe(false);
          expect(provesInclusion({ ...claim, proof: broken })).toBe(false);
          expect(provesInclusion({ ...claim, proof: proof.slice(1) })).toBe(false);
          expect(provesInclusion({ ...claim, proof: [...proof, one32] })).toBe(false);
        },
      ),
    );
  });
});

describe('a proof of consistency', () => {
  it('is the one the definition gives, for every shorter record, and verifies', async () => {
    await fc.assert(
      fc.asyncProperty(record, async (leaves) => {
        const secondRoot = rootByDefinition(leaves);
        for (let first = 1; first <= leaves.length; first += 1) {
          const proof = await proveConsistency(reader(leaves), first, leaves.length);
          const firstRoot = rootByDefinition(leaves.slice(0, first));
          expect(proof.map(text)).toEqual(consistencyByDefinition(first, leaves).map(text));
          expect(provesConsistency({ first, second: leaves.length, firstRoot, secondRoot, proof })).toBe(true);
          expect(provesConsistency({ first, second: leaves.length, firstRoot: one32, secondRoot, proof })).toBe(
            false,
          );
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('a proof of a stretch', () => {
  it('holds for every subtree of every record up to 20 entries, and for its own root only', async () => {
    for (let size = 1; size <= 20; size += 1) {
      const leaves = Array.from({ length: size }, (_, index) => leafHash(Uint8Array.of(index)));
      const root = rootByDefinition(leaves);
      for (const [start, end] of stretches(size)) {
        const proof = await proveSubtree(reader(leaves), start, end, size);
        const subtreeRoot = rootByDefinition(leaves.slice(start, end));
        expect(provesSubtree({ start, end, size, subtreeRoot, root, proof })).toBe(true);
        expect(provesSubtree({ start, end, size, subtreeRoot: one32, root, proof })).toBe(false);
      }
    }
  });

  it.each([
    [1, 3, 8],
    [0, 9, 8],
    [2, 2, 8],
    [-1, 1, 8],
    [0, 1, 2 ** 53],
  ])('is refused for the entries %i up to %i of %i', async (start, end, size) => {
    await expect(proveSubtree(reader([]), start, end, size)).rejects.toThrow(RangeError);
  });

  it('is refused when the reader keeps leaves back', async () => {
    await expect(proveInclusion(reader([one32]), 0, 2)).rejects.toThrow(
      'The leaves 1 up to 2 were asked for, and 0 came.',
    );
  });

  it('says nothing about an empty record by consistency', () => {
    const nothing = { first: 0, second: 0, firstRoot: emptyRoot(), secondRoot: emptyRoot(), proof: [] };
    expect(provesConsistency(nothing)).toBe(false);
  });
});

const one32 = new Uint8Array(32).fill(1);

function text(bytes: Hash): string {
  return Buffer.from(bytes).toString('hex');
}

function flipped(bytes: Hash, bit: number): Hash {
  const copy = Uint8Array.from(bytes);
  copy[Math.floor(bit / 8) % copy.length]! ^= 1 << (bit % 8);
  return copy;
}

function isPlaced(start: number, end: number): boolean {
  return start < end && start % 2 ** Math.ceil(Math.log2(end - start)) === 0;
}

function stretches(size: number): [number, number][] {
  const all: [number, number][] = [];
  for (let start = 0; start < size; start += 1) {
    for (let end = start + 1; end <= size; end += 1) if (isPlaced(start, end)) all.push([start, end]);
  }
  return all;
}
