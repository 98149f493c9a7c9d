import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recountEnds, rectificationWindow, startOfDayHere, type StartOfDayIn } from './index.js';

const clockOf = (interval: string, base: string, recordedAt = '2026-10-29T10:00') =>
  rectificationWindow({ category: 'A', interval, recordedAt, base, tzdb: '2025c' });

/** Zone data in which every day begins so many minutes later. */
const shiftedBy =
  (minutes: number): StartOfDayIn =>
  (day, base) =>
    new Date(Date.parse(startOfDayHere(day, base)) + minutes * 60_000).toISOString().replace('.000Z', 'Z');

describe('a clock under other time-zone data', () => {
  it('is the same but for the version where the data says the same', () => {
    const zones = fc.constantFrom('UTC', 'Europe/Paris', 'Australia/Lord_Howe', 'America/Havana', 'Africa/Cairo');
    const intervals = fc.constantFrom('3 calendar-days', '72 hours', '4 flights', '2 calendar-days or 50 hours');
    const days = fc.integer({ min: 0, max: 4000 });
    fc.assert(
      fc.property(zones, intervals, days, (base, interval, day) => {
        const recordedAt = new Date(Date.UTC(2020, 0, 1 + day, 11, 30)).toISOString().slice(0, 16);
        const clock = clockOf(interval, base, recordedAt);
        expect(recountEnds(clock, '2026f')).toEqual({ ...clock, tzdb: '2026f' });
      }),
    );
  });

  it('keeps its days, and moves the instants that they begin and end at', () => {
    const clock = clockOf('3 calendar-days', 'America/Vancouver');
    const again = recountEnds(clock, '2026f', shiftedBy(-60));
    expect(again).toMatchObject({
      firstDay: clock.firstDay,
      lastDay: '2026-11-01',
      dayOfDiscovery: clock.dayOfDiscovery,
      endsAt: new Date(Date.parse(clock.endsAt ?? '') - 3_600_000).toISOString().replace('.000Z', 'Z'),
      tzdb: '2026f',
    });
    expect(again.explanation).toContain('Counted again with other time-zone data: ends ');
  });

  it('does not move hours on the clock or what is counted from use', () => {
    expect(recountEnds(clockOf('72 hours', 'Europe/Paris'), '2026f', shiftedBy(-60)).endsAt).toBe(
      '2026-11-01T09:00:00Z',
    );
    expect(recountEnds(clockOf('4 flights', 'Europe/Paris'), '2026f', shiftedBy(-60)).endsAt).toBe(null);
  });

  it('takes the end that counts anew where a day and hours lie close together', () => {
    const both = clockOf('3 calendar-days or 85 hours', 'UTC', '2026-10-26T10:00');
    expect(both.endsAt).toBe('2026-10-29T23:00:00Z');
    expect(recountEnds(both, '2026f', shiftedBy(-120)).endsAt).toBe('2026-10-29T22:00:00Z');
    const later = clockOf('3 calendar-days or 85 hours, whichever is later', 'UTC', '2026-10-26T10:00');
    expect(recountEnds(later, '2026f', shiftedBy(-120)).endsAt).toBe('2026-10-29T23:00:00Z');
  });
});
