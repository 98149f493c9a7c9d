/** Published requirements on electronic signatures: E-01, E-02, E-04, E-10 FROM MEMORY; E-15, E-18 DERIVED. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { actor, AIRCRAFT, refused, signed } from '../invented.fixture.js';
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
      refused('authorisation-does-not-cover', () => admitSignature(by({ scope }), 'release', signing)).facts.what;
    expect(facts({ operator: 'Another Air' })).toBe('operator Invented Air');
    expect(facts({ aircraftTypes: ['INV-2'] })).toBe('type INV-1');
    expect(facts({ privileges: ['defer', 'inspect'] })).toBe('"release"');
  });

  it('E-01: does not stand on the authorisation of another person', () => {
    const by = signed('tech', NOW, { scope: { person: 'other' } });
    refused('authorisation-of-another-person', () => admitSignature(by, 'release', signing));
  });

  it('is missing where somebody only acted, unless none is needed', () => {
    refused('signature-missing', () => admitSignature(actor('tech'), 'release', signing));
    expect(() => admitSignature(actor('tech'), null, signing)).not.toThrow();
  });

  it('E-04: does not stand without the statement that was shown', () => {
    refused('text-missing', () => admitSignature(signed('tech', NOW, { statement: '' }), 'release', signing));
  });

  it('is not valid before its first instant, nor from its last one on', () => {
    const at = (scope: object) => () => admitSignature(signed('tech', NOW, { scope }), 'release', signing);
    expect(at({ validFrom: NOW })).not.toThrow();
    refused('authorisation-not-valid-then', at({ validFrom: '2026-03-01T12:01Z' }));
    expect(at({ validUntil: '2026-03-01T12:01Z' })).not.toThrow();
    refused('authorisation-not-valid-then', at({ validUntil: NOW }));
    refused('authorisation-not-valid-then', at({ revokedAt: '2026-03-01T11:59Z' }));
  });

  it('E-10: stays good after its signer left', () => {
    const by = signed('tech', NOW, { scope: { revokedAt: '2026-03-02T00:00Z' } });
    expect(() => admitSignature(by, 'release', signing)).not.toThrow();
  });

  it('is not signed back into a time when it was valid, except on a dated paper', () => {
    const scope = { revokedAt: '2026-03-01T10:00Z' };
    const by = signed('tech', '2026-03-01T09:00Z', { scope });
    refused('authorisation-not-valid-then', () => admitSignature(by, 'release', signing));
    expect(() => admitSignature({ ...by, method: 'paper' }, 'release', signing)).not.toThrow();
  });

  it('is not signed after it was entered', () => {
    refused('signed-in-the-future', () => admitSignature(signed('tech', '2026-03-01T12:01Z'), 'release', signing));
  });

  it('stands exactly for the privileges that the authorisation names', () => {
    const all: Privilege[] = ['write-up', 'defer', 'concur', 'sign-procedure', 'inspect', 'release', 'extend'];
    fc.assert(
      fc.property(fc.subarray(all), fc.constantFrom(...all), (privileges, asked) => {
        const sign = () => admitSignature(signed('tech', NOW, { scope: { privileges } }), asked, signing);
        if (privileges.includes(asked)) expect(sign).not.toThrow();
        else refused('authorisation-does-not-cover', sign);
      }),
    );
  });
});
