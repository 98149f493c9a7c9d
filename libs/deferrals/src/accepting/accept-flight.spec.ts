import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIRCRAFT, refusalOf, signed } from '../invented.fixture.js';
import { acceptFlight, type Shown, voidBecause } from './accept-flight.js';

const at = '2026-01-27T10:00Z';
const by = signed('commander', at, { role: 'commander' });
const shown: Shown = {
  aircraft: 'Q-ABA',
  flight: 'QX 118',
  items: [{ defect: 'D1', basis: 'a1', words: 'Q-ABA/1 autopilot' }],
  lastReleaseAt: '2026-01-26T10:00Z',
  goodUntil: '2026-01-27T12:00Z',
};
const accept = (over: object = {}) =>
  acceptFlight(AIRCRAFT, shown, { role: 'commander', accepted: true, by, ...over }, at);

describe('accepting the aircraft for one flight', () => {
  it('stands for what was shown', () => {
    expect(voidBecause(accept(), shown, '2026-01-27T11:59Z')).toEqual([]);
    expect(accept()).toMatchObject({ accepted: true, reason: null });
  });

  it('is declined with a reason and not without one', () => {
    expect(refusalOf(() => accept({ accepted: false })).code).toBe('declined-without-reason');
    expect(accept({ accepted: false, reason: 'fuel imbalance not explained' })).toMatchObject({
      accepted: false,
      reason: 'fuel imbalance not explained',
    });
  });

  it('is signed by the one whose part it is, and not on what is over', () => {
    expect(refusalOf(() => accept({ by: signed('tech', at) })).code).toBe('role-does-not-accept');
    const expired = signed('commander', at, { role: 'commander', scope: { validUntil: '2026-01-01T00:00Z' } });
    expect(refusalOf(() => accept({ by: expired })).code).toBe('authorisation-not-valid-then');
    const late = { ...shown, goodUntil: at };
    const asked = { role: 'commander' as const, accepted: true, by };
    expect(refusalOf(() => acceptFlight(AIRCRAFT, late, asked, at)).code).toBe('shown-is-over');
  });

  it.each([
    ['another aircraft', { aircraft: 'Q-ABB' }],
    ['another flight', { flight: 'QX 119' }],
    ['released since', { lastReleaseAt: '2026-01-27T10:30Z' }],
    ['new since then', { items: [...shown.items, { defect: 'D2', basis: null, words: 'Q-ABA/2 fan' }] }],
    ['another basis', { items: [{ defect: 'D1', basis: 'a9', words: 'Q-ABA/1 autopilot' }] }],
  ])('is void: %s', (words, over: Partial<Shown>) => {
    expect(voidBecause(accept(), { ...shown, ...over }, at).join(' ')).toContain(words);
  });

  it('is void from the instant at which what it rested on ends', () => {
    expect(voidBecause(accept(), shown, '2026-01-27T12:00Z')).toEqual([
      'what it rested on ended at 2026-01-27T12:00Z',
    ]);
  });

  it('stands for fewer items than were accepted, and for no others, whatever is open', () => {
    const names = fc.uniqueArray(fc.constantFrom('D1', 'D2', 'D3', 'D4'));
    const some = (defects: string[]) => defects.map((defect) => ({ defect, basis: `of ${defect}`, words: defect }));
    fc.assert(
      fc.property(names, names, (then, now) => {
        const accepted = acceptFlight(
          AIRCRAFT,
          { ...shown, items: some(then) },
          { role: 'commander', accepted: true, by },
          at,
        );
        const stands = voidBecause(accepted, { ...shown, items: some(now) }, at).length === 0;
        expect(stands).toBe(now.every((one) => then.includes(one)));
      }),
    );
  });
});
