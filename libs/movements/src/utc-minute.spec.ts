import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { dayOfMonth, writeDay, writeMinute } from './utc-minute.js';

/** 1600-01-01 to 2399-12-31: twice the 400 years after which the calendar begins anew. */
const days = fc.integer({ min: -135_140, max: 157_053 });

it('days and minutes read as another implementation of the calendar reads them', () => {
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 1439 }), (day, clock) => {
      const date = Temporal.PlainDate.from('1970-01-01').add({ days: day });
      expect([writeDay(day), dayOfMonth(day)]).toEqual([date.toString(), date.day]);
      const minute = day * 1440 + clock;
      expect(writeMinute(minute)).toBe(Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toString());
    }),
    { numRuns: 3000 },
  );
});

it('leap days are there in 2000 and 2024, and not in 1900 and 2100', () => {
  expect([11_016, 19_782, -25_508, 47_541].map(writeDay)).toEqual([
    '2000-02-29',
    '2024-02-29',
    '1900-03-01',
    '2100-03-01',
  ]);
});
