import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Repeat } from '#mel';
import { context, deferredAs, signed } from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { signProcedure } from '../deferring/sign-procedure.js';
import type { DefectLife } from '../defect-life.js';
import type { Departure, Obligation } from './obligation.js';
import { obligationsOf } from './obligations.js';

const START = '2026-03-03T06:00Z';
const counting = { base: 'UTC', tzdb: '2026a' };

/** Minutes after the record as an instant. */
const at = (minutes: number): string => new Date(Date.parse(START) + minutes * 60_000).toISOString();

const departure = (minutes: number, over: Partial<Departure> = {}, flightMinutes = 130): Departure => ({
  flight: `F${minutes}`,
  from: 'AAA',
  flown: true,
  leg: { offBlockAt: at(minutes), blockMinutes: flightMinutes + 10, flightMinutes, cycles: 1, landings: 1 },
  ...over,
});

const planned = (minutes: number, over: Partial<Departure> = {}): Departure =>
  departure(minutes, { flown: false, ...over });

/** Deferred at the record; the procedure signed at these minutes, each entered at once unless told otherwise. */
function deferred(repeat: Repeat, times: readonly number[], forFlights: readonly (string | null)[] = []): DefectLife {
  const own = { procedures: [{ id: 'M1', kind: 'M' as const, text: 'Look.', repeat }] };
  return times.reduce(
    (life, minutes, index) => {
      const forFlight = forFlights[index] ?? undefined;
      const command = { id: `m${index}`, by: signed('tech', at(minutes)), work: '22-10-01/1/M1' };
      const more = forFlight === undefined ? {} : { forFlight };
      return proceed(life, signProcedure(life, { ...command, ...more }, context(at(minutes))));
    },
    deferredAs(own, START),
  );
}

const told = (obligations: readonly Obligation[]) =>
  obligations.map(({ state, before, departures }) => `${state} ${before?.flight ?? '-'} ${departures}`);

const ask = (life: DefectLife, departures: readonly Departure[], now = 20_000) =>
  told(obligationsOf(life, departures, at(now), counting));

const DAY = 1440;

describe('work owed once each flight-day', () => {
  it('is done, missed or due, day by day', () => {
    const life = deferred('each-flight-day', [30, 2 * DAY]);
    const departures = [60, 300, DAY + 60, DAY + 300, 2 * DAY + 60].map((minutes) => departure(minutes));
    const next = [planned(3 * DAY), planned(3 * DAY + 200), planned(4 * DAY)];
    expect(ask(life, [...departures, ...next])).toEqual([
      'done F60 2',
      `missed F${DAY + 60} 2`,
      `done F${2 * DAY + 60} 1`,
      `due F${3 * DAY} 2`,
      `due F${4 * DAY} 1`,
    ]);
  });

  it('done after the first departure of a day is good for the later ones alone', () => {
    const life = deferred('each-flight-day', [100]);
    expect(ask(life, [departure(60), departure(300)])).toEqual(['missed F60 1', 'done F300 1']);
  });
});

describe('work owed before each departure', () => {
  it('is good for the flight that it names', () => {
    const life = deferred('each-departure', [30, 250], ['F60', 'F300']);
    expect(ask(life, [departure(60), departure(300), departure(500), planned(700)])).toEqual([
      'done F60 1',
      'done F300 1',
      'missed F500 1',
      'due F700 1',
    ]);
  });

  it('is good for the next departure where nobody knows which flight left', () => {
    const life = deferred('each-departure', [30], ['F60']);
    expect(ask(life, [departure(60, { flight: null }), departure(300, { flight: null })])).toEqual([
      'done - 1',
      'missed - 1',
    ]);
  });
});

describe('work owed every so many flight-hours', () => {
  // EASA MMEL of T2, 49-01-01B: after the first flight, then every 100 FH; 46 legs of 2:10 are 99:40 (DERIVED).
  const repeat = { afterFirstFlightThenEvery: '100 flight-hours' };
  const legs = Array.from({ length: 48 }, (_, n) => planned(60 + n * 240));

  it('is not owed before the first flight, and is owed after it', () => {
    expect(ask(deferred(repeat, []), [planned(60), planned(300)], 30)).toEqual(['due F300 1']);
  });

  it('counts from each time it was done, and by the setting whether the hours may run out in flight', () => {
    const life = deferred(repeat, [250]);
    const flown = legs.map((leg, n) => ({ ...leg, flown: n === 0 }));
    const [flight48, flight49] = [60 + 47 * 240, 60 + 48 * 240];
    expect(ask(life, flown, 260)).toEqual(['done F300 46', `due F${flight48} 1`]);
    const inside = { ...counting, counting: { hoursCountedAt: 'departure' as const } };
    expect(told(obligationsOf(life, flown, at(260), inside))).toEqual(['done F300 47', 'coming - 0']);
    const longer = [...flown, planned(flight49)];
    expect(told(obligationsOf(life, longer, at(260), inside))).toEqual(['done F300 47', `due F${flight49} 1`]);
  });

  it('says what is left while it is still good', () => {
    const found = obligationsOf(deferred(repeat, [250]), [departure(60), departure(300)], at(600), counting);
    expect(found.at(-1)).toMatchObject({ state: 'coming', because: expect.stringContaining('95 h 40 min of 100 h') });
  });

  it('missed at its hours stays missed after it is done', () => {
    const life = deferred({ every: '5 flight-hours' }, [30, 900]);
    const flown = [60, 300, 600, 1000].map((minutes) => departure(minutes));
    expect(ask(life, flown, 1200)).toEqual(['done F60 2', 'missed F600 1', 'done F1000 1', 'coming - 0']);
  });
});

it('nothing is owed again where nothing is deferred or the work is owed once', () => {
  expect(ask(deferred('once', [30]), [departure(60)])).toEqual([]);
});

it('a recount that walks through the times says how many departures left without it', () => {
  const minute = fc.integer({ min: 0, max: 3000 });
  const gaps = (most: number) => fc.uniqueArray(minute, { maxLength: most });
  fc.assert(
    fc.property(gaps(5), gaps(12), fc.integer({ min: 1, max: 4 }), (times, leaves, limit) => {
      const done = times.map((one) => one * 2).sort((one, other) => one - other);
      const off = leaves.map((one) => one * 2 + 1).sort((one, other) => one - other);
      const life = deferred({ every: `${limit} flights` }, done);
      const found = obligationsOf(
        life,
        off.map((minutes) => departure(minutes)),
        at(20_000),
        counting,
      );
      const missed = found.reduce((sum, one) => sum + (one.state === 'missed' ? one.departures : 0), 0);
      expect(missed).toBe(naiveMissed(done, off, limit));
    }),
    { numRuns: 150 },
  );
});

function naiveMissed(done: readonly number[], off: readonly number[], limit: number): number {
  let left = 0;
  let missed = 0;
  for (let minute = 0; minute <= 6001; minute += 1) {
    if (done.includes(minute)) left = limit;
    if (!off.includes(minute)) continue;
    if (left === 0) missed += 1;
    else left -= 1;
  }
  return missed;
}
