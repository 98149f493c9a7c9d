import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  canonicalText,
  GrowingTree,
  leafHash,
  treeRoot,
  hexOf,
  verifyRecord,
  type Head,
  type RecordEntry,
} from './index.js';

const bytes = (text: string) => new TextEncoder().encode(text);
const entry = (number: number, payload: Uint8Array): RecordEntry => ({
  number,
  bytes: payload,
  leafHash: leafHash(payload),
});
const recordOf = (payloads: readonly unknown[]) =>
  payloads.map((payload, index) => entry(index + 1, bytes(canonicalText(payload))));
const headOf = (entries: readonly RecordEntry[]): Head => ({
  size: entries.length,
  root: hexOf(treeRoot(entries.map((kept) => kept.leafHash))),
});
const five = recordOf(['a', 'b', 'c', 'd', 'e']);
const payloads = fc.array(fc.jsonValue({ maxDepth: 2 }), { minLength: 1, maxLength: 12 });

describe('verifying a record', () => {
  it('finds that an untouched record fits, with or without heads of any of its sizes', async () => {
    await fc.assert(
      fc.asyncProperty(payloads, fc.array(fc.nat(12)), async (list, sizes) => {
        const entries = recordOf(list);
        const heads = sizes.map((size) => headOf(entries.slice(0, size)));
        const check = await verifyRecord(entries, { heads });
        expect(check).toMatchObject({ fits: true, head: headOf(entries) });
      }),
    );
  });

  it('names the entry of any single altered bit of its bytes or of its leaf hash', async () => {
    await fc.assert(
      fc.asyncProperty(
        payloads,
        fc.nat(),
        fc.nat(),
        fc.boolean(),
        fc.boolean(),
        async (list, which, bit, leaf, known) => {
          const entries = recordOf(list);
          const heads = known ? [headOf(entries)] : [];
          const at = which % entries.length;
          const { number, bytes: kept, leafHash: hash } = entries[at] as RecordEntry;
          entries[at] = leaf
            ? { number, bytes: kept, leafHash: flipped(hash, bit) }
            : { number, bytes: flipped(kept, bit), leafHash: hash };
          const expected = known ? (leaf ? 'leaf' : 'bytes') : 'bytes-or-leaf';
          expect(await verifyRecord(entries, { heads })).toMatchObject({ fits: false, number, misfit: expected });
        },
      ),
    );
  });

  it('finds every byte of every entry that was altered, one after the other', async () => {
    const entries = recordOf([
      { act: 'deferred', item: 'Q-AAA 4' },
      { act: 'released', by: 'ref' },
    ]);
    for (const [at, { number, bytes: kept, leafHash: hash }] of entries.entries()) {
      for (let byte = 0; byte < kept.length; byte += 1) {
        const altered = entries.with(at, { number, bytes: flipped(kept, byte * 8), leafHash: hash });
        expect(await verifyRecord(altered)).toMatchObject({ fits: false, number });
      }
    }
  });

  it('names a missing, a repeated and a swapped entry', async () => {
    const [a, b, c, d] = five as [RecordEntry, RecordEntry, RecordEntry, RecordEntry];
    expect(await verifyRecord([a, b, d])).toEqual({
      fits: false,
      number: 3,
      misfit: 'gap',
      sentence: 'Entry 3 is missing: entry 4 stands in its place.',
    });
    expect(await verifyRecord([a, b, b, c])).toMatchObject({ number: 2, misfit: 'repeated' });
    expect(await verifyRecord([b, a])).toMatchObject({ number: 1, misfit: 'gap' });
    expect(await verifyRecord([{ ...a, number: Number.NaN }])).toMatchObject({ fits: false, misfit: 'repeated' });
  });

  it('finds entries cut off at the end only by a head kept elsewhere', async () => {
    expect(await verifyRecord(five.slice(0, 3))).toMatchObject({ fits: true });
    expect(await verifyRecord(five.slice(0, 3), { heads: [headOf(five)] })).toEqual({
      fits: false,
      number: 4,
      misfit: 'cut-short',
      sentence: 'Entry 4 is missing: the head says that there are 5.',
    });
    expect(await verifyRecord([], { heads: [headOf(five)] })).toMatchObject({ number: 1, misfit: 'cut-short' });
  });

  it('narrows an entry rewritten with its leaf hash down to the heads on either side', async () => {
    const rewritten = five.with(3, entry(4, bytes('"D"')));
    const heads = [headOf(five), headOf(five.slice(0, 3))];
    expect(await verifyRecord(rewritten)).toMatchObject({ fits: true });
    expect(await verifyRecord(rewritten, { heads })).toEqual({
      fits: false,
      number: 4,
      misfit: 'rewritten',
      sentence: 'One or more of the entries 4 to 5 were rewritten with their leaf hashes: the head differs.',
    });
    const exact = await verifyRecord(rewritten, { heads: [...heads, headOf(five.slice(0, 4))] });
    expect(exact).toMatchObject({ number: 4, sentence: expect.stringMatching(/^Entry 4 /) });
  });

  it('names the first of several misfits', async () => {
    const altered = five
      .with(1, { ...(five[1] as RecordEntry), bytes: bytes('"B"') })
      .with(3, { ...(five[3] as RecordEntry), bytes: bytes('"D"') });
    expect(await verifyRecord(altered, { heads: [headOf(five)] })).toMatchObject({ number: 2, misfit: 'bytes' });
    expect(await verifyRecord(altered.toSpliced(2, 1), { heads: [headOf(five)] })).toMatchObject({ number: 2 });
    expect(await verifyRecord(altered.slice(0, 2), { heads: [headOf(five)] })).toMatchObject({ number: 2 });
  });

  it('takes a leaf hash of another length for an altered one', async () => {
    const short = five.with(2, { ...(five[2] as RecordEntry), leafHash: new Uint8Array(31) });
    expect(await verifyRecord(short, { heads: [headOf(five)] })).toMatchObject({ number: 3, misfit: 'leaf' });
  });

  it('goes on from where an earlier check ended', async () => {
    const first = await verifyRecord(five.slice(0, 2));
    if (!first.fits) throw new Error(first.sentence);
    const rest = await verifyRecord(five.slice(2), {
      from: first.frontier,
      heads: [headOf(five), headOf(five.slice(0, 2))],
    });
    expect(rest).toMatchObject({ fits: true, head: headOf(five) });
    expect(await verifyRecord(five, { from: first.frontier })).toMatchObject({ number: 1, misfit: 'repeated' });
    const foreign = GrowingTree.empty();
    foreign.append(leafHash(bytes('x')));
    foreign.append(leafHash(bytes('y')));
    const against = await verifyRecord(five.slice(2), {
      from: foreign.frontier(),
      heads: [headOf(five.slice(0, 2))],
    });
    expect(against).toMatchObject({ fits: false, misfit: 'rewritten', number: 2 });
    const tooEarly = verifyRecord(five.slice(2), { from: first.frontier, heads: [headOf(five.slice(0, 1))] });
    await expect(tooEarly).rejects.toThrow('The head of size 1 lies before the frontier of size 2.');
  });

  it('holds an empty record for fitting an empty head', async () => {
    expect(await verifyRecord([], { heads: [headOf([])] })).toMatchObject({ fits: true, head: headOf([]) });
    expect(await verifyRecord([], { heads: [{ size: 0, root: 'ab'.repeat(32) }] })).toMatchObject({
      misfit: 'rewritten',
    });
  });

  it.each([
    { size: -1, root: 'ab'.repeat(32) },
    { size: 2, root: 'no' },
  ])('refuses the head %j', async (head) => {
    await expect(verifyRecord(five, { heads: [head] })).rejects.toThrow('is not a head of a record.');
  });

  it('reads each entry once and holds none of them', async () => {
    let alive = 0;
    async function* stream() {
      for (let number = 1; number <= 20_000; number += 1) {
        alive = number;
        yield entry(number, bytes(String(number)));
      }
    }
    const check = await verifyRecord(stream());
    expect(check).toMatchObject({ fits: true, head: { size: alive } });
    expect(check.fits && check.frontier.hashes.length).toBeLessThan(16);
  });
});

function flipped(kept: Uint8Array, bit: number): Uint8Array {
  const copy = Uint8Array.from(kept);
  copy[Math.floor(bit / 8) % copy.length]! ^= 1 << (bit % 8);
  return copy;
}
