import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { readReceipt } from './receipt.js';
import { dayOf, dayOfMonth, writeDay, writeMinute } from './utc-minute.js';

/** 1600-01-01 to 2399-12-31: twice the 400 years after which the calendar begins anew. */
const days = fc.integer({ min: -135_140, max: 157_053 });

it('days and minutes read as another implementation of the calendar reads them', () => {
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 1439 }), (day, clock) => {
      const date = Temporal.PlainDate.from('1970-01-01').add({ days: day });
      expect([writeDay(day), dayOfMonth(day)]).toEqual([date.toString(), date.day]);
      expect(dayOf({ year: date.year, month: date.month, date: date.day })).toBe(day);
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

it('a receipt reads as another implementation of the calendar reads it, and is refused where that refuses', () => {
  const two = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((number) => String(number).padStart(2, '0'));
  const seconds = fc.constantFrom('', ':07', ':59', ':00.000', ':30.120', ':01.123456789');
  const zone = fc.constantFrom('Z', '+02:00', '-09:30');
  const parts = fc.tuple(
    fc.integer({ min: 1980, max: 2199 }),
    two(0, 13),
    two(0, 32),
    two(0, 24),
    two(0, 60),
    seconds,
    zone,
  );
  fc.assert(
    fc.property(parts, ([year, month, day, hour, minute, second, offset]) => {
      const text = `${year}-${month}-${day}T${hour}:${minute}${second}${offset}`;
      expect(readReceipt(text)).toEqual(byTemporal(text));
    }),
    { numRuns: 3000 },
  );
});

function byTemporal(text: string) {
  try {
    const instant = Temporal.Instant.from(text);
    const milliseconds = instant.epochMilliseconds;
    return { at: instant.toString(), minute: Math.floor(milliseconds / 60_000), milliseconds };
  } catch {
    return null;
  }
}
