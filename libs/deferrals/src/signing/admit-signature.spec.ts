/** Published requirements on electronic signatures: E-01, E-02, E-04, E-10 FROM MEMORY; E-15, E-18 DERIVED. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { actor, AIRCRAFT, refusalOf, signed } from '../invented.fixture.js';
import type { Privilege } from '../people.js';
import { admitSignature } from './admit-signature.js';

const NOW = '2026-03-01T12:00Z';
const signing = { aircraft: AIRCRAFT, enteredAt: NOW, act: 'released' };

describe('a signature at the moment it is given', () => {
  it('stands when its authorisation covers operator, type and privilege and is valid', () => {
    expect(() => admitSignature(signed('tech', NOW), 'release', signing)).not.toThrow();
  });

  it('E-15: does not stand for another operator, another type or another privilege, and says which', () => {
    const by = (scope: Parameters<typeof signed>[2]) => signed('tech', NOW, scope);
    const facts = (scope: object) =>
      refusalOf(() => admitSignature(by({ scope }), 'release', signing), 'authorisation-does-not-cover').facts.what;
    expect(facts({ operator: 'Another Air' })).toBe('operator Invented Air');
    expect(facts({ aircraftTypes: ['INV-2'] })).toBe('type INV-1');
    expect(facts({ privileges: ['defer', 'inspect'] })).toBe('"release"');
  });

  it('E-01: does not stand on the authorisation of another person', () => {
    const by = signed('tech', NOW, { scope: { person: 'other' } });
    expect(refusalOf(() => admitSignature(by, 'release', signing)).code).toBe('authorisation-of-another-person');
  });

  it('is missing where somebody only acted, unless none is needed', () => {
    expect(refusalOf(() => admitSignature(actor('tech'), 'release', signing)).code).toBe('signature-missing');
    expect(() => admitSignature(actor('tech'), null, signing)).not.toThrow();
  });

  it('E-04: does not stand without the statement that was shown', () => {
    expect(refusalOf(() => admitSignature(signed('tech', NOW, { statement: '' }), 'release', signing)).code).toBe(
      'text-missing',
    );
  });

  it('is not valid before its first instant, nor from its last one on', () => {
    const at = (scope: object) => () => admitSignature(signed('tech', NOW, { scope }), 'release', signing);
    expect(at({ validFrom: NOW })).not.toThrow();
    expect(refusalOf(at({ validFrom: '2026-03-01T12:01Z' })).code).toBe('authorisation-not-valid-then');
    expect(at({ validUntil: '2026-03-01T12:01Z' })).not.toThrow();
    expect(refusalOf(at({ validUntil: NOW })).code).toBe('authorisation-not-valid-then');
    expect(refusalOf(at({ revokedAt: '2026-03-01T11:59Z' })).code).toBe('authorisation-not-valid-then');
  });

  it('E-10: stays good after its signer left', () => {
    const by = signed('tech', NOW, { scope: { revokedAt: '2026-03-02T00:00Z' } });
    expect(() => admitSignature(by, 'release', signing)).not.toThrow();
  });

  it('is not signed back into a time when it was valid, except on a dated paper', () => {
    const scope = { revokedAt: '2026-03-01T10:00Z' };
    const by = signed('tech', '2026-03-01T09:00Z', { scope });
    expect(refusalOf(() => admitSignature(by, 'release', signing)).code).toBe('authorisation-not-valid-then');
    expect(() => admitSignature({ ...by, method: 'paper' }, 'release', signing)).not.toThrow();
  });

  it('is not signed after it was entered', () => {
    expect(refusalOf(() => admitSignature(signed('tech', '2026-03-01T12:01Z'), 'release', signing)).code).toBe(
      'signed-in-the-future',
    );
  });

  it('stands exactly for the privileges that the authorisation names', () => {
    const all: Privilege[] = ['write-up', 'defer', 'concur', 'sign-procedure', 'inspect', 'release', 'extend'];
    fc.assert(
      fc.property(fc.subarray(all), fc.constantFrom(...all), (privileges, asked) => {
        const sign = () => admitSignature(signed('tech', NOW, { scope: { privileges } }), asked, signing);
        if (privileges.includes(asked)) expect(sign).not.toThrow();
        else expect(refusalOf(sign).code).toBe('authorisation-does-not-cover');
      }),
    );
  });
});
