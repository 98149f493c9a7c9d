import { expect, it } from 'vitest';
import type { FlightRow } from '#store';
import { legOf, usedSince } from './flown.js';

const base = { base: 'UTC', tzdb: 'any' };
const flight = (offBlockAt: string, onBlockAt: string | null): FlightRow =>
  ({ offBlockAt, onBlockAt, flightMinutes: 130 }) as FlightRow;
const legs = [
  flight('2026-01-14T06:00:00Z', '2026-01-14T08:30:00Z'),
  flight('2026-01-15T06:00:00Z', '2026-01-15T08:30:00Z'),
  flight('2026-01-15T10:00:00Z', '2026-01-15T12:30:00Z'),
].map(legOf);

it('counts what was flown since work that is owed again after flight-hours', () => {
  const used = usedSince({ every: '75 flight-hours' }, '2026-01-14T20:00:00Z', legs, base);
  expect(used).toMatchObject({ flights: 2, flightMinutes: 260 });
});

it('counts nothing for work that is done once or belongs to one flight', () => {
  for (const repeat of [undefined, 'once', 'each-departure', 'each-flight-day'] as const) {
    expect(usedSince(repeat, '2026-01-14T20:00:00Z', [], base)).toBeNull();
  }
});

it('takes airborne minutes from the plan, and the block where there are none', () => {
  const planned = flight('2026-01-15T06:00:00Z', '2026-01-15T08:30:00Z');
  expect(legOf(planned)).toMatchObject({ blockMinutes: 150, flightMinutes: 130 });
  expect(legOf({ ...planned, flightMinutes: null })).toMatchObject({ blockMinutes: 150, flightMinutes: 150 });
  expect(legOf({ ...planned, onBlockAt: null })).toMatchObject({ blockMinutes: 130, flightMinutes: 130 });
});
