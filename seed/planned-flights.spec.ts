import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { misfitOf, readFactKey } from '#mel';
import { instantOf, plannedFlights, type SeedFlight } from './planned-flights.js';
import { readSeed } from './seed-files.js';

const seed = readSeed(import.meta.dirname);

// Winter, summer, and the days on which one zone has changed its clocks and another has not.
const DAYS_ZERO = ['2026-01-15', '2026-03-10', '2026-03-28', '2026-07-15', '2026-10-24', '2026-10-28', '2028-02-28'];

const minutes = (from: string, to: string): number =>
  Temporal.Instant.from(to).since(Temporal.Instant.from(from)).total('minutes');

const legPairs = (flights: SeedFlight[]): [SeedFlight, SeedFlight][] =>
  flights.flatMap((next, at) => {
    const before = flights[at - 1];
    return before !== undefined && before.aircraft === next.aircraft
      ? [[before, next] as [SeedFlight, SeedFlight]]
      : [];
  });

const dayZero = '2026-01-15';
const flights = plannedFlights(seed, dayZero);
const facts = flights.flatMap((flight) => Object.entries(flight.facts));

describe('the week of flights', () => {
  test.each(DAYS_ZERO)(
    'each aircraft leaves from where it came, with at least 30 minutes on the ground, loaded on %s',
    (day) => {
      for (const [before, next] of legPairs(plannedFlights(seed, day))) {
        expect(next.from, next.id).toBe(before.to);
        expect(minutes(before.onBlockAt, next.offBlockAt), next.id).toBeGreaterThanOrEqual(30);
      }
    },
  );

  test('covers day 0 to day 6 for the whole fleet of the first operator, and two days before', () => {
    const mine = seed.flights.rotations.filter(({ aircraft }) => aircraft.startsWith('Q-K'));
    expect(mine).toHaveLength(6);
    for (const rotation of mine) {
      const days = new Set(rotation.flights.map(({ day }) => day));
      expect(
        [...days].filter((day) => day < -2 || day > 6),
        rotation.aircraft,
      ).toEqual([]);
      expect(
        [-2, -1, 0, 1, 2].filter((day) => !days.has(day)),
        rotation.aircraft,
      ).toEqual([]);
    }
  });

  test('every flight is airborne for less than its block time', () => {
    for (const { id, offBlockAt, onBlockAt, flightMinutes } of flights) {
      expect(Number.isInteger(flightMinutes), id).toBe(true);
      expect(flightMinutes, id).toBeLessThan(minutes(offBlockAt, onBlockAt));
    }
  });

  test('an off-block time is local to the station of departure', () => {
    expect(instantOf({ day: 0, time: '08:00', station: 'QLT' }, '2026-07-15', seed)).toBe('2026-07-15T02:15:00Z');
    expect(instantOf({ day: 1, time: '08:00', station: 'QVR' }, '2026-07-15', seed)).toBe('2026-07-16T05:00:00Z');
  });
});

describe('the facts of the flights', () => {
  test('are facts of the registry with values that fit', () => {
    for (const [key, value] of facts) {
      const known = readFactKey(key);
      expect(known, key).not.toBeNull();
      if (known !== null && value !== null) expect(misfitOf(known.fact, value), key).toBeNull();
    }
  });

  test('hold what the MEL asks about: ETOPS of 120 minutes, RVSM, night and icing', () => {
    const some = (key: string, value: unknown) => facts.filter((fact) => fact[0] === key && fact[1] === value).length;
    expect(some('flight.etopsMinutes', 120)).toBeGreaterThan(0);
    expect(some('flight.etopsMinutes', 0)).toBeGreaterThan(0);
    expect(some('flight.rvsm', true)).toBeGreaterThan(0);
    expect(some('flight.rvsm', false)).toBeGreaterThan(0);
    expect(some('flight.daylight', 'some-night')).toBeGreaterThan(0);
    expect(some('flight.icing', 'forecast')).toBeGreaterThan(0);
    expect(some('flight.thunderstorms', 'forecast')).toBeGreaterThan(0);
    expect(some('flight.runwayWidthMetres', 30)).toBeGreaterThan(0);
  });

  test('are left unknown on purpose in places', () => {
    expect(facts.filter(([, value]) => value === null).length).toBeGreaterThan(20);
    expect(flights.some((flight) => flight.facts['flight.icing'] === undefined)).toBe(true);
    expect(flights.some((flight) => flight.facts['flight.authorisedPersonAtStation'] === null)).toBe(true);
  });

  test('of a flight itself override those of its sets, its route, its station and its operator', () => {
    const unsure = flights.find(({ id }) => id === 'fl-kea-11');
    expect(unsure?.facts).toMatchObject({
      'flight.lowVisibility': null,
      'flight.icing': 'none',
      'flight.level': 350,
      'flight.groundAirAtStation': true,
      'flight.kind': 'passenger',
    });
  });
});
