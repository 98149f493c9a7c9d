import { describe, expect, it } from 'vitest';
import { deferredAs, offer, refusalOf, writtenUp } from './invented.fixture.js';
import { standing } from './standing.js';

const RECORDED = '2026-01-26T10:00Z';

describe('how a defect stands', () => {
  it('is unanswered from the log on, and not over, for it has no deadline yet', () => {
    expect(standing(writtenUp(RECORDED), '2026-01-27T10:00Z')).toEqual({
      defect: 'D1',
      at: '2026-01-27T10:00Z',
      state: 'unanswered',
      answered: false,
      open: true,
      basis: null,
      deadline: null,
      left: [],
      overdue: false,
      extended: 0,
      owed: [],
      leftOnTheAircraft: [],
    });
  });

  it('says under a deferral what it stands on, until when, and what is left', () => {
    const now = standing(deferredAs({ category: 'C' }, RECORDED), '2026-02-04T12:00Z');
    expect(now).toMatchObject({
      state: 'open under deferral',
      answered: true,
      basis: 'MEL 22-10-01 row 1 (category C)',
      deadline: { lastDay: '2026-02-05', endsAt: '2026-02-06T00:00:00Z', base: 'UTC', tzdb: '2026a', counted: [] },
      overdue: false,
    });
    expect(now.left[0]?.limits[0]).toMatchObject({ left: 2, used: 8 });
  });

  it('is overdue from the first instant after the last day', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    expect(standing(life, '2026-02-05T23:59:59Z').overdue).toBe(false);
    expect(standing(life, '2026-02-06T00:00Z').overdue).toBe(true);
  });

  it('does not know whether a counted limit is over when nobody knows the count', () => {
    const life = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    expect(standing(life, RECORDED).overdue).toBeNull();
    expect(standing(life, RECORDED, { flights: 3 }).overdue).toBe(false);
    expect(standing(life, RECORDED, { flights: 4 }).overdue).toBe(true);
    expect(standing(life, RECORDED).deadline).toMatchObject({
      endsAt: null,
      counted: [{ amount: 4, unit: 'flights' }],
    });
  });

  it('names the work that the row owes', () => {
    const { row } = offer({
      procedures: [{ id: 'M1', kind: 'M', text: 'Deactivate.' }],
      placard: { text: 'AP 1 INOP', position: 'P5' },
    });
    const owed = standing(deferredAs(row, RECORDED), RECORDED).owed;
    expect(owed.map(({ code }) => code)).toEqual(['procedure-not-signed', 'placard-not-fitted']);
  });

  it('refuses an instant before the record', () => {
    expect(refusalOf(() => standing(deferredAs({}, RECORDED), '2026-01-26T09:59Z')).code).toBe(
      'interval-cannot-be-computed',
    );
  });
});
