import { expect, it } from 'vitest';
import type { DefectLife } from '../defect-life.js';
import { mayDispatch } from '../flying/may-dispatch.js';
import { deferredAs } from '../invented.fixture.js';
import { standing } from '../standing.js';
import { withDone } from './done-within.js';

const RECORDED = '2026-01-26T10:00Z';
const life = deferredAs({ category: 'A', interval: '3 flight-days, M1 within 1 flight-day' }, RECORDED);
const inspected = { ...life, procedures: [{ work: '22-10-01/1/M1' }] } as unknown as DefectLife;
const flight = { id: 'F1', kind: 'passenger', passengers: true, offBlockAt: '2026-01-28T08:00Z' };
const used = { flightDays: 1, lastFlightDayOn: '2026-01-27' };

it('names what was done by its own id, and nothing where nothing was', () => {
  expect(withDone(used, inspected)).toEqual({ ...used, done: ['M1'] });
  expect(withDone(used, life)).toEqual(used);
});

it('a shorter limit inside the interval keeps the aircraft down until its procedure is done', () => {
  const past = (of: DefectLife) =>
    mayDispatch(of, flight, { used }).because.filter(({ code }) => code === 'past-the-deadline').length;
  expect([past(life), past(inspected)]).toEqual([1, 0]);
  const over = (of: DefectLife) => standing(of, '2026-01-28T08:00Z', used).overdue;
  expect([over(life), over(inspected)]).toEqual([true, false]);
});
