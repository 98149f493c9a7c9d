import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, mayDepart, rectificationWindow, whatIsLeft, type Leg, type WindowInput } from './index.js';

const clockOf = (interval: string, more: Partial<WindowInput> = {}) =>
  rectificationWindow({
    category: 'A',
    interval,
    recordedAt: '2026-06-01T06:00Z',
    base: 'UTC',
    tzdb: '2025c',
    ...more,
  });

const leg = (offBlockAt: string, minutes = 60): Leg => ({
  offBlockAt,
  landedAt: new Date(Date.parse(offBlockAt) + (minutes + 5) * 60_000).toISOString(),
  blockMinutes: minutes + 10,
  flightMinutes: minutes,
  cycles: 1,
  landings: 1,
});

describe('from when an interval counts', () => {
  it('is the deferral under the policies that say so, where it is known, and the record where it is not', () => {
    const deferredAt = '2026-06-01T09:00Z';
    for (const preset of ['easa', 'faa'] as const) {
      expect(clockOf('72 hours', { preset, deferredAt })).toMatchObject({
        startsAt: '2026-06-01T09:00:00Z',
        endsAt: '2026-06-04T09:00:00Z',
        countsFrom: 'deferral',
      });
      expect(clockOf('72 hours', { preset }).endsAt).toBe('2026-06-04T06:00:00Z');
    }
    expect(clockOf('4 flights', { preset: 'tcca-2022', deferredAt })).toMatchObject({ countsFrom: 'next-flight' });
  });

  it('is what the row says before what the policy says', () => {
    const deferredAt = '2026-06-01T09:00Z';
    expect(clockOf('72 hours, from the record', { deferredAt }).endsAt).toBe('2026-06-04T06:00:00Z');
    expect(clockOf('4 cycles, from the next flight', { preset: 'faa' })).toMatchObject({ countsFrom: 'next-flight' });
    expect(clockOf('4 cycles, from the deferral', { preset: 'tcca-2022', deferredAt })).toMatchObject({
      countsFrom: 'deferral',
      startsAt: '2026-06-01T09:00:00Z',
    });
  });

  it('never moves the day of discovery, nor days counted from it', () => {
    const clock = clockOf('2 calendar-days or 9 flights', { deferredAt: '2026-06-02T01:00Z' });
    expect(clock).toMatchObject({ dayOfDiscovery: '2026-06-01', lastDay: '2026-06-03' });
  });

  it('is a stated instant where a document states one, whatever row and policy say', () => {
    const clock = clockOf('72 hours or 4 flights, from the next flight', {
      stated: { at: '2026-05-31T12:00Z' },
      preset: 'faa',
    });
    expect(clock).toMatchObject({
      startsAt: '2026-05-31T12:00:00Z',
      endsAt: '2026-06-03T12:00:00Z',
      countsFrom: 'stated',
    });
    expect(countUsed(clock, [leg('2026-05-31T11:00Z'), leg('2026-05-31T14:00Z')]).flights).toBe(1);
    expect(clock.explanation).toContain('counted from the stated instant, 31 May 2026 12:00 UTC');
  });

  it('excludes the day of a stated instant from calendar days', () => {
    const clock = clockOf('2 calendar-days', { stated: { at: '2026-05-30T12:00Z' } });
    expect(clock).toMatchObject({ kind: 'counted', firstDay: '2026-05-31', lastDay: '2026-06-01' });
    expect(mayDepart(clock, { offBlockAt: '2026-06-02T00:00Z' }).answer).toBe('fails');
    expect(whatIsLeft(clock, '2026-06-01T08:00Z').limits[0]).toMatchObject({ left: 1, lastDay: '2026-06-01' });
  });

  it('is a stated counter: what it had used by the reading counts with the legs after it', () => {
    const stated = { counter: 74_000 * 60, reading: 74_020 * 60 + 30, readAt: '2026-06-01T08:00Z' };
    const clock = clockOf('50 flight-hours', { stated });
    const used = countUsed(clock, [leg('2026-06-01T06:00Z'), leg('2026-06-01T09:00Z')]);
    expect(used).toMatchObject({ flightMinutes: 1230 + 60 });
    expect(clock.explanation).toContain('so 20 h 30 min used by then');
    expect(
      clockOf('5 engine-cycles', { stated: { counter: 10, reading: 12, readAt: '2026-06-01T08:00Z' } }),
    ).toMatchObject({
      usedBefore: 2,
    });
  });

  it('counts a stated counter as if its legs had been in the list', () => {
    const minutes = fc.array(fc.integer({ min: 20, max: 300 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(minutes, fc.nat(7), (flown, cut) => {
        const legs = flown.map((one, index) => leg(new Date(Date.UTC(2026, 5, 1, 6 + index * 8)).toISOString(), one));
        const before = Math.min(cut, legs.length);
        const reading = flown.slice(0, before).reduce((total, one) => total + one, 1000);
        const readAt = new Date(Date.UTC(2026, 5, 1, 6 + before * 8) - 1).toISOString();
        const whole = countUsed(clockOf('99 flight-hours'), legs);
        const stated = countUsed(clockOf('99 flight-hours', { stated: { counter: 1000, reading, readAt } }), legs);
        expect(stated.flightMinutes).toBe(whole.flightMinutes);
      }),
    );
  });

  it('refuses a start that cannot be', () => {
    expect(() => clockOf('4 flights', { deferredAt: '2026-06-01T05:59Z' })).toThrow(
      'is before the record of the defect',
    );
    expect(() => clockOf('4 flights', { deferredAt: '2026-06-01T07:00' })).toThrow('neither Z nor an offset');
    const readAt = '2026-06-01T08:00Z';
    expect(() => clockOf('4 flights or 3 cycles', { stated: { counter: 1, reading: 2, readAt } })).toThrow(
      'not of one counter alone',
    );
    expect(() => clockOf('72 hours', { stated: { counter: 1, reading: 2, readAt } })).toThrow('not of one counter');
    expect(() => clockOf('4 flights', { stated: { counter: 3, reading: 2, readAt } })).toThrow(
      'is before the stated start',
    );
    expect(() => clockOf('4 flights', { stated: { counter: 1.5, reading: 2, readAt } })).toThrow('start.counter');
    expect(() => clockOf('4 flights', { stated: { at: 'soon' } })).toThrow(/^start "soon"/);
  });
});
