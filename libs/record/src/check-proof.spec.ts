import { generateKeyPairSync } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootByDefinition } from '../../../tests/vectors/rfc9162-by-definition.js';
import {
  checkProof,
  hexOf,
  leafHash,
  proofFormat,
  proveConsistency,
  proveInclusion,
  proveInclusions,
  recordBytes,
  signHead,
  type Hash,
  type ProofFile,
} from './index.js';

const house = generateKeyPairSync('ed25519');
const stranger = generateKeyPairSync('ed25519');
const log = '0197f0a0-0000-7000-8000-000000000001';
const at = '2026-01-05T08:00:00.000Z';

const bytesOf = (n: number) => recordBytes({ operator: log, n });
const leavesOf = (size: number): Hash[] => Array.from({ length: size }, (_, n) => leafHash(bytesOf(n)));
const reader = (leaves: readonly Hash[]) => (from: number, to: number) => leaves.slice(from, to);

function headOf(leaves: readonly Hash[], key = house.privateKey) {
  return signHead({ log, size: leaves.length, root: hexOf(rootByDefinition(leaves)), signedAt: at }, key);
}

/** A file about some entries of a record of `size`, with the way from its first `from` entries. */
async function aFile(size: number, numbers: readonly number[], from: number | null): Promise<ProofFile> {
  const leaves = leavesOf(size);
  const indexes = numbers.map((number) => number - 1);
  const proofs = await proveInclusions(reader(leaves), indexes, size);
  const way = from === null ? null : await proveConsistency(reader(leaves), from, size);
  return {
    format: proofFormat,
    log,
    head: headOf(leaves),
    earlier: from === null || way === null ? null : { head: headOf(leaves.slice(0, from)), proof: way.map(hexOf) },
    entries: indexes.map((index) => ({
      number: index + 1,
      canonical: new TextDecoder().decode(bytesOf(index)),
      leaf: hexOf(leaves[index] as Hash),
      proof: (proofs.get(index) ?? []).map(hexOf),
    })),
  };
}

const asked = fc.integer({ min: 1, max: 40 }).chain((size) =>
  fc.record({
    size: fc.constant(size),
    numbers: fc.uniqueArray(fc.integer({ min: 1, max: size }), { minLength: 1, maxLength: 6 }),
    from: fc.option(fc.integer({ min: 1, max: size })),
  }),
);
const check = (file: unknown, more = {}) => checkProof(file, { key: house.publicKey, ...more });
const whereOf = (file: unknown, more = {}) => check(file, more).findings.map(({ where }) => where);

describe('the proofs of several entries', () => {
  it('are those that each entry would get by itself, from one reading of the leaves', async () => {
    await fc.assert(
      fc.asyncProperty(asked, async ({ size, numbers }) => {
        const leaves = leavesOf(size);
        let read = 0;
        const counting = (from: number, to: number) => {
          read += to - from;
          return leaves.slice(from, to);
        };
        const proofs = await proveInclusions(
          counting,
          numbers.map((number) => number - 1),
          size,
        );
        expect(read).toBe(size);
        for (const number of numbers) {
          expect(proofs.get(number - 1)).toEqual(await proveInclusion(reader(leaves), number - 1, size));
        }
      }),
    );
  });

  it('are refused for an entry that is not there', async () => {
    await expect(proveInclusions(reader([]), [3], 3)).rejects.toThrow('There is no entry 4 in a record of 3.');
  });
});

