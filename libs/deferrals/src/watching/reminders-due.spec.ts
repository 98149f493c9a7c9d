import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { remindersDue } from './reminders-due.js';

const ASKED = [50, 25, 10, 0];

describe('of the shares that were asked for', () => {
  it('nothing is told before the first one is reached, and at exactly that share it is', () => {
    expect(remindersDue(0.501, ASKED)).toEqual({ tell: null, passOver: [] });
    expect(remindersDue(0.5, ASKED)).toEqual({ tell: 50, passOver: [] });
    expect(remindersDue(0, ASKED, new Set([50, 25, 10]))).toEqual({ tell: 0, passOver: [] });
  });

  it('the smallest one reached is told of, and larger ones that nobody noticed are passed over', () => {
    expect(remindersDue(0.24, ASKED)).toEqual({ tell: 25, passOver: [50] });
    expect(remindersDue(0.24, ASKED, new Set([50, 25]))).toEqual({ tell: null, passOver: [] });
    expect(remindersDue(0.24, [...ASKED, 40], new Set([50, 25]))).toEqual({ tell: null, passOver: [40] });
  });

  it('each is noticed exactly once while a deferral runs down, whenever somebody looks', () => {
    const percents = fc.uniqueArray(fc.integer({ min: 0, max: 95 }), { minLength: 1, maxLength: 6 });
    const looks = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 20 });
    fc.assert(
      fc.property(percents, looks, (asked, lefts) => {
        const noticed = new Map<number, number>();
        const told: number[] = [];
        for (const left of [...lefts.toSorted((one, other) => other - one), 0]) {
          const { tell, passOver } = remindersDue(left, asked, new Set(noticed.keys()));
          for (const share of [...passOver, ...(tell === null ? [] : [tell])])
            noticed.set(share, (noticed.get(share) ?? 0) + 1);
          if (tell !== null) told.push(tell);
        }
        expect([...noticed.keys()].toSorted()).toEqual(asked.toSorted());
        expect([...noticed.values()].every((times) => times === 1)).toBe(true);
        expect(told).toEqual(told.toSorted((one, other) => other - one));
        expect(told.at(-1)).toBe(Math.min(...asked));
      }),
    );
  });
});
