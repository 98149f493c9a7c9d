import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IntervalInputError, rectificationWindow, type Category, type WindowInput } from './index.js';

const tzdb = '2025c';
const window = (given: Partial<WindowInput> & { category: 'B' | 'C' | 'D' }) =>
  rectificationWindow({ recordedAt: '2026-01-26T10:00', base: 'UTC', tzdb, ...given });

describe('the days of an interval', () => {
  it('leave out the day of discovery, at its first and at its last minute', () => {
    for (const time of ['00:00', '23:59']) {
      const { dayOfDiscovery, firstDay } = window({ category: 'B', recordedAt: `2026-01-26T${time}` });
      expect({ dayOfDiscovery, firstDay }).toEqual({ dayOfDiscovery: '2026-01-26', firstDay: '2026-01-27' });
    }
  });

  it('are 3, 10 and 120 for B, C and D', () => {
    expect([window({ category: 'B' }).days, window({ category: 'C' }).days, window({ category: 'D' }).days]).toEqual([
      3, 10, 120,
    ]);
  });

  it('end where the next day begins, not at 23:59', () => {
    expect(window({ category: 'B' })).toMatchObject({
      startsAt: '2026-01-27T00:00:00Z',
      endsAt: '2026-01-30T00:00:00Z',
      lengthMinutes: 3 * 24 * 60,
    });
  });

  it('run over a leap day, a month end and a new year', () => {
    expect(window({ category: 'B', recordedAt: '2028-02-27T10:00' }).lastDay).toBe('2028-03-01');
    expect(window({ category: 'B', recordedAt: '2026-02-27T10:00' }).lastDay).toBe('2026-03-02');
    expect(window({ category: 'C', recordedAt: '2026-12-28T10:00' }).lastDay).toBe('2027-01-07');
    expect(window({ category: 'D', recordedAt: '2027-12-31T10:00' }).lastDay).toBe('2028-04-29');
  });

  it('are counted in the base, not in the offset that the record is written with', () => {
    const recordedAt = '2026-01-26T23:30-05:00';
    expect(window({ category: 'B', recordedAt }).dayOfDiscovery).toBe('2026-01-27');
    expect(window({ category: 'B', recordedAt, base: 'America/New_York' }).dayOfDiscovery).toBe('2026-01-26');
    expect(window({ category: 'B', recordedAt, base: 'Asia/Tokyo' }).dayOfDiscovery).toBe('2026-01-27');
  });
});

