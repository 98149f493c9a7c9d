import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { readInstant, readMilliseconds, writeInstant } from './instant.js';

const two = (value: number): string => String(value).padStart(2, '0');
const offset = fc.oneof(
  fc.constant('Z'),
  fc
    .record({ sign: fc.constantFrom('+', '-'), hours: fc.integer({ min: 0, max: 11 }), minutes: fc.nat(59) })
    .map(({ sign, hours, minutes }) => `${sign}${two(hours)}:${two(minutes)}`),
);
const seconds = fc.oneof(
  fc.constant(''),
  fc.nat(59).map((second) => `:${two(second)}`),
  fc.tuple(fc.nat(59), fc.stringMatching(/^\d{1,9}$/)).map(([second, fraction]) => `:${two(second)}.${fraction}`),
);
/** Days and hours that are not there among them: 30 February, the 31st of June, 24 o'clock, minute 60. */
const written = fc
  .record({
    year: fc.integer({ min: 1980, max: 2199 }),
    month: fc.integer({ min: 0, max: 13 }),
    day: fc.integer({ min: 0, max: 32 }),
    hour: fc.nat(25),
    minute: fc.nat(61),
    seconds,
    offset,
  })
  .map(
    (one) =>
      `${one.year}-${two(one.month)}-${two(one.day)}T${two(one.hour)}:${two(one.minute)}${one.seconds}${one.offset}`,
  );

function by<T>(read: () => T): T | 'refused' {
  try {
    return read();
  } catch {
    return 'refused';
  }
}

describe('an instant', () => {
  it('is the one that a date library reads, to the nanosecond, and what it refuses is refused', () => {
    fc.assert(
      fc.property(written, (text) => {
        const expected = by(() => Temporal.Instant.from(text));
        const read = by(() => readInstant('at', text));
        const milliseconds = by(() => readMilliseconds('at', text));
        const whole = (one: typeof read) => (one === 'refused' ? one : one.epochNanoseconds);
        expect([text, whole(read)]).toEqual([text, whole(expected)]);
        expect([text, milliseconds]).toEqual([text, expected === 'refused' ? expected : expected.epochMilliseconds]);
      }),
      { numRuns: 5000 },
    );
  });

  it('of every day from 1980 to 2199 follows the one before by a day', () => {
    let day = Temporal.PlainDate.from('1980-01-01');
    const misread: string[] = [];
    for (let at = 315_532_800_000; day.year < 2200; at += 86_400_000) {
      if (readMilliseconds('at', `${day.toString()}T00:00Z`) !== at) misread.push(day.toString());
      day = day.add({ days: 1 });
    }
    expect(misread).toEqual([]);
  });

  it('is written in UTC as it was read', () => {
    expect(writeInstant(readInstant('at', '2026-01-26T10:00:00.000-05:00'))).toBe('2026-01-26T15:00:00Z');
    expect(() => readMilliseconds('at', '2026-01-26T10:00')).toThrow('neither Z nor an offset');
    expect(() => readMilliseconds('at', '2026-02-29T10:00Z')).toThrow('does not exist');
  });
});
