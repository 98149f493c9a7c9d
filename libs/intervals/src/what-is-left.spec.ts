import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayDepart, rectificationWindow, whatIsLeft } from './index.js';

const clockOf = (interval: string, base = 'UTC') =>
  rectificationWindow({ category: 'A', interval, recordedAt: '2026-01-26T10:00', base, tzdb: '2025c' });

describe('what is left', () => {
  it('of calendar days counts a day until it is over', () => {
    const three = clockOf('3 calendar-days');
    const left = (at: string) => whatIsLeft(three, at).limits[0]?.left;
    expect(['2026-01-26T10:00Z', '2026-01-27T23:59Z', '2026-01-28T00:00Z', '2026-01-29T23:59Z'].map(left)).toEqual([
      3, 3, 2, 1,
    ]);
    expect(whatIsLeft(three, '2026-01-30T00:00Z')).toMatchObject({
      isOver: true,
      limits: [{ used: 3, left: 0, minutesLeft: 0 }],
    });
  });

  it('is told in a sentence', () => {
    expect(whatIsLeft(clockOf('3 calendar-days'), '2026-01-28T09:00Z').sentence).toBe(
      '2 of 3 calendar days left, until 29 Jan 2026 23:59 UTC (39 h).',
    );
    const both = whatIsLeft(clockOf('3 flights or 6 flight-hours'), '2026-01-28T09:00Z', {
      flights: 2,
      flightMinutes: 198,
    });
    expect(both.sentence).toBe('1 of 3 flights left; 2 h 42 min of 6 h of flight left.');
  });

  it('of hours runs from the record on the clock', () => {
    expect(whatIsLeft(clockOf('72 hours'), '2026-01-28T10:30Z')).toMatchObject({
      endsAt: '2026-01-29T10:00:00Z',
      isOver: false,
      limits: [{ countedIn: 'minutes', used: 2910, left: 1410 }],
    });
    expect(whatIsLeft(clockOf('72 hours'), '2026-01-29T10:00Z').isOver).toBe(true);
  });

  it('of flights is over with the last one, of flight-days with the day of the last one', () => {
    expect(whatIsLeft(clockOf('4 flights'), '2026-01-28T10:00Z', { flights: 4 })).toMatchObject({
      isOver: true,
      endsAt: null,
    });
    const days = clockOf('2 flight-days', 'Europe/Paris');
    const used = { flightDays: 2, lastFlightDayOn: '2026-01-28' };
    expect(whatIsLeft(days, '2026-01-28T12:00Z', used)).toMatchObject({
      isOver: false,
      lastDay: '2026-01-28',
      endsAt: '2026-01-28T23:00:00Z',
    });
    expect(whatIsLeft(days, '2026-01-28T23:00Z', used).isOver).toBe(true);
    expect(whatIsLeft(days, '2026-01-28T12:00Z', { flightDays: 2 }).isOver).toBe(null);
    expect(whatIsLeft(days, '2026-01-28T12:00Z', { flightDays: 3, lastFlightDayOn: '2026-01-28' }).isOver).toBe(true);
  });

  it('is not known without the counter, and over for sure when another limit is', () => {
    const both = clockOf('8 flights or 72 hours');
    expect(whatIsLeft(both, '2026-01-28T10:00Z').isOver).toBe(null);
    expect(whatIsLeft(both, '2026-01-28T10:00Z').sentence).toContain('how many of 8 flights are left is not known');
    expect(whatIsLeft(both, '2026-01-29T10:00Z').isOver).toBe(true);
  });

  it('takes the earliest known end of several', () => {
    const left = whatIsLeft(clockOf('100 hours or 2 calendar-days or 4 flights'), '2026-01-27T10:00Z', {
      flights: 0,
    });
    expect(left).toMatchObject({ endsAt: '2026-01-29T00:00:00Z', lastDay: '2026-01-28' });
  });

  it('counts block minutes where a flight hour means that', () => {
    const left = whatIsLeft(
      clockOf('6 flight-hours'),
      '2026-01-27T10:00Z',
      { blockMinutes: 100, flightMinutes: 1 },
      { hourClock: 'block' },
    );
    expect(left.limits[0]).toMatchObject({ used: 100, left: 260 });
  });

  it('is over exactly when no flight may leave at that instant, for limits with a fixed end', () => {
    const minute = fc.integer({ min: 0, max: 8000 });
    const intervals = fc.constantFrom('3 calendar-days', '72 hours', '50 hours or 4 calendar-days');
    fc.assert(
      fc.property(intervals, minute, (interval, minutes) => {
        const at = new Date(Date.UTC(2026, 0, 26, 10) + minutes * 60_000).toISOString();
        const clock = clockOf(interval);
        expect(whatIsLeft(clock, at).isOver).toBe(mayDepart(clock, { offBlockAt: at }).answer === 'fails');
      }),
    );
  });

  it('is refused for an instant before the record, and for a time that is none', () => {
    expect(() => whatIsLeft(clockOf('4 flights'), '2026-01-26T09:59Z')).toThrow('is before the record of the defect');
    expect(() => whatIsLeft(clockOf('4 flights'), '2026-01-26T11:00')).toThrow('neither Z nor an offset');
  });
});