describe('the record on a day when clocks change', () => {
  it('takes the earlier of a reading that came twice, and the day is the same for both', () => {
    const local = window({ category: 'B', recordedAt: '2026-10-25T02:20', base: 'Europe/Paris' });
    expect(local).toMatchObject({ recordedAt: '2026-10-25T00:20:00Z', dayOfDiscovery: '2026-10-25' });
    expect(local.explanation).toContain('came twice');
    const second = window({ category: 'B', recordedAt: '2026-10-25T02:20+01:00', base: 'Europe/Paris' });
    expect(second.endsAt).toBe(local.endsAt);
  });

  it('keeps the written day when an hour before midnight came twice', () => {
    const cairo = window({ category: 'B', recordedAt: '2026-10-29T23:30', base: 'Africa/Cairo' });
    expect(cairo).toMatchObject({
      dayOfDiscovery: '2026-10-29',
      lastDay: '2026-11-01',
      recordedAt: '2026-10-29T20:30:00Z',
    });
  });

  it.each([
    ['Europe/Paris', '2026-03-29T02:30', '2026-03-29'],
    ['Africa/Cairo', '2026-04-24T00:30', '2026-04-24'],
    ['Asia/Beirut', '2026-03-29T00:30', '2026-03-29'],
    ['America/Havana', '2026-03-08T00:30', '2026-03-08'],
    ['America/Nuuk', '2026-03-28T23:30', '2026-03-28'],
  ])('keeps the written day of a reading that never came: %s %s', (base, recordedAt, dayOfDiscovery) => {
    const clock = window({ category: 'B', recordedAt, base });
    expect(clock.dayOfDiscovery).toBe(dayOfDiscovery);
    expect(clock.explanation).toContain('did not exist (clocks went forward), the day as written counts');
    expect(window({ category: 'B', recordedAt: clock.recordedAt, base })).toMatchObject({ dayOfDiscovery });
  });

  it('refuses a reading on a day that the zone left out', () => {
    expect(() => window({ category: 'B', recordedAt: '2011-12-30T10:00', base: 'Pacific/Apia' })).toThrow(
      'recordedAt "2011-12-30T10:00" is on a day that did not exist in Pacific/Apia.',
    );
  });

  it('counts a left-out day inside the window, and says so', () => {
    const clock = window({ category: 'B', recordedAt: '2011-12-28T10:00', base: 'Pacific/Apia' });
    expect(clock).toMatchObject({ lastDay: '2011-12-31', lengthHours: 48 });
    expect(clock.explanation).toContain('30 Dec 2011 did not exist in Pacific/Apia and is counted all the same');
    expect(window({ category: 'D', recordedAt: '2026-03-01T10:00', base: 'Europe/Paris' }).explanation).not.toContain(
      'did not exist',
    );
  });

  it('ends a last day that the zone left out where the next one begins', () => {
    const clock = window({ category: 'B', recordedAt: '2011-12-27T10:00', base: 'Pacific/Apia' });
    expect(clock).toMatchObject({ lastDay: '2011-12-30', endsAt: '2011-12-30T10:00:00Z' });
  });

  it('gives the same window when computed again from its own instant', () => {
    const zones = fc.constantFrom(
      'Africa/Cairo',
      'America/Nuuk',
      'Australia/Lord_Howe',
      'America/Santiago',
      'Europe/Paris',
    );
    const local = fc.date({ min: new Date('2024-01-01'), max: new Date('2030-01-01'), noInvalidDate: true });
    fc.assert(
      fc.property(zones, local, (base, date) => {
        const first = window({ category: 'C', recordedAt: date.toISOString().slice(0, 16), base });
        const again = window({ category: 'C', recordedAt: first.recordedAt, base });
        expect({ ...again, explanation: '' }).toEqual({ ...first, explanation: '' });
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the interval of a list of its own', () => {
  it('wins when it is shorter', () => {
    expect(window({ category: 'C', interval: '5 calendar-days' })).toMatchObject({ lastDay: '2026-01-31', days: 5 });
    expect(window({ category: 'C', interval: '10 calendar-days' }).lastDay).toBe('2026-02-05');
  });

  it.each([
    ['B', '4 calendar-days', 'is longer than the 3 calendar days of category B'],
    ['C', '11 calendar-days', 'is longer than the 10 calendar days of category C'],
    ['D', '121 calendar-days', 'is longer than the 120 calendar days of category D'],
    ['C', '3 flight-days', 'does not fit category C, which counts calendar days only'],
    ['C', '3 calendar-days or 5 flights', 'does not fit category C'],
    ['A', undefined, 'says its interval in the row, and none is given'],
    ['E', undefined, 'is none of A, B, C and D'],
    ['constructor', undefined, 'is none of A, B, C and D'],
  ])('refuses category %s with %s', (category, interval, reason) => {
    const given = { category: category as Category, recordedAt: '2026-01-26T10:00', base: 'UTC', tzdb };
    expect(() => rectificationWindow(interval === undefined ? given : { ...given, interval })).toThrow(reason);
  });
});

describe('category A', () => {
  const a = (interval: string) =>
    rectificationWindow({ category: 'A', interval, recordedAt: '2026-01-26T10:00', base: 'Europe/Paris', tzdb });

  it('in calendar days is a window like the others', () => {
    expect(a('2 calendar-days')).toMatchObject({
      kind: 'calendar',
      lastDay: '2026-01-28',
      endsAt: '2026-01-28T23:00:00Z',
    });
  });

  it('in hours runs on the clock from the record', () => {
    expect(a('72 hours')).toMatchObject({
      kind: 'counted',
      lastDay: null,
      endsAt: '2026-01-29T09:00:00Z',
      lengthHours: 72,
    });
  });

  it('takes the earliest of several fixed ends', () => {
    expect(a('100 hours or 2 calendar-days').endsAt).toBe('2026-01-28T23:00:00Z');
    expect(a('3 calendar-days or 20 hours or 5 flights')).toMatchObject({
      endsAt: '2026-01-27T05:00:00Z',
      lastDay: null,
    });
  });

  it('in flights has no end of its own', () => {
    expect(a('4 flights')).toMatchObject({ kind: 'counted', endsAt: null, lastDay: null, lengthHours: null });
  });
});

describe('input that cannot be', () => {
  it.each([
    '2026-01-26',
    '26 Jan 2026 10:00',
    '2026-02-30T10:00Z',
    '2026-02-30T10:00',
    '2026-13-01T10:00',
    '2026-01-26T24:00',
    '2026-01-26T10:60',
    '2026-01-26T10:00:60',
    '2026-01-26T10:00+15:00',
    '2026-01-26T10:00+01',
    '2026-01-26T10:00-12:30',
    '2026-01-26T10:00+01:60',
    '2026-01-26T10:00Z[Europe/Paris]',
    '+002026-01-26T10:00Z',
    '0206-01-26T10:00Z',
    '2200-01-01T10:00Z',
    ' 2026-01-26T10:00Z',
    '',
  ])('is refused as the time of the record: %j', (recordedAt) => {
    expect(() => window({ category: 'B', recordedAt })).toThrow(IntervalInputError);
    expect(() => window({ category: 'B', recordedAt })).toThrow(/^recordedAt "/);
  });

  it.each([
    '+01:00',
    'Mars/Base',
    '',
    'UTC+1',
    'Z',
    'Europe/Paris\n',
    '../../etc/passwd',
    '__proto__',
    'x'.repeat(5000),
  ])('is refused as a base: %j', (base) => {
    expect(() => window({ category: 'B', base })).toThrow(IntervalInputError);
    expect(() => window({ category: 'B', base })).toThrow(/^base "/);
  });

  it('is refused as a version of zone data or a preset', () => {
    expect(() => window({ category: 'B', tzdb: '' })).toThrow(/^tzdb/);
    expect(() => window({ category: 'B', preset: 'toString' as 'easa' })).toThrow(
      /^preset "toString" is none of easa, faa/,
    );
  });

  it('writes the base in its own spelling', () => {
    expect(window({ category: 'B', base: 'europe/paris' }).base).toBe('Europe/Paris');
  });
});
