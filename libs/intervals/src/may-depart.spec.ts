import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayDepart, rectificationWindow, type Category } from './index.js';

const clockOf = (interval: string | undefined, category: Category = 'A', base = 'UTC') =>
  rectificationWindow({
    category,
    recordedAt: '2026-01-26T10:00',
    base,
    tzdb: '2025c',
    ...(interval === undefined ? {} : { interval }),
  });

const leaves = (offBlockAt: string, onBlockAt?: string) => ({ offBlockAt, ...(onBlockAt ? { onBlockAt } : {}) });

describe('a flight at the end of a window', () => {
  const three = clockOf(undefined, 'B');

  it('may leave in the last second and not at the end itself', () => {
    expect(mayDepart(three, leaves('2026-01-29T23:59:59Z')).answer).toBe('holds');
    expect(mayDepart(three, leaves('2026-01-30T00:00:00Z')).answer).toBe('fails');
  });

  it('may leave on the day of discovery', () => {
    expect(mayDepart(three, leaves('2026-01-26T18:00Z')).answer).toBe('holds');
  });

  it('may land after it when only the departure counts, which is the default', () => {
    const late = leaves('2026-01-29T23:30Z', '2026-01-30T03:00Z');
    expect(mayDepart(three, late).answer).toBe('holds');
    expect(mayDepart(three, late, {}, { expiryInFlight: 'arrival-inside' }).answer).toBe('fails');
  });

  it('must be on blocks before the end where the arrival counts too', () => {
    const settings = { expiryInFlight: 'arrival-inside' } as const;
    expect(mayDepart(three, leaves('2026-01-29T20:00Z', '2026-01-29T23:59Z'), {}, settings).answer).toBe('holds');
    expect(mayDepart(three, leaves('2026-01-29T20:00Z', '2026-01-30T00:00Z'), {}, settings).answer).toBe('fails');
    expect(mayDepart(three, leaves('2026-01-29T20:00Z'), {}, settings).answer).toBe('unknown');
  });

  it('is asked in the base, and the sentence tells the times on its clocks', () => {
    const paris = clockOf(undefined, 'B', 'Europe/Paris');
    const answer = mayDepart(paris, leaves('2026-01-29T23:30Z'));
    expect(answer.answer).toBe('fails');
    expect(answer.because).toBe(
      'The interval ends 29 Jan 2026 23:59 local = 2026-01-29T22:59:59Z; off blocks 30 Jan 2026 00:30 local is after it.',
    );
  });

  it('never becomes possible again by leaving later', () => {
    const minute = fc.integer({ min: 0, max: 10_000 });
    fc.assert(
      fc.property(minute, minute, (one, other) => {
        const at = (minutes: number) => new Date(Date.UTC(2026, 0, 26, 10) + minutes * 60_000).toISOString();
        const [sooner, later] = [
          mayDepart(three, leaves(at(Math.min(one, other)))),
          mayDepart(three, leaves(at(Math.max(one, other)))),
        ];
        expect(sooner.answer === 'fails' && later.answer === 'holds').toBe(false);
      }),
    );
  });
});

