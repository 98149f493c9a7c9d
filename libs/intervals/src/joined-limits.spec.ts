/** Several limits: the later of them, and shorter ones inside a longer one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extend, mayDepart, rectificationWindow, whatIsLeft } from './index.js';

const clockOf = (interval: string, base = 'UTC') =>
  rectificationWindow({ category: 'A', interval, recordedAt: '2026-01-26T10:00Z', base, tzdb: '2025c' });

const counter = fc.option(fc.nat(6), { nil: undefined });
const someUse = fc.record({ flights: counter, cycles: counter }).map(({ flights, cycles }) => ({
  ...(flights === undefined ? {} : { flights }),
  ...(cycles === undefined ? {} : { cycles }),
}));
const flight = { offBlockAt: '2026-01-28T10:00Z' };

describe('the later of several limits', () => {
  it('lets a flight go as long as one of its parts, asked alone, lets it go', () => {
    fc.assert(
      fc.property(someUse, (used) => {
        const parts = ['3 flights', '4 cycles'].map((interval) => mayDepart(clockOf(interval), flight, used).answer);
        const expected = parts.includes('holds') ? 'holds' : parts.includes('unknown') ? 'unknown' : 'fails';
        expect(mayDepart(clockOf('3 flights or 4 cycles, whichever is later'), flight, used).answer).toBe(expected);
      }),
    );
  });

  it('is over only when every part is', () => {
    fc.assert(
      fc.property(someUse, (used) => {
        const parts = ['3 flights', '4 cycles'].map(
          (one) => whatIsLeft(clockOf(one), flight.offBlockAt, used).isOver,
        );
        const expected = parts.includes(false) ? false : parts.includes(null) ? null : true;
        const whole = whatIsLeft(clockOf('3 flights or 4 cycles, whichever is later'), flight.offBlockAt, used);
        expect(whole.isOver).toBe(expected);
        expect(whole.sentence).toContain('the later counts');
      }),
    );
  });

  it('ends with the last of its fixed ends, and has no end while one part has none', () => {
    expect(clockOf('72 hours or 2 calendar-days, whichever is later').endsAt).toBe('2026-01-29T10:00:00Z');
    expect(clockOf('72 hours or 2 calendar-days').endsAt).toBe('2026-01-29T00:00:00Z');
    expect(clockOf('72 hours or 2 flights, whichever is later').endsAt).toBe(null);
    expect(clockOf('72 hours or 2 flights, whichever is later').explanation).toContain('whichever is reached last');
  });
});

describe('a shorter limit inside a longer one', () => {
  const clock = clockOf('3 flight-days, M1 within 1 flight-day');
  const onDay = (day: number) => ({ offBlockAt: `2026-01-${day}T08:00Z` });
  const used = { flightDays: 1, lastFlightDayOn: '2026-01-27' };

  it('ends it until what it waits for is done', () => {
    expect(mayDepart(clock, onDay(27), { flightDays: 0, lastFlightDayOn: null }).answer).toBe('holds');
    expect(mayDepart(clock, onDay(27), used).answer).toBe('holds');
    const second = mayDepart(clock, onDay(28), used);
    expect(second.answer).toBe('fails');
    expect(second.because).toBe('M1 is not done: 28 Jan 2026 would be flight-day 2; the limit is 1.');
    expect(whatIsLeft(clock, '2026-01-28T00:00Z', used).isOver).toBe(true);
  });

  it('is no more once that is done, and the longer one still counts from the start', () => {
    expect(mayDepart(clock, onDay(28), { ...used, done: ['M1'] }).answer).toBe('holds');
    expect(whatIsLeft(clock, '2026-01-28T00:00Z', { ...used, done: ['M1'] }).isOver).toBe(false);
    const three = { flightDays: 3, lastFlightDayOn: '2026-01-29', done: ['M1'] };
    expect(mayDepart(clock, onDay(30), three).answer).toBe('fails');
  });

  it('never makes a flight possible that the longer one alone refuses', () => {
    fc.assert(
      fc.property(someUse, fc.boolean(), (use, done) => {
        const plain = mayDepart(clockOf('3 flights'), flight, use).answer;
        const withInside = mayDepart(clockOf('3 flights, M1 within 2 cycles'), flight, {
          ...use,
          ...(done ? { done: ['M1'] } : {}),
        }).answer;
        if (plain !== 'holds') expect(withInside).not.toBe('holds');
        if (done) expect(withInside).toBe(plain);
      }),
    );
  });
});

describe('time-limited dispatch', () => {
  const hours = clockOf('125 flight-hours, time-limited dispatch');

  it('counts hours at arrival, though the operator counts others at departure', () => {
    const departing = { hoursCountedAt: 'departure' } as const;
    const ask = (flightMinutes: number) =>
      mayDepart(hours, { ...flight, flightMinutes }, { flightMinutes: 7116 }, departing).answer;
    expect([ask(144), ask(390)]).toEqual(['holds', 'fails']);
    const plain = mayDepart(
      clockOf('125 flight-hours'),
      { ...flight, flightMinutes: 390 },
      { flightMinutes: 7116 },
      departing,
    );
    expect(plain.answer).toBe('holds');
  });

  it('is never extended by the operator, and says so', () => {
    for (const preset of ['easa', 'faa', 'tcca-2006', 'tcca-2022'] as const) {
      const asked = {
        preset,
        window: hours,
        grantedAt: '2026-01-27T10:00Z',
        alreadyExtended: 0,
        procedureHeld: true,
      };
      expect(extend({ ...asked, authorityAgreement: 'letter 7' })).toMatchObject({ refused: 'category-a' });
    }
    expect(hours.explanation).toContain('never extended by the operator');
  });
});

describe('the limit itself', () => {
  const six = clockOf('6 flight-hours');
  const total = (minutes: number, equalityAtLimit: 'inside' | 'outside') =>
    mayDepart(six, { ...flight, flightMinutes: minutes }, { flightMinutes: 300 }, { equalityAtLimit }).answer;

  it('is inside or outside as the operator settled, and nothing else moves with it', () => {
    expect([59, 60, 61].map((minutes) => total(minutes, 'inside'))).toEqual(['holds', 'holds', 'fails']);
    expect([59, 60, 61].map((minutes) => total(minutes, 'outside'))).toEqual(['holds', 'fails', 'fails']);
  });
});
