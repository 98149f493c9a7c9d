/** Thousands of messages as they come in, held against a count that shares no code with the reader. Invented. */
import { describe, expect, it } from 'vitest';
import { yearOfMovements } from './year-of-movements.mjs';
import { CountingLegs, readMovements, readMovementsInParts, type MovementsPart } from '#movements';

const SETTINGS = { base: 'UTC', rampReturnMakesFlightDay: false };
const GARBAGE = /PLS ADV|\/99\.|QB\/|AD2561|garbled/;

describe.each([1, 2, 3])('a fortnight of twenty aircraft (%i)', (seed) => {
  const { transmissions, counters, garbage, corrected } = yearOfMovements({ aircraft: 20, days: 14, seed });

  it('adds up, all garbage is in the tray and nothing else', () => {
    expect([transmissions.length > 1000, garbage > 2, corrected > 2]).toEqual([true, true, true]);
    const { counters: read, tray } = readMovements(transmissions);
    expect(read).toEqual(counters);
    const unread = tray.map(({ reason, text }) => `${reason}: ${text}`);
    expect(unread.filter((one) => !GARBAGE.test(one))).toEqual([]);
    expect(tray).toHaveLength(garbage);
  });

  it('read in parts gives the same as read at once, and holds no more than a few days', () => {
    const whole = readMovements(transmissions);
    const parts = [...readMovementsInParts(transmissions)];
    const all = <K extends keyof MovementsPart>(key: K) => parts.flatMap((part) => part[key] as unknown[]);
    expect(parts.length).toBeGreaterThan(10);
    expect(Math.max(...parts.map(({ messages }) => messages.length))).toBeLessThan(transmissions.length / 4);
    for (const key of ['messages', 'events', 'legs', 'tray'] as const) {
      expect(inOrder(all(key)), key).toEqual(inOrder(whole[key]));
    }
    const counting = new CountingLegs(SETTINGS);
    for (const { legs } of parts) counting.add(legs);
    expect(counting.counters()).toEqual(whole.counters);
  });
});

it('a receipt that is days behind is refused in parts, for its flight was told already', () => {
  const { transmissions } = yearOfMovements({ aircraft: 1, days: 8 });
  const late = [...transmissions, transmissions[0]!];
  expect(() => [...readMovementsInParts(late)]).toThrow(/behind one before it/);
});

function inOrder(list: readonly unknown[]): string[] {
  return list.map((one) => JSON.stringify(one)).toSorted();
}
