/** The days told in next-flights.yaml, through the door that `proviso judge` uses: a case file and a MEL file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nextFlights, readCase, type CaseRead, type NextFlights } from '#dispatch';
import { readMel, type Mel } from '#mel';
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
