import { Instant, ZoneId } from '@js-joda/core';
import '@js-joda/timezone';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, rectificationWindow, type Leg } from './index.js';

const start = Date.UTC(2026, 2, 27, 10);
const clockIn = (base: string, preset?: 'faa' | 'tcca-2006') =>
  rectificationWindow({
    category: 'A',
    interval: '9 flights or 9 flight-days',
    recordedAt: new Date(start).toISOString(),
    base,
    tzdb: '2025c',
    ...(preset ? { preset } : {}),
  });
const utc = clockIn('UTC');

const leg = (offBlockAt: string, given: Partial<Leg> = {}): Leg => ({
  offBlockAt,
  blockMinutes: 70,
  flightMinutes: 60,
  cycles: 1,
  landings: 1,
  ...given,
});

describe('counting what legs used', () => {
  it('agrees with a plain recount over another date library', () => {
    const someLeg = fc.record({
      minute: fc.integer({ min: -3000, max: 12_000 }),
      flown: fc.boolean(),
      minutes: fc.integer({ min: 1, max: 600 }),
    });
    const zones = fc.constantFrom('UTC', 'Europe/Paris', 'America/Los_Angeles', 'Pacific/Auckland');
    fc.assert(
      fc.property(zones, fc.uniqueArray(someLeg, { maxLength: 30, selector: (one) => one.minute }), (base, drawn) => {
        const legs = drawn.map(({ minute, flown, minutes }) =>
          leg(new Date(start + minute * 60_000).toISOString(), {
            flightMinutes: flown ? minutes : 0,
            blockMinutes: minutes + 10,
            cycles: flown ? 1 : 0,
          }),
        );
        const after = drawn.filter(({ minute }) => minute >= 0);
        const flown = after.filter((one) => one.flown);
        const dayOf = (minute: number) =>
          Instant.ofEpochMilli(start + minute * 60_000)
            .atZone(ZoneId.of(base))
            .toLocalDate()
            .toString();
        const days = new Set(flown.map(({ minute }) => dayOf(minute)).filter((day) => day !== dayOf(0)));
        const used = countUsed({ ...clockIn(base, 'tcca-2006') }, legs);
        expect(used).toEqual({
          flights: flown.length,
          flightDays: days.size,
          lastFlightDayOn: [...days].sort().at(-1) ?? null,
          flightMinutes: flown.reduce((total, one) => total + one.minutes, 0),
          blockMinutes: after.reduce((total, one) => total + one.minutes + 10, 0),
          cycles: flown.length,
        });
      }),
    );
  });

  it('does not depend on the order of the list', () => {
    const legs = ['2026-03-29T10:00Z', '2026-03-27T11:00Z', '2026-03-28T10:00Z'].map((at) => leg(at));
    expect(countUsed(utc, legs)).toEqual(countUsed(utc, [...legs].reverse()));
    expect(countUsed(utc, legs)).toMatchObject({ flights: 3, flightDays: 2, lastFlightDayOn: '2026-03-29' });
  });

  it('counts a flight that leaves in the minute of the record, and none that left before', () => {
    expect(countUsed(utc, [leg('2026-03-27T10:00Z')]).flights).toBe(1);
    expect(countUsed(utc, [leg('2026-03-27T09:59Z')]).flights).toBe(0);
  });

  it('counts no flight and no hour for a return to the ramp, and a flight-day only where that is set', () => {
    const ramp = leg('2026-03-28T10:00Z', { flightMinutes: 0, cycles: 0, landings: 0, blockMinutes: 12 });
    expect(countUsed(utc, [ramp])).toMatchObject({
      flights: 0,
      flightDays: 0,
      flightMinutes: 0,
      cycles: 0,
      blockMinutes: 12,
    });
    expect(countUsed(utc, [ramp], { rampReturnMakesFlightDay: true })).toMatchObject({ flights: 0, flightDays: 1 });
  });

  it('counts a flight from the moment it is airborne, before it has minutes', () => {
    const inTheAir = leg('2026-03-28T10:00Z', {
      airborneAt: '2026-03-28T10:10Z',
      flightMinutes: 0,
      blockMinutes: 0,
      cycles: 0,
    });
    expect(countUsed(utc, [inTheAir])).toMatchObject({ flights: 1, flightDays: 1, flightMinutes: 0 });
  });

  it('leaves out what leaves after the instant asked for', () => {
    const legs = [leg('2026-03-28T10:00Z'), leg('2026-03-28T14:00Z')];
    expect(countUsed(utc, legs, { at: '2026-03-28T12:00Z' }).flights).toBe(1);
    expect(countUsed(utc, legs, { at: '2026-03-28T14:00Z' }).flights).toBe(2);
  });

  it('counts the whole of a leg under way whose end is not known, the stricter way, and none of one that had landed', () => {
    expect(countUsed(clockIn('UTC', 'faa'), [leg('2026-03-27T09:30Z')])).toMatchObject({
      flights: 0,
      flightMinutes: 60,
      cycles: 1,
    });
    const landed = leg('2026-03-27T08:00Z', { landedAt: '2026-03-27T09:10Z', onBlockAt: '2026-03-27T09:20Z' });
    expect(countUsed(clockIn('UTC', 'faa'), [landed])).toMatchObject({
      flightMinutes: 0,
      blockMinutes: 0,
      cycles: 0,
    });
  });

  it('refuses a leg that cannot be, naming its place in the list', () => {
    expect(() => countUsed(utc, [leg('2026-03-28T10:00Z'), leg('2026-03-28T10:00')])).toThrow('legs[1].offBlockAt');
    expect(() => countUsed(utc, [leg('2026-03-28T10:00Z', { flightMinutes: 59.5 })])).toThrow(
      'legs[0].flightMinutes',
    );
    expect(() => countUsed(utc, [leg('2026-03-28T10:00Z', { landedAt: 'soon' })])).toThrow('legs[0].landedAt');
  });
});
