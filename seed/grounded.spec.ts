import { describe, expect, it } from 'vitest';
import { groundedIn, isGrounded } from './grounded.js';
import { plannedFlights } from './planned-flights.js';
import { readSeed } from './seed-files.js';

const seed = readSeed(import.meta.dirname);
const dayZero = '2026-01-15';
const grounded = groundedIn(seed, dayZero);
const flights = plannedFlights(seed, dayZero);

describe('an aircraft of the demo', () => {
  it('with an unanswered write-up has no flight after it', () => {
    const after = flights.filter(
      ({ aircraft, offBlockAt }) => aircraft === 'Q-KEB' && offBlockAt > '2026-01-14T20:45',
    );
    expect(after.length).toBeGreaterThan(5);
    expect(after.every((flight) => isGrounded(grounded, flight))).toBe(true);
  });

  it('flew in the two days before, for every flight it was free to leave on', () => {
    const before = flights.filter(({ offBlockAt }) => offBlockAt < '2026-01-14T20:00');
    expect(before.filter((flight) => isGrounded(grounded, flight))).toEqual([]);
  });

  it('whose items are answered is free again', () => {
    const others = flights.filter(({ aircraft, offBlockAt }) => aircraft !== 'Q-KEB' && offBlockAt > '2026-01-15');
    expect(others.filter((flight) => isGrounded(grounded, flight))).toEqual([]);
  });
});
