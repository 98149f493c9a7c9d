/**
 * What is owed again, told by two libs: the list of obligations of an item says of a flight that work is due before it
 * exactly where the judge says of that flight that the work is to be done.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judge, type Situation, type WorkState } from '#dispatch';
import { obligationsOf, proceed, signProcedure, type DefectLife, type Departure } from '#deferrals';
import { countUsed, rectificationWindow, type Leg } from '#intervals';
import type { Mel, Repeat } from '#mel';
import { contextAt, deferredLife, signedBy } from '../support/small-life.js';
import { entry, melOf, situationOf } from '../support/small-mel.js';

const START = '2026-03-09T12:00Z';
const WORK = '22-10-01/1/M1';
const at = (minutes: number): string => new Date(Date.parse(START) + minutes * 60_000).toISOString();

const REPEATS: Repeat[] = [
  'each-departure',
  'each-flight-day',
  { every: '12 hours' },
  { every: '3 flights' },
  { every: '5 flight-hours' },
  { afterFirstFlightThenEvery: '4 flights' },
  { afterFirstFlightThenEvery: '6 flight-hours or 2 flight-days' },
];

interface Scene {
  repeat: Repeat;
  /** Minutes after the record. */
  flown: number[];
  done: { at: number; named: boolean }[];
  next: number;
  minutes: number;
}

const scene: fc.Arbitrary<Scene> = fc
  .record({
    repeat: fc.constantFrom(...REPEATS),
    flown: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 6 }),
    done: fc.uniqueArray(fc.record({ at: fc.integer({ min: 0, max: 40 }), named: fc.boolean() }), {
      maxLength: 4,
      selector: (one) => one.at,
    }),
    minutes: fc.integer({ min: 30, max: 110 }),
    gap: fc.integer({ min: 1, max: 30 }),
  })
  .map(({ flown, done, gap, ...rest }) => {
    // Work is done on the hour, flights leave at half past: none at the same instant.
    const past = flown.map((hour) => hour * 120 + 30).sort((one, other) => one - other);
    const times = done.map((one) => ({ ...one, at: one.at * 120 })).sort((one, other) => one.at - other.at);
    const last = Math.max(0, past.at(-1) ?? 0, times.at(-1)?.at ?? 0);
    return { ...rest, flown: past, done: times, next: last + gap * 60 + 15 };
  });

const legAt = (off: number, minutes: number): Leg => ({
  offBlockAt: at(off),
  onBlockAt: at(off + minutes),
  landedAt: at(off + minutes),
  airborneAt: at(off),
  blockMinutes: minutes,
  flightMinutes: minutes,
  cycles: 1,
  landings: 1,
});

/** Work owed before each departure is signed for a flight, or for none. */
const flightOf = ({ repeat, flown, next }: Scene, one: Scene['done'][number]): string | undefined => {
  if (repeat !== 'each-departure') return undefined;
  const off = [...flown, next].find((minutes) => minutes > one.at);
  return one.named ? `F${off}` : undefined;
};

function lifeOf(told: Scene): DefectLife {
  const { repeat, done } = told;
  return done.reduce(
    (life, one, index) => {
      const forFlight = flightOf(told, one);
      const by = signedBy('tech', at(one.at));
      const command = { id: `m${index}`, by, work: WORK, ...(forFlight ? { forFlight } : {}) };
      return proceed(life, signProcedure(life, command, contextAt(at(one.at))));
    },
    deferredLife(melWith(repeat), '22-10-01', START),
  );
}

const melWith = (repeat: Repeat): Mel =>
  melOf(
    entry(
      '22-10-01',
      [{ numberRequired: 1, procedures: [{ id: 'M1', kind: 'M', text: 'Look.', repeat }] }],
      ['1', '2'],
    ),
  );

function situationAt(told: Scene): Situation {
  const { flown, done, next, minutes } = told;
  const legs = flown.map((off) => legAt(off, minutes));
  const used = (since: string, interval = '99 flights') =>
    countUsed(rectificationWindow({ category: 'A', interval, recordedAt: since, base: 'UTC', tzdb: '2026a' }), legs);
  const work: WorkState[] = done.map((one) => {
    const forFlight = flightOf(told, one);
    const state = { work: WORK, defect: 'D1', doneAt: at(one.at), usedSince: used(at(one.at)) };
    return forFlight === undefined ? state : { ...state, forFlight };
  });
  return situationOf([{ entry: '22-10-01', recordedAt: START, used: used(START) }], {
    at: at(next - 5),
    work,
    flight: {
      id: `F${next}`,
      from: 'A',
      to: 'B',
      offBlockAt: at(next),
      onBlockAt: at(next + minutes),
      flightMinutes: minutes,
    },
  });
}

it('is due before a flight where the judge says that it is to be done, and nowhere else', async () => {
  await fc.assert(
    fc.asyncProperty(scene, async (told) => {
      const { flown, next, minutes, repeat } = told;
      const departures: Departure[] = [...flown, next].map((off) => ({
        flight: `F${off}`,
        from: null,
        flown: off !== next,
        leg: legAt(off, minutes),
      }));
      const counting = { base: 'UTC', tzdb: '2026a', counting: { hoursCountedAt: 'departure' as const } };
      const due = obligationsOf(lifeOf(told), departures, at(next - 5), counting).some(
        ({ state }) => state === 'due',
      );
      const verdict = await judge(melWith(repeat), situationAt(told));
      const condition = verdict.items.flatMap(({ conditions }) => conditions).find(({ id }) => id === WORK);
      expect({ due, because: condition?.because }).toEqual({
        due: condition?.now !== 'T',
        because: condition?.because,
      });
    }),
    { numRuns: 400 },
  );
});
