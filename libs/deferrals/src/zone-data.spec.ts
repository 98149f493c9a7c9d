import { rectificationWindow, startOfDayHere, type StartOfDayIn } from '#intervals';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DefectLife } from './defect-life.js';
import { needZoneData, underZoneData, zoneDifferences } from './zone-data.js';

const clock = rectificationWindow({
  category: 'B',
  recordedAt: '2026-10-29T10:00',
  base: 'America/Vancouver',
  tzdb: '2025c',
});

/** Only what these rules read. */
const life = { limits: [{ clock, until: null, pair: false }], closed: null } as unknown as DefectLife;

const shiftedBy =
  (minutes: number): StartOfDayIn =>
  (day, base) =>
    new Date(Date.parse(startOfDayHere(day, base)) + minutes * 60_000).toISOString().replace('.000Z', 'Z');

const endOf = ({ limits }: DefectLife): number => Date.parse(limits[0]?.clock?.endsAt ?? '');

describe('newer time-zone data', () => {
  it('is told where it puts an end at another instant, and nowhere else', () => {
    expect(zoneDifferences(life, '2026f', shiftedBy(-60))).toMatchObject([
      {
        zone: 'America/Vancouver',
        tzdbBefore: '2025c',
        tzdbAfter: '2026f',
        endsBefore: clock.endsAt,
        confirmed: false,
      },
    ]);
    expect(zoneDifferences(life, '2026f', startOfDayHere)).toEqual([]);
    expect(zoneDifferences(life, '2025c', shiftedBy(-60))).toEqual([]);
    expect(zoneDifferences({ ...life, closed: {} as DefectLife['closed'] }, '2026f', shiftedBy(-60))).toEqual([]);
  });

  it('never gives time before somebody confirmed it, and counts once somebody did', () => {
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 180 }), fc.boolean(), (minutes, confirmed) => {
        const found = zoneDifferences(life, '2026f', shiftedBy(minutes));
        const after = underZoneData(
          life,
          found.map((one) => ({ ...one, confirmed })),
        );
        const newer = endOf(life) + minutes * 60_000;
        expect(endOf(after)).toBe(confirmed ? newer : Math.min(endOf(life), newer));
      }),
    );
  });

  it('leaves the days alone, and says by which data the end counts', () => {
    const after = underZoneData(life, zoneDifferences(life, '2026f', shiftedBy(-60)));
    expect(after.limits[0]?.clock).toMatchObject({ lastDay: '2026-11-01', tzdb: '2026f' });
    expect(after.limits[0]?.clock?.explanation).toContain('With time-zone data 2026f it ends before ');
  });

  it('goes from version to version', () => {
    const first = zoneDifferences(life, '2026a', shiftedBy(-60));
    const then = underZoneData(life, first);
    const second = zoneDifferences(then, '2026f', shiftedBy(-90));
    expect(endOf(underZoneData(life, [...first, ...second]))).toBe(endOf(life) - 90 * 60_000);
    const unsure = zoneDifferences(life, '2026a', shiftedBy(60));
    const both = [...unsure, ...zoneDifferences(life, '2026f', shiftedBy(30))];
    expect(endOf(underZoneData(life, both))).toBe(endOf(life));
    const confirmed = both.map((one) => ({ ...one, confirmed: true }));
    expect(endOf(underZoneData(life, confirmed))).toBe(endOf(life) + 30 * 60_000);
  });

  it('is of the deadline it was found for and of no later one', () => {
    const found = zoneDifferences(life, '2026f', shiftedBy(-60));
    const moved = {
      ...life,
      limits: [{ clock: { ...clock, endsAt: '2026-11-05T08:00:00Z' }, until: null, pair: false }],
    };
    expect(underZoneData(moved, found)).toEqual(moved);
  });
});

describe('older time-zone data than some deadline is stored with', () => {
  it('computes nothing', () => {
    expect(() => needZoneData({ tzdb: '2025c', newestTzdb: '2026a' })).toThrow('2025c');
    expect(() => needZoneData({ tzdb: '2026a', newestTzdb: '2026a' })).not.toThrow();
    expect(() => needZoneData({ tzdb: '2025c' })).not.toThrow();
  });
});