describe('a proof file', () => {
  it('fits as the house made it, and says what it shows', async () => {
    await fc.assert(
      fc.asyncProperty(asked, async ({ size, numbers, from }) => {
        const file = await aFile(size, numbers, from);
        expect(check(JSON.parse(JSON.stringify(file)))).toEqual({
          fits: true,
          findings: [],
          head: { size, root: file.head.root },
          signedAt: at,
          entries: numbers.length,
          grownFrom: from,
        });
      }),
      { numRuns: 40 },
    );
  });

  it('names the entry whose text, leaf, number or proof was altered, and no other', async () => {
    await fc.assert(
      fc.asyncProperty(asked, fc.nat(), fc.nat(), async ({ size, numbers }, which, how) => {
        const file = await aFile(size, numbers, null);
        const place = which % numbers.length;
        const entry = file.entries[place] as ProofFile['entries'][number];
        const text = entry.canonical.replace('"n":', '"n":1');
        const altered = [
          { ...entry, canonical: text },
          { ...entry, canonical: text, leaf: hexOf(leafHash(new TextEncoder().encode(text))) },
          { ...entry, leaf: hexOf(leafHash(bytesOf(99))) },
          { ...entry, number: size + 1 },
          { ...entry, proof: [...entry.proof, entry.leaf] },
          { ...entry, proof: entry.proof.slice(1).concat(entry.proof.length === 0 ? [entry.leaf] : []) },
        ][how % 6] as typeof entry;
        const found = whereOf({ ...file, entries: file.entries.with(place, altered) });
        expect(found).toEqual([`entry ${altered.number}`]);
      }),
    );
  });

  it('names an entry that stands twice, one of another operator and one that is not canonical', async () => {
    const file = await aFile(4, [2, 3], null);
    const [second, third] = file.entries as [ProofFile['entries'][number], ProofFile['entries'][number]];
    expect(check({ ...file, entries: [second, third, second] }).findings).toEqual([
      { where: 'entry 2', sentence: 'Entry 2 stands here twice.' },
    ]);
    const texts = ['{"operator":"another"}', `{ "operator":"${log}"}`, 'no json'];
    const leaves = texts.map((text) => leafHash(new TextEncoder().encode(text)));
    const entries = await Promise.all(
      texts.map(async (canonical, index) => ({
        number: index + 1,
        canonical,
        leaf: hexOf(leaves[index] as Hash),
        proof: (await proveInclusion(reader(leaves), index, 3)).map(hexOf),
      })),
    );
    expect(check({ ...file, head: headOf(leaves), entries }).findings.map(({ sentence }) => sentence)).toEqual([
      'Entry 1 is of another operator.',
      'Entry 2 is not in canonical form.',
      'Entry 3 is no JSON.',
    ]);
  });

  it('does not fit with a head that is unsigned, altered, of another record or signed by a stranger', async () => {
    const file = await aFile(7, [5], 3);
    const { signature: _, ...unsigned } = file.head as ReturnType<typeof headOf>;
    const forged = headOf(leavesOf(7), stranger.privateKey);
    const elsewhere = signHead({ ...unsigned, log: 'another', signedAt: at }, house.privateKey);
    for (const head of [unsigned, { ...file.head, signedAt: '2020-01-01T00:00:00.000Z' }, forged, elsewhere]) {
      expect(whereOf({ ...file, head })).toEqual(['head']);
    }
    const earlier = { ...file.earlier, head: { ...file.earlier?.head, signature: '0'.repeat(128) } };
    expect(whereOf({ ...file, earlier })).toEqual(['earlier head']);
  });

  it('says that the record was rewritten when it does not begin as it once did', async () => {
    const file = await aFile(9, [9], 4);
    const was = leavesOf(4).with(2, leafHash(bytesOf(50)));
    const rewritten = { ...file, earlier: { head: headOf(was), proof: file.earlier?.proof } };
    expect(check(rewritten).findings).toEqual([
      {
        where: 'earlier head',
        sentence: 'The record of 4 entries does not begin the one of 9: something before entry 5 was altered.',
      },
    ]);
  });

  it('is held against a head that the reader kept', async () => {
    const file = await aFile(9, [1], 4);
    expect(check(file, { held: headOf(leavesOf(4)) })).toMatchObject({ fits: true, grownFrom: 4 });
    expect(check(file, { held: headOf(leavesOf(9)) }).fits).toBe(true);
    expect(check(file, { held: headOf(leavesOf(5)) }).findings).toEqual([
      { where: 'head kept', sentence: 'The file shows nothing of how the record grew from the 5 entries you kept.' },
    ]);
    const other = headOf(leavesOf(4).toReversed());
    expect(check(file, { held: other }).findings[0]?.sentence).toMatch(/^Two heads of size 4 were signed and differ/);
    expect(whereOf(file, { held: headOf(leavesOf(4), stranger.privateKey) })).toEqual(['head kept']);
  });

  it('answers for any file at all, and never throws', async () => {
    const file = JSON.parse(JSON.stringify(await aFile(5, [2, 4], 3))) as Record<string, unknown>;
    const spoilt = fc.tuple(fc.constantFrom(...Object.keys(file)), fc.jsonValue());
    fc.assert(
      fc.property(
        fc.oneof(
          fc.jsonValue(),
          spoilt.map(([key, value]) => ({ ...file, [key]: value })),
        ),
        (value) => {
          const { fits, findings, entries } = check(value);
          expect(fits).toBe(findings.length === 0);
          expect([0, 2]).toContain(entries);
        },
      ),
    );
  });
});
