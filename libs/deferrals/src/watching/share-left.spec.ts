/** Windows are those of the published intervals (MMEL Policy Letter 25, SEEN); the shares follow by division (DERIVED). */
import { describe, expect, it } from 'vitest';
import type { Used } from '#intervals';
import type { DefectLife } from '../defect-life.js';
import { deferredAs } from '../invented.fixture.js';
import { standing } from '../standing.js';
import { shareLeft } from './share-left.js';

const RECORDED = '2026-01-26T10:00Z';
const left = (life: DefectLife, at: string, used: Used = {}) => shareLeft(life, standing(life, at, used));

describe('what is left as a share', () => {
  it('runs by the minute from the first day to the end of the last one', () => {
    const life = deferredAs({ category: 'B' }, RECORDED);
    expect(left(life, '2026-01-26T20:00Z')).toBe(1);
    expect(left(life, '2026-01-27T00:00Z')).toBe(1);
    expect(left(life, '2026-01-28T12:00Z')).toBe(0.5);
    expect(left(life, '2026-01-29T18:00Z')).toBeCloseTo(1 / 12, 12);
    expect(left(life, '2026-01-30T00:00Z')).toBe(0);
    expect(left(life, '2026-02-11T00:00Z')).toBe(0);
  });

  it('of flights, hours and cycles is what is left of their number', () => {
    const flights = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    expect([0, 1, 3, 4, 9].map((flown) => left(flights, RECORDED, { flights: flown }))).toEqual([
      1, 0.75, 0.25, 0, 0,
    ]);
    const hours = deferredAs({ category: 'A', interval: '100 flight-hours' }, RECORDED);
    expect(left(hours, RECORDED, { flightMinutes: 4500 })).toBe(0.25);
  });

  it('of the first of several is that of the one that has least left', () => {
    const life = deferredAs({ category: 'A', interval: '10 flights or 4 calendar-days' }, RECORDED);
    expect(left(life, '2026-01-28T17:00Z', { flights: 1 })).toBe(0.5);
    expect(left(life, '2026-01-28T17:00Z', { flights: 8 })).toBe(0.2);
  });

  it('is not known where nobody counted, and there is none where nothing limits', () => {
    const life = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    expect(left(life, RECORDED)).toBeNull();
    expect(shareLeft({ ...life, limits: [] }, { at: RECORDED, left: [] })).toBeNull();
  });

  it('of a document with a last instant runs from the record to that instant', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    const limits = [{ clock: null, until: '2026-01-30T10:00Z', pair: false }];
    expect(left({ ...life, limits }, '2026-01-29T10:00Z')).toBe(0.25);
    expect(left({ ...life, limits }, '2026-02-01T10:00Z')).toBe(0);
  });
});
