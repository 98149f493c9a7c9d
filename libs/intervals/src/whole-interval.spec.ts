import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { INTERVAL_UNITS, IntervalInputError, intervalOf, readInterval, writeWholeInterval } from './index.js';

const someLimits = (minLength: number) =>
  fc
    .shuffledSubarray([...INTERVAL_UNITS, 'designated-departures', 'base-opportunities'] as const, { minLength })
    .chain((units) =>
      fc.tuple(
        ...units.map((unit) =>
          fc.record({
            amount:
              unit.endsWith('departures') || unit.endsWith('opportunities')
                ? fc.constant(1)
                : fc.integer({ min: 1, max: 9999 }),
            unit: fc.constant(unit),
          }),
        ),
      ),
    );

const someInterval = fc.record({
  limits: someLimits(2).filter((limits) => limits.some(({ unit }) => unit === 'flight-hours')),
  joint: fc.constantFrom('first-of' as const, 'last-of' as const),
  within: fc.uniqueArray(
    fc.record({
      until: fc.constantFrom('M1', 'M2', 'look at the seal'),
      limits: someLimits(1).map((all) => all.slice(0, 1)),
    }),
    { maxLength: 2, selector: ({ until }) => until },
  ),
  from: fc.constantFrom(null, 'record' as const, 'deferral' as const, 'next-flight' as const),
  timeLimited: fc.boolean(),
});

describe('the whole interval of a row', () => {
  it('reads back whatever it writes', () => {
    fc.assert(
      fc.property(someInterval, (interval) => {
        const text = writeWholeInterval(interval);
        fc.pre(text.length <= 200);
        expect(readInterval(text)).toEqual(interval);
      }),
    );
  });

  it('reads what a row adds after its limits', () => {
    expect(readInterval('3 flight-days, M1 within 1 flight-day')).toMatchObject({
      limits: [{ amount: 3, unit: 'flight-days' }],
      joint: 'first-of',
      within: [{ until: 'M1', limits: [{ amount: 1, unit: 'flight-days' }] }],
    });
    expect(readInterval('5 flights or 48 hours, whichever is later').joint).toBe('last-of');
    expect(readInterval('125 flight-hours, time-limited dispatch').timeLimited).toBe(true);
    expect(readInterval('4 cycles, from the next flight').from).toBe('next-flight');
    expect(readInterval('3 flight-days or next departure from a designated station').limits).toEqual([
      { amount: 3, unit: 'flight-days' },
      { amount: 1, unit: 'designated-departures' },
    ]);
    expect(readInterval('first opportunity at a base').limits).toEqual([{ amount: 1, unit: 'base-opportunities' }]);
  });

  it.each([
    ['5 flights, whichever is later', 'names only one'],
    ['5 flights or 2 cycles, whichever is later, whichever is later', 'beside another of its kind'],
    ['5 flights, whichever is best', 'cannot be read from ", whichever is best" on'],
    ['5 flights or 2 cycles, whichever is first', 'cannot be read from'],
    ['3 flight-days, M1 within', 'cannot be read from'],
    ['3 flight-days, M1 within 0 flights', 'cannot be read'],
    ['3 flight-days, M1 within 1 flight, M1 within 2 flights', 'beside another of its kind'],
    ['4 cycles, from the record, from the deferral', 'beside another of its kind'],
    ['4 calendar-days, from the deferral', 'calendar days count from the day of discovery'],
    ['4 flights, time-limited dispatch', 'names no flight-hours or engine-hours'],
    ['2 next departure from a designated station', 'cannot be read'],
    ['next departure from a station', 'cannot be read'],
    ['4 flights,from the record', 'cannot be read'],
    [`4 flights${', from the record'.repeat(20)}`, 'at most 200 characters'],
  ])('refuses %j', (text, reason) => {
    expect(() => readInterval(text)).toThrow(IntervalInputError);
    expect(() => readInterval(text)).toThrow(reason);
  });

  it.each(['3 calendar-days, M1 within 1 flight', '2 flight-days', 'first opportunity at a base'])(
    'of category B or C is days and nothing else: %j',
    (text) => {
      expect(() => intervalOf('C', text)).toThrow('counts calendar days only');
    },
  );
});
