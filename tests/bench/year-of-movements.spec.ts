/** Thousands of messages as they come in, held against a count that shares no code with the reader. Invented. */
import { expect, it } from 'vitest';
import { yearOfMovements } from './year-of-movements.mjs';
import { readMovements } from '#movements';

it.each([1, 2, 3])(
  'a fortnight of twenty aircraft adds up, all garbage is in the tray and nothing else (%i)',
  (seed) => {
    const { transmissions, counters, garbage, corrected } = yearOfMovements({ aircraft: 20, days: 14, seed });
    expect([transmissions.length > 1000, garbage > 2, corrected > 2]).toEqual([true, true, true]);
    const { counters: read, tray } = readMovements(transmissions);
    expect(read).toEqual(counters);
    const unread = tray.map(({ reason, text }) => `${reason}: ${text}`);
    expect(unread.filter((one) => !/PLS ADV|\/99\.|QB\/|AD2561|garbled/.test(one))).toEqual([]);
    expect(tray).toHaveLength(garbage);
  },
);
