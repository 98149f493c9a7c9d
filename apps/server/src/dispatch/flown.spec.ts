import { expect, it } from 'vitest';
import type { FlightRow } from '#store';
import { legOfPlan } from '../movements/flown-legs.js';
import { usedSince } from './flown.js';

const base = { base: 'UTC', tzdb: 'any' };
const flight = (offBlockAt: string, onBlockAt: string | null): FlightRow =>
  ({ offBlockAt, onBlockAt, flightMinutes: 130 }) as FlightRow;
const legs = [
  flight('2026-01-14T06:00:00Z', '2026-01-14T08:30:00Z'),
  flight('2026-01-15T06:00:00Z', '2026-01-15T08:30:00Z'),
  flight('2026-01-15T10:00:00Z', '2026-01-15T12:30:00Z'),
].map(legOfPlan);

it('counts what was flown since work that is owed again after flight-hours', () => {
  const used = usedSince({ every: '75 flight-hours' }, '2026-01-14T20:00:00Z', legs, base);
  expect(used).toMatchObject({ flights: 2, flightMinutes: 260 });
});

it('counts nothing for work that is done once or belongs to one flight', () => {
  for (const repeat of [undefined, 'once', 'each-departure', 'each-flight-day'] as const) {
    expect(usedSince(repeat, '2026-01-14T20:00:00Z', [], base)).toBeNull();
  }
});
