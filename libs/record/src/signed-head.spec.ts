import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { isHeadSignedBy, signHead, type SignedHead } from './index.js';

const { privateKey, publicKey } = generateKeyPairSync('ed25519');
const statement = { log: 'operator-1', size: 3, root: 'ab'.repeat(32), signedAt: '2026-03-01T10:00:00Z' };
const signed = signHead(statement, privateKey);

describe('a signed head', () => {
  it('verifies by the public key, also after a way through JSON', () => {
    expect(signed).toMatchObject(statement);
    expect(isHeadSignedBy(JSON.parse(JSON.stringify(signed)) as SignedHead, publicKey)).toBe(true);
  });

  it.each([
    { log: 'operator-2' },
    { size: 4 },
    { root: 'ac'.repeat(32) },
    { signedAt: '2026-03-01T10:00:01Z' },
    { signature: '00'.repeat(64) },
  ])('does not verify with %j changed', (change) => {
    expect(isHeadSignedBy({ ...signed, ...change }, publicKey)).toBe(false);
  });

  it.each([
    { log: '\ud800' },
    { log: undefined as unknown as string },
    { size: 2 ** 53 },
    { size: '3' as unknown as number },
    { root: 'AB' },
    { signedAt: 'yesterday' },
    { signature: signed.signature.toUpperCase() },
    { signature: undefined as unknown as string },
  ])('is false, not an error, when malformed as %j', (change) => {
    expect(isHeadSignedBy({ ...signed, ...change }, publicKey)).toBe(false);
  });

  it('does not verify by another key', () => {
    expect(isHeadSignedBy(signed, generateKeyPairSync('ed25519').publicKey)).toBe(false);
  });

  it('is refused by a key of another kind and for a malformed statement', () => {
    const other = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    expect(() => signHead(statement, other.privateKey)).toThrow('this is no private Ed25519 key');
    expect(() => signHead(statement, publicKey)).toThrow('this is no private Ed25519 key');
    expect(() => isHeadSignedBy(signed, privateKey)).toThrow('this is no public Ed25519 key');
    expect(() => signHead({ ...statement, size: -1 }, privateKey)).toThrow('is not a head to sign');
  });
});