describe('a limit that is counted from use', () => {
  const next = leaves('2026-01-28T10:00Z');

  it('may be reached and not passed', () => {
    expect(mayDepart(clockOf('4 flights'), next, { flights: 3 }).answer).toBe('holds');
    expect(mayDepart(clockOf('4 flights'), next, { flights: 4 }).answer).toBe('fails');
    expect(mayDepart(clockOf('4 cycles'), { ...next, cycles: 2 }, { cycles: 2 }).answer).toBe('holds');
    expect(mayDepart(clockOf('4 cycles'), { ...next, cycles: 2 }, { cycles: 3 }).answer).toBe('fails');
  });

  it('takes the planned minutes into account, to the minute', () => {
    const hours = clockOf('6 flight-hours');
    expect(mayDepart(hours, { ...next, flightMinutes: 162 }, { flightMinutes: 198 }).answer).toBe('holds');
    expect(mayDepart(hours, { ...next, flightMinutes: 163 }, { flightMinutes: 198 }).answer).toBe('fails');
    const atDeparture = { hoursCountedAt: 'departure' } as const;
    expect(mayDepart(hours, { ...next, flightMinutes: 163 }, { flightMinutes: 198 }, atDeparture).answer).toBe(
      'holds',
    );
    expect(mayDepart(hours, { ...next, flightMinutes: 1 }, { flightMinutes: 360 }, atDeparture).answer).toBe('fails');
  });

  it('is not known without its counter or the planned minutes, and unknown is never yes', () => {
    for (const interval of ['4 flights', '4 cycles', '4 flight-days', '4 flight-hours']) {
      expect(mayDepart(clockOf(interval), next).answer, interval).toBe('unknown');
    }
    const hours = clockOf('6 flight-hours');
    expect(mayDepart(hours, next, { flightMinutes: 10 }).answer).toBe('unknown');
    expect(mayDepart(hours, next, { flightMinutes: 360 }).answer).toBe('fails');
    expect(
      mayDepart(hours, { ...next, flightMinutes: 10 }, { flightMinutes: 10 }, { hourClock: 'block' }).answer,
    ).toBe('unknown');
  });

  it('lets several flights leave on the last flight-day, and none on the next', () => {
    const days = clockOf('2 flight-days', 'A', 'Europe/Paris');
    const used = { flightDays: 2, lastFlightDayOn: '2026-01-28' };
    expect(mayDepart(days, leaves('2026-01-28T22:59Z'), used).answer).toBe('holds');
    expect(mayDepart(days, leaves('2026-01-28T23:00Z'), used).answer).toBe('fails');
    expect(mayDepart(days, leaves('2026-01-28T12:00Z'), { flightDays: 2 }).answer).toBe('unknown');
    expect(mayDepart(days, leaves('2026-01-28T12:00Z'), { flightDays: 1 }).answer).toBe('holds');
    expect(
      mayDepart(days, leaves('2026-01-28T12:00Z'), { flightDays: 3, lastFlightDayOn: '2026-01-28' }).answer,
    ).toBe('fails');
  });

  it('refuses counters and plans that are no whole numbers', () => {
    expect(() => mayDepart(clockOf('4 flights'), next, { flights: 1.5 })).toThrow('used.flights "1.5"');
    expect(() => mayDepart(clockOf('4 flights'), next, { flights: -1 })).toThrow('used.flights "-1"');
    expect(() => mayDepart(clockOf('4 flight-hours'), { ...next, flightMinutes: Number.NaN })).toThrow(
      'flight.flightMinutes',
    );
    expect(() => mayDepart(clockOf('4 flights'), leaves('2026-01-28T10:00'))).toThrow('neither Z nor an offset');
  });
});

describe('the first of several limits', () => {
  const both = clockOf('8 flights or 72 hours');

  it('ends it, whichever that is', () => {
    expect(mayDepart(both, leaves('2026-01-28T10:00Z'), { flights: 7 }).answer).toBe('holds');
    expect(mayDepart(both, leaves('2026-01-28T10:00Z'), { flights: 8 }).answer).toBe('fails');
    expect(mayDepart(both, leaves('2026-01-29T10:00Z'), { flights: 0 }).answer).toBe('fails');
  });

  it('fails for sure when one limit fails, though the other is not known', () => {
    expect(mayDepart(both, leaves('2026-01-29T10:00Z')).answer).toBe('fails');
    expect(mayDepart(both, leaves('2026-01-28T10:00Z')).answer).toBe('unknown');
  });

  it('is as strict as its parts asked one by one', () => {
    const use = fc.record({
      flights: fc.option(fc.nat(6), { nil: undefined }),
      cycles: fc.option(fc.nat(6), { nil: undefined }),
    });
    fc.assert(
      fc.property(use, ({ flights, cycles }) => {
        const used = { ...(flights === undefined ? {} : { flights }), ...(cycles === undefined ? {} : { cycles }) };
        const flight = leaves('2026-01-28T10:00Z');
        const parts = ['3 flights', '4 cycles'].map((interval) => mayDepart(clockOf(interval), flight, used).answer);
        const whole = mayDepart(clockOf('3 flights or 4 cycles'), flight, used).answer;
        const expected = parts.includes('fails') ? 'fails' : parts.includes('unknown') ? 'unknown' : 'holds';
        expect(whole).toBe(expected);
      }),
    );
  });
});
