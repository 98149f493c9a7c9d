import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyRoot, GrowingTree, hashOfHex, hexOf, leafHash, nodeHash, treeRoot, type Hash } from './index.js';
import { rootByDefinition } from '../../../tests/vectors/rfc9162-by-definition.js';

interface Roots {
  source: string;
  leavesHex: string[];
  roots: string[];
  leaf: { text: string; hash: string };
  node: { left: string; right: string; hash: string };
}

const path = new URL('../../../tests/vectors/merkle-roots.json', import.meta.url);
const vectors = JSON.parse(readFileSync(path, 'utf8')) as Roots;
const leaves = vectors.leavesHex.map((hex) => leafHash(Buffer.from(hex, 'hex')));
const bytes = (text: string) => new TextEncoder().encode(text);
const leafList = fc.array(fc.uint8Array({ minLength: 32, maxLength: 32 }), { maxLength: 70 });

describe(`the tree, against ${vectors.source}`, () => {
  it.each(vectors.roots.map((root, size) => ({ root, size })))('has the published root for $size leaves', (given) => {
    expect(hexOf(treeRoot(leaves.slice(0, given.size)))).toBe(given.root);
  });

  it('hashes the published leaf and node', () => {
    expect(hexOf(leafHash(bytes(vectors.leaf.text)))).toBe(vectors.leaf.hash);
    expect(hexOf(nodeHash(bytes(vectors.node.left), bytes(vectors.node.right)))).toBe(vectors.node.hash);
  });
});

describe('a growing tree', () => {
  it('has after each leaf the root that the recursive definition gives for the whole list', () => {
    fc.assert(
      fc.property(leafList, (list) => {
        const tree = GrowingTree.empty();
        expect(tree.root()).toEqual(emptyRoot());
        list.forEach((leaf, index) => {
          tree.append(leaf);
          expect(hexOf(tree.root())).toBe(hexOf(rootByDefinition(list.slice(0, index + 1))));
        });
        expect(tree.head()).toEqual({ size: list.length, root: hexOf(rootByDefinition(list)) });
      }),
    );
  });

  it('grows on from a frontier kept as JSON as if it had never stopped', () => {
    fc.assert(
      fc.property(leafList, leafList, (before, after) => {
        const first = grown(GrowingTree.empty(), before);
        const kept = JSON.parse(JSON.stringify(first.frontier())) as ReturnType<GrowingTree['frontier']>;
        expect(grown(GrowingTree.from(kept), after).head()).toEqual(grown(first, after).head());
        expect(kept.hashes.length).toBeLessThanOrEqual(Math.ceil(Math.log2(before.length + 1)));
      }),
    );
  });

  it('grows on from the largest size there is with no more than 53 hashes', () => {
    const size = Number.MAX_SAFE_INTEGER - 1;
    const tree = GrowingTree.from({ size, hashes: Array.from({ length: 52 }, () => 'ab'.repeat(32)) });
    tree.append(leafHash(bytes('x')));
    expect(tree.frontier().hashes).toHaveLength(53);
  });

  it.each([
    [{ size: -1, hashes: [] }, '-1 is not a number of entries.'],
    [{ size: 1.5, hashes: [] }, '1.5 is not a number of entries.'],
    [{ size: 2 ** 53, hashes: [] }, '9007199254740992 is not a number of entries.'],
    [{ size: 3, hashes: ['00'.repeat(32)] }, 'A frontier of size 3 has 2 hashes, not 1.'],
    [{ size: 1, hashes: ['AB'.repeat(32)] }, `"${'AB'.repeat(32)}" is not a hash of 64 lower-case hex digits.`],
    [{ size: 1, hashes: [`${'ab'.repeat(32)}\n`] }, 'is not a hash of 64 lower-case hex digits.'],
  ])('refuses the frontier %j', (frontier, sentence) => {
    expect(() => GrowingTree.from(frontier)).toThrow(sentence);
  });

  it('refuses a leaf of another length', () => {
    expect(() => GrowingTree.empty().append(new Uint8Array(31))).toThrow('A leaf hash has 32 bytes, not 31.');
  });

  it('writes a hash as hex and reads it back', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), (hash) => {
        expect(hexOf(hash)).toBe(Buffer.from(hash).toString('hex'));
        expect(hashOfHex(hexOf(hash))).toEqual(hash);
      }),
    );
  });
});

function grown(tree: GrowingTree, list: Hash[]): GrowingTree {
  for (const leaf of list) tree.append(leaf);
  return tree;
}
