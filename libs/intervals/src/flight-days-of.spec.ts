import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, mayDepart, rectificationWindow, whatIsLeft, type Leg } from './index.js';

const START = Date.UTC(2026, 5, 1, 6);
const clock = rectificationWindow({
  category: 'A',
  interval: '2 flight-days',
  recordedAt: new Date(START).toISOString(),
  base: 'Europe/Paris',
  tzdb: '2025c',
});
const fromFirstOut = { flightDay: 'from-first-out' } as const;
const leg = (minute: number): Leg => ({
  offBlockAt: new Date(START + minute * 60_000).toISOString(),
  blockMinutes: 50,
  flightMinutes: 40,
  cycles: 1,
  landings: 1,
});

describe('a flight-day of 24 hours from the first off-blocks', () => {
  it('is counted as by laying the hours out one after another', () => {
    // Whole quarters of an hour, so that some lie exactly 24 hours apart.
    const quarters = fc.integer({ min: 0, max: 532 }).map((quarter) => quarter * 15);
    const hours = fc.integer({ min: 0, max: 130 }).map((hour) => hour * 60);
    const minutes = fc.uniqueArray(fc.oneof(quarters, hours, fc.constantFrom(0, 1440, 2880)), { maxLength: 20 });
    fc.assert(
      fc.property(minutes, (drawn) => {
        let [count, covered] = [0, -1];
        for (let minute = 0; minute <= 8000; minute += 1) {
          if (!drawn.includes(minute) || minute < covered) continue;
          [count, covered] = [count + 1, minute + 24 * 60];
        }
        expect(countUsed(clock, drawn.map(leg), fromFirstOut).flightDays).toBe(count);
      }),
      { numRuns: 60 },
    );
  });

  it('lets every flight go that leaves before its 24 hours are over', () => {
    const used = { flightDays: 2, lastFlightDayStartsAt: '2026-06-03T10:00:00Z' };
    const ask = (offBlockAt: string) => mayDepart(clock, { offBlockAt }, used, fromFirstOut).answer;
    expect([ask('2026-06-04T09:59Z'), ask('2026-06-04T10:00Z')]).toEqual(['holds', 'fails']);
    expect(whatIsLeft(clock, '2026-06-04T09:00Z', used, fromFirstOut)).toMatchObject({
      endsAt: '2026-06-04T10:00:00Z',
      lastDay: null,
      isOver: false,
    });
    expect(mayDepart(clock, { offBlockAt: '2026-06-04T09:00Z' }, { flightDays: 2 }, fromFirstOut).answer).toBe(
      'unknown',
    );
  });

  it('gives the days of the base where the operator counts those', () => {
    const legs = [leg(24 * 60), leg(24 * 60 + 20 * 60)];
    expect(countUsed(clock, legs).flightDays).toBe(2);
    expect(countUsed(clock, legs, fromFirstOut).flightDays).toBe(1);
  });
});

describe('the last flight-day where a flight must also arrive inside', () => {
  const inside = { expiryInFlight: 'arrival-inside' } as const;
  const used = { flightDays: 1, lastFlightDayOn: '2026-06-02' };
  const ask = (onBlockAt?: string, more: object = {}) =>
    mayDepart(
      clock,
      { offBlockAt: '2026-06-03T20:00Z', ...(onBlockAt === undefined ? {} : { onBlockAt }) },
      { ...used, ...more },
      inside,
    ).answer;

  it('takes no flight that lands after it', () => {
    expect([ask('2026-06-03T21:59Z'), ask('2026-06-03T22:00Z'), ask()]).toEqual(['holds', 'fails', 'unknown']);
    expect(ask('2026-06-03T22:00Z', { flightDays: 0, lastFlightDayOn: null })).toBe('holds');
  });

  it('is 24 hours from its own first off-blocks where they are counted so', () => {
    const both = { ...inside, ...fromFirstOut };
    const one = { flightDays: 2, lastFlightDayStartsAt: '2026-06-03T10:00:00Z' };
    const fly = (onBlockAt: string) =>
      mayDepart(clock, { offBlockAt: '2026-06-04T08:00Z', onBlockAt }, one, both).answer;
    expect([fly('2026-06-04T09:59Z'), fly('2026-06-04T10:00Z')]).toEqual(['holds', 'fails']);
  });
});
