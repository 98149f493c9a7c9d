import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { personReference } from './index.js';

const salt = fc.uint8Array({ minLength: 16, maxLength: 64 });

describe('the reference of a person', () => {
  it('is 64 hex digits, the same for the same salt and id, another for another', () => {
    fc.assert(
      fc.property(salt, salt, fc.uuid(), fc.uuid(), (one, other, anna, bert) => {
        fc.pre(anna !== bert && Buffer.compare(one, other) !== 0);
        expect(personReference(one, anna)).toMatch(/^[0-9a-f]{64}$/);
        expect(personReference(one, anna)).toBe(personReference(Uint8Array.from(one), anna));
        expect(personReference(one, anna)).not.toBe(personReference(other, anna));
        expect(personReference(one, anna)).not.toBe(personReference(one, bert));
      }),
    );
  });

  // RFC 4231 test case 1, the one whose key is long enough to be a salt.
  it('is HMAC-SHA256, as a stranger with the salt can recompute', () => {
    expect(personReference(new Uint8Array(20).fill(0x0b), 'Hi There')).toBe(
      'b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7',
    );
  });

  it('is refused for a short salt and for nobody', () => {
    expect(() => personReference(new Uint8Array(15), 'p')).toThrow('A salt of 15 bytes is too short: 16 or more.');
    expect(() => personReference(new Uint8Array(16), '')).toThrow('A person without an id has no reference.');
  });
});
