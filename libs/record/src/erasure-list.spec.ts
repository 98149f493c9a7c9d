import { generateKeyPairSync } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areErasuresSignedBy, type ErasureList, erasureListIn, isHeadSignedBy, signErasures } from './index.js';

const { privateKey, publicKey } = generateKeyPairSync('ed25519');
const erased = {
  person: '0190a7c4-0000-7000-8000-000000000001',
  reference: 'ab'.repeat(32),
  erasedAt: '2029-01-15T12:01:00.000Z',
  by: 'cd'.repeat(32),
};
const statement = {
  log: '0190a7c4-0000-7000-8000-0000000000aa',
  operator: 'QOF',
  signedAt: '2029-01-15T12:10:00.000Z',
  people: [erased, { ...erased, person: '0190a7c4-0000-7000-8000-000000000002', by: null }],
};
const signed = signErasures(statement, privateKey);
const passes = (list: unknown, key = publicKey): boolean => {
  const read = erasureListIn(JSON.parse(JSON.stringify(list)));
  return read !== null && areErasuresSignedBy(read, key);
};

describe('a list of erasures', () => {
  it('verifies by the public key after a way through JSON, whatever stands beside it', () => {
    expect(passes({ note: 'kept by hand', ...signed })).toBe(true);
    expect(passes(signErasures({ ...statement, people: [] }, privateKey))).toBe(true);
    expect(passes(signed, generateKeyPairSync('ed25519').publicKey)).toBe(false);
  });

  it('does not verify once one letter or digit of what it says is another', () => {
    const text = JSON.stringify(signed);
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom(...'0a7f'), (at, letter) => {
        const altered = `${text.slice(0, at)}${letter}${text.slice(at + 1)}`;
        fc.pre(altered !== text);
        let value: unknown = null;
        try {
          value = JSON.parse(altered);
        } catch {
          return;
        }
        expect(passes(value)).toBe(false);
      }),
    );
  });

  it.each([
    ['without its last one', { people: signed.people.slice(0, 1) }],
    ['in another order', { people: signed.people.toReversed() }],
    ['under another operator', { log: '0190a7c4-0000-7000-8000-0000000000ab' }],
    ['under another code', { operator: 'QOG' }],
    ['with a line break in its code', { operator: 'Q\nOF' }],
    ['of another format', { format: 'proviso-erasures/2' }],
    ['with people that are no list', { people: 'all' }],
    ['with somebody who is none', { people: [null] }],
    ['without a signature', { signature: undefined }],
    ['with an id that is none', { people: [{ ...erased, person: "' or true" }] }],
  ])('is refused %s', (_, change) => {
    expect(passes({ ...signed, ...change })).toBe(false);
  });

  it.each([null, [], 'list', 7])('is not found in %j', (value) => expect(erasureListIn(value)).toBeNull());

  it('is signed for nothing else: its signature is no head and a malformed one is not signed', () => {
    const head = { log: statement.log, size: 2, root: erased.reference, signedAt: statement.signedAt };
    expect(isHeadSignedBy({ ...head, signature: signed.signature }, publicKey)).toBe(false);
    const malformed: ErasureList = { ...signed, signedAt: 'today' };
    expect(() => signErasures(malformed, privateKey)).toThrow('no list of erasures');
  });
});
