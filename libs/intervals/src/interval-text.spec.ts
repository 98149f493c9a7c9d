import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { INTERVAL_UNITS, IntervalInputError, parseInterval, writeInterval } from './index.js';

const someLimits = fc
  .shuffledSubarray([...INTERVAL_UNITS], { minLength: 1 })
  .chain((units) =>
    fc.tuple(
      ...units.map((unit) => fc.record({ amount: fc.integer({ min: 1, max: 9999 }), unit: fc.constant(unit) })),
    ),
  );

describe('the interval text of a row', () => {
  it('reads back whatever it writes', () => {
    fc.assert(
      fc.property(someLimits, (limits) => {
        expect(parseInterval(writeInterval(limits))).toEqual(limits);
      }),
    );
  });

  it('reads one limit, and the first of several', () => {
    expect(parseInterval('3 flight-days')).toEqual([{ amount: 3, unit: 'flight-days' }]);
    expect(parseInterval('8 flights or 72 hours')).toEqual([
      { amount: 8, unit: 'flights' },
      { amount: 72, unit: 'hours' },
    ]);
    expect(parseInterval('1 flight')).toEqual([{ amount: 1, unit: 'flights' }]);
  });

  it.each([
    ['0 flights', 'cannot be read'],
    ['-1 flights', 'cannot be read'],
    ['6.5 flight-hours', 'cannot be read'],
    ['3,5 flights', 'cannot be read'],
    ['03 flights', 'cannot be read'],
    ['10000 flights', 'cannot be read'],
    ['3 flight', 'cannot be read'],
    ['3 days', 'cannot be read'],
    ['3 weeks', 'cannot be read'],
    ['3 Flights', 'cannot be read'],
    ['3  flights', 'cannot be read'],
    ['3flights', 'cannot be read'],
    ['three flights', 'cannot be read'],
    ['3 flights and 6 flight-hours', 'cannot be read'],
    ['3 flights or', 'cannot be read'],
    ['3 flights or 6 flight-hours ', 'cannot be read'],
    ['3 flights\n', 'cannot be read'],
    ['3 constructors', 'cannot be read'],
    ['', 'cannot be read'],
    ['3 flights or 5 flights', 'names flights twice'],
    ['3 flights or '.repeat(50), 'at most 200 characters'],
  ])('refuses %j', (text, reason) => {
    expect(() => parseInterval(text)).toThrow(IntervalInputError);
    expect(() => parseInterval(text)).toThrow(reason);
  });

  it('quotes a hostile text short and on one line', () => {
    expect(() => parseInterval(`<script>\n${'x'.repeat(150)}`)).toThrow(
      /^interval "<script>\\nx{51}\.\.\." cannot be read[^\n]*$/,
    );
  });
});
