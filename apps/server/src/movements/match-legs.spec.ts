import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchLegs } from './match-legs.js';

interface Timed {
  name: string;
  sequence: number;
  offBlockAt: string;
  airborneAt: string | null;
  landedAt: string | null;
  onBlockAt: string | null;
}

const leg = (name: string, sequence: number, off: string, others: Partial<Timed> = {}): Timed => ({
  name,
  sequence,
  offBlockAt: off,
  airborneAt: null,
  landedAt: null,
  onBlockAt: null,
  ...others,
});

const matched = (stored: Timed[], told: Timed[]): string[] => {
  const { pairs, gone } = matchLegs(stored, told);
  return [
    ...pairs.map((pair) => `${pair.told.name}=${pair.stored?.name ?? 'new'}`),
    ...gone.map(({ name }) => `${name} gone`),
  ];
};

describe('a leg told anew', () => {
  it('is the stored one that left at the same time, wherever it stands among the others by now', () => {
    const stored = [leg('a', 1, '09:00')];
    expect(matched(stored, [leg('first', 1, '07:00'), leg('second', 2, '09:00')])).toEqual(['first=new', 'second=a']);
  });

  it('is the one with which it shares another time, when a departure becomes known', () => {
    const stored = [leg('arrival', 1, '10:00', { landedAt: '10:00' }), leg('b', 2, '12:00')];
    const told = [leg('whole', 1, '08:00', { landedAt: '10:00' }), leg('other', 2, '12:00')];
    expect(matched(stored, told)).toEqual(['whole=arrival', 'other=b']);
  });

  it('is the one in the same place when every time was corrected', () => {
    expect(matched([leg('a', 1, '07:00')], [leg('corrected', 1, '07:05')])).toEqual(['corrected=a']);
  });

  it('does not take from another what shares its time', () => {
    const stored = [leg('a', 1, '07:00'), leg('b', 2, '09:00')];
    expect(matched(stored, [leg('new', 1, '06:00'), leg('second', 2, '07:00'), leg('third', 3, '09:00')])).toEqual([
      'new=new',
      'second=a',
      'third=b',
    ]);
  });

  it('leaves over what is told no more', () => {
    expect(matched([leg('a', 1, '07:00'), leg('b', 2, '09:00')], [leg('one', 1, '09:00')])).toEqual([
      'one=b',
      'a gone',
    ]);
  });
});

it('no leg is lost or used twice, and what is told again unchanged is itself', () => {
  const legs = fc.uniqueArray(
    fc.record({ at: fc.integer({ min: 0, max: 20 }), landed: fc.option(fc.integer({ min: 21, max: 30 })) }),
    { maxLength: 6, selector: ({ at }) => at },
  );
  const timed = (side: string) => (of: { at: number; landed: number | null }, index: number) =>
    leg(`${side}${index}`, index + 1, String(of.at), { landedAt: of.landed === null ? null : String(of.landed) });
  fc.assert(
    fc.property(legs, legs, (before, after) => {
      const [stored, told] = [before.map(timed('s')), after.map(timed('t'))];
      const { pairs, gone } = matchLegs(stored, told);
      const used = [...pairs.flatMap((pair) => pair.stored ?? []), ...gone].map(({ name }) => name);
      expect(used.toSorted()).toEqual(stored.map(({ name }) => name).toSorted());
      expect(pairs.map((pair) => pair.told.name)).toEqual(told.map(({ name }) => name));
      for (const pair of pairs) {
        const same = stored.find(({ offBlockAt }) => offBlockAt === pair.told.offBlockAt);
        if (same) expect(pair.stored).toBe(same);
      }
    }),
  );
});
