/** The days told in next-flights.yaml, through the door that `proviso judge` uses: a case file and a MEL file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nextFlights, readCase, type CaseRead, type NextFlights } from '#dispatch';
import { readMel, type Mel } from '#mel';
import { entry, melOf, situationOf } from '../support/small-mel.js';
import { caseFileOf, DAYS, expectedOf, type DayCase } from './next-flights.days.js';

const text = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');

const mels = new Map(
  ['t1', 't2', 'stand-ins'].map((name): [string, Mel] => {
    const loaded = readMel(text(`published-rows-${name}.yaml`), name);
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return [name, loaded.mel];
  }),
);

function read(one: DayCase): CaseRead {
  const found = readCase(caseFileOf(one), one.id, mels.get(one.mel)!, '2026a');
  if ('errors' in found) throw new Error(JSON.stringify(found.errors));
  return found;
}

const flight = ({ flights }: NextFlights, id: string) => flights.find((told) => told.flight.id === id)!;

describe('the flights of a day', () => {
  it.each(DAYS.map((one) => [`${one.id}: ${one.story}`, one] as const))('%s', async (_name, one) => {
    const { situation, flights, stations } = read(one);
    const told = await nextFlights(mels.get(one.mel)!, situation, flights, { stations });
    const expected = expectedOf(one);
    const answers = told.flights.map(({ flight: { id }, verdict }) => [id, verdict.verdict]);
    expect(answers.slice(0, expected.length)).toEqual(expected);
    expect([told.kept, told.possible]).toEqual([one.kept, one.possible]);
    if (one.breaks === undefined) expect(told.breaks).toBe(null);
    else expect(told.breaks).toMatchObject(one.breaks);
    for (const [id, parts] of Object.entries(one.says ?? {})) {
      for (const part of parts) expect(flight(told, id).verdict.reasons.join('\n')).toContain(part);
    }
    for (const [id, after] of Object.entries(one.ifFlown ?? {})) expect(flight(told, id).ifFlown).toBe(after);
    for (const [id, work] of Object.entries(one.repeats ?? {})) {
      expect(flight(told, id).repeats.map((repeat) => repeat.work)).toEqual(work);
    }
    for (const [id, sentence] of Object.entries(one.left ?? {})) {
      expect(
        flight(told, id)
          .left.map((left) => left.sentence)
          .join(),
      ).toContain(sentence);
    }
    for (const { says = '', ...saver } of one.saves ?? []) {
      const same = told.savers.filter(({ kind, text: words }) => kind === saver.kind && words.includes(says));
      expect(same, JSON.stringify(told.savers, null, 1)).toContainEqual(expect.objectContaining(saver));
    }
    for (const kind of one.notSaved ?? []) expect(told.savers.map((saver) => saver.kind)).not.toContain(kind);
  });
});

describe('cycles', () => {
  it('run out flight by flight, with what is left at each departure', async () => {
    // No published row counts cycles; the interval is an invented one.
    const mel = melOf(entry('a', [{ category: 'A', interval: '3 cycles' }]));
    const used = { flights: 0, flightDays: 0, lastFlightDayOn: null, flightMinutes: 0, blockMinutes: 0, cycles: 1 };
    const situation = situationOf([{ entry: 'a', used }]);
    const flights = ['08', '11', '14'].map((hour) => ({
      id: `F${hour}`,
      from: 'Northmere',
      to: 'Northmere',
      offBlockAt: `2026-03-10T${hour}:00Z`,
      onBlockAt: `2026-03-10T${Number(hour) + 2}:00Z`,
      flightMinutes: 100,
    }));
    const told = await nextFlights(mel, situation, flights);
    expect(told.flights.map(({ verdict, left }) => [verdict.verdict, left[0]?.sentence])).toEqual([
      ['may-fly', '2 of 3 cycles left.'],
      ['may-fly', '1 of 3 cycles left.'],
      ['may-not-fly', '0 of 3 cycles left.'],
    ]);
  });
});

describe('what changed', () => {
  it('names what the flight before answered otherwise, also where only work tells them apart', async () => {
    const one = DAYS.find(({ id }) => id === 'N-08')!;
    const { situation, flights, stations } = read(one);
    const told = await nextFlights(mels.get(one.mel)!, situation, flights, { stations });
    expect(told.flights.map(({ changed }) => changed.map(({ id, was, is }) => [id, was, is]))).toEqual([
      [],
      [['32-V26/1/M1 D1', { now: 'T', after: 'T' }, { now: 'F', after: 'F' }]],
      [['32-V26/1/M1 D1', { now: 'F', after: 'F' }, { now: 'F', after: 'T' }]],
    ]);
    const [changed] = flight(told, 'F2').changed;
    expect(changed?.about).toMatch(/\(32-V26, row 1\)$/);
    expect(changed?.says).toContain('nobody authorised and equipped is at Saltby');
  });
});
