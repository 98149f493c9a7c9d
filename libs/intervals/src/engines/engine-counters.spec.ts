/** Counters of engines against sums written out plainly. The rule that the greater use counts is our own. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accountOfUse,
  countUsed,
  engineCounters,
  rectificationWindow,
  whatIsLeft,
  withEngines,
  type EngineReading,
  type EngineRun,
  type Leg,
} from '../index.js';

const hour = (n: number) => new Date(Date.UTC(2026, 5, 1) + n * 3_600_000).toISOString();
const leg = (at: number, minutes: number): Leg => ({
  offBlockAt: hour(at),
  airborneAt: hour(at),
  landedAt: new Date(Date.parse(hour(at)) + minutes * 60_000).toISOString(),
  onBlockAt: new Date(Date.parse(hour(at)) + (minutes + 9) * 60_000).toISOString(),
  blockMinutes: minutes + 9,
  flightMinutes: minutes,
  cycles: 1,
  landings: 1,
});
const read = (at: number, position: string, serial: string, minutes: number, cycles: number): EngineReading => ({
  position,
  serial,
  readAt: hour(at),
  minutes,
  cycles,
});
const clockOf = (interval: string, engine: string, at: number) =>
  rectificationWindow({ category: 'A', interval, recordedAt: hour(at), base: 'UTC', tzdb: '2025c', engine });
const CLOCK = { hourClock: 'airborne' } as const;

describe('the counters of an engine', () => {
  it('are what was read with the legs since, each position by itself', () => {
    const readings = [read(0, '1', 'E-11', 60_000, 900), read(5, '2', 'E-22', 1_200, 20)];
    const legs = [leg(1, 90), leg(6, 60), leg(9, 45)];
    const now = engineCounters({ readings, runs: [] }, legs, { at: hour(7), ...CLOCK });
    expect(now.map(({ position, serial, minutes, cycles }) => [position, serial, minutes, cycles])).toEqual([
      ['1', 'E-11', 60_150, 902],
      ['2', 'E-22', 1_260, 21],
    ]);
  });

  it('of another serial number at the same position begin with their own reading', () => {
    const readings = [read(0, '1', 'E-11', 60_000, 900), read(4, '1', 'E-77', 300, 5)];
    const [one] = engineCounters({ readings, runs: [] }, [leg(1, 90), leg(6, 60)], { at: hour(8), ...CLOCK });
    expect(one).toMatchObject({ serial: 'E-77', minutes: 360, cycles: 6, differed: null });
  });

  it('add up as a plain sum does, over random legs, runs and readings', () => {
    const someLegs = fc.array(
      fc.record({ at: fc.integer({ min: 0, max: 200 }), minutes: fc.integer({ min: 20, max: 59 }) }),
    );
    const someRuns = fc.array(
      fc.record({ at: fc.integer({ min: 0, max: 200 }), position: fc.constantFrom('1', '2'), cycles: fc.nat(2) }),
    );
    fc.assert(
      fc.property(someLegs, someRuns, fc.integer({ min: 0, max: 200 }), (drawn, ran, from) => {
        const legs = drawn.map(({ at, minutes }) => leg(at, minutes));
        const runs = ran.map(({ at, position, cycles }): EngineRun => ({
          position,
          at: hour(at),
          minutes: 7,
          cycles,
        }));
        const [one] = engineCounters({ readings: [read(from, '1', 'E', 1000, 10)], runs }, legs, {
          at: hour(150),
          ...CLOCK,
        });
        const inside = (at: number) => at >= from && at <= 150;
        const ownLegs = drawn.filter(({ at }) => inside(at));
        const ownRuns = ran.filter(({ at, position }) => inside(at) && position === '1');
        expect(one?.minutes).toBe(
          from > 150 ? undefined : 1000 + ownLegs.reduce((sum, l) => sum + l.minutes, 0) + 7 * ownRuns.length,
        );
        expect(one?.cycles).toBe(
          from > 150 ? undefined : 10 + ownLegs.length + ownRuns.reduce((sum, r) => sum + r.cycles, 0),
        );
      }),
    );
  });
});

describe('an interval on one engine', () => {
  const readings = [read(0, '1', 'E-11', 60_000, 900)];
  const runs = [{ position: '1', at: hour(3), minutes: 12, cycles: 1 }];
  const legs = [leg(1, 50), leg(6, 60)];

  it('counts a run on the ground for its engine alone, and for no flight, cycle or flight-day of the aircraft', () => {
    const all = withEngines(legs, { readings, runs }, 'airborne');
    const used = (engine: string) =>
      countUsed(clockOf('10 engine-cycles', engine, 2), all, { rampReturnMakesFlightDay: true });
    expect(used('1')).toMatchObject({ engineMinutes: 72, engineCycles: 2, flights: 1, cycles: 1, flightMinutes: 60 });
    expect(used('2')).toMatchObject({ engineMinutes: 60, engineCycles: 1, flights: 1 });
    const nextDay = withEngines(legs, { readings, runs: [{ ...runs[0]!, at: hour(30) }] }, 'airborne');
    const days = countUsed(clockOf('3 flight-days', '1', 2), nextDay, { rampReturnMakesFlightDay: true });
    expect([days.flightDays, days.lastFlightDayOn]).toEqual([0, null]);
    expect(accountOfUse(clockOf('10 engine-cycles', '1', 2), all)[1]?.text).toBe(
      '1 Jun 2026 03:00 UTC (engine alone): 1 of 10 engine-cycles',
    );
  });

  it('takes nothing of a run that was before its start', () => {
    const all = withEngines([], { readings: [], runs }, 'airborne');
    expect(countUsed(clockOf('10 engine-cycles', '1', 4), all)).toMatchObject({ engineMinutes: 0, engineCycles: 0 });
    expect(countUsed(clockOf('10 engine-cycles', '1', 3), all)).toMatchObject({ engineMinutes: 12, engineCycles: 1 });
  });

  it('uses what a later reading says beyond what was counted, and gives nothing back where it says less', () => {
    const clock = clockOf('125 engine-hours, time-limited dispatch', '1', 0);
    const left = (more: readonly EngineReading[]) => {
      const all = withEngines(legs, { readings: [...readings, ...more], runs }, 'airborne');
      return whatIsLeft(clock, hour(20), countUsed(clock, all, { at: hour(20) })).limits[0]?.left;
    };
    expect(left([])).toBe(125 * 60 - 122);
    expect(left([read(10, '1', 'E-11', 60_200, 905)])).toBe(125 * 60 - 200);
    expect(left([read(10, '1', 'E-11', 60_100, 902)])).toBe(125 * 60 - 122);
    expect(left([read(10, '1', 'E-99', 99_000, 999)])).toBe(125 * 60 - 122);
  });

  it('never uses less for anything that is stated of an engine', () => {
    const someReadings = fc.array(
      fc.record({ at: fc.nat(60), minutes: fc.nat(5000), serial: fc.constantFrom('E-1', 'E-2') }),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(someReadings, fc.array(fc.nat(60), { maxLength: 4 }), (drawn, ran) => {
        const counts = {
          readings: drawn.map(({ at, minutes, serial }) => read(at, '1', serial, minutes, 0)),
          runs: ran.map((at) => ({ position: '1', at: hour(at), minutes: 5, cycles: 0 })),
        };
        const clock = clockOf('125 engine-hours', '1', 2);
        const [plain, stated] = [legs, withEngines(legs, counts, 'airborne')].map((all) => countUsed(clock, all));
        expect(stated?.engineMinutes).toBeGreaterThanOrEqual(plain?.engineMinutes ?? 0);
      }),
    );
  });
});
