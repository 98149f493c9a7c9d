import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSealed, opened, sealed } from './sealed-secret.js';

const key = Buffer.alloc(32, 1);
const other = Buffer.alloc(32, 2);
const whose = { operatorId: 'one', id: 'a' };

describe('a sealed secret', () => {
  it('opens to what it was, under its key and at its address alone', () => {
    fc.assert(
      fc.property(fc.string(), (secret) => {
        const stored = sealed(secret, whose, [key]);
        expect(opened(stored, whose, [key])).toBe(secret);
        expect(opened(stored, whose, [other, key])).toBe(secret);
        expect(opened(stored, whose, [other])).toBeNull();
        expect(opened(stored, whose, [])).toBeNull();
        expect(opened(stored, { ...whose, id: 'b' }, [key])).toBeNull();
        expect(opened(stored, { ...whose, operatorId: 'two' }, [key])).toBeNull();
      }),
    );
  });

  it('shows nothing of it, and is never the same twice', () => {
    const [first, second] = [sealed('whsec_hush', whose, [key]), sealed('whsec_hush', whose, [key])];
    expect(first).not.toBe(second);
    expect([first, Buffer.from(first, 'base64').toString('latin1')].join()).not.toContain('hush');
  });

  it('that somebody changed by one bit does not open', () => {
    const stored = sealed('whsec_hush', whose, [key]);
    const bytes = Buffer.from(stored.slice('sealed:1:'.length), 'base64');
    for (let at = 0; at < bytes.length; at += 1) {
      const changed = Buffer.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ 1;
      expect(opened(`sealed:1:${changed.toString('base64')}`, whose, [key])).toBeNull();
    }
    for (const cut of ['sealed:1:', 'sealed:1:AAAA']) expect(opened(cut, whose, [key])).toBeNull();
  });

  it('stays readable where no key is named, and is read as it is', () => {
    expect(sealed('whsec_hush', whose, [])).toBe('whsec_hush');
    expect([isSealed('whsec_hush'), opened('whsec_hush', whose, [key])]).toEqual([false, 'whsec_hush']);
  });
});
