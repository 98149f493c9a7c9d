/** The days told in next-flights.yaml, through the door that `proviso judge` uses: a case file and a MEL file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { nextFlights, readCase, type CaseRead, type NextFlights } from '#dispatch';
import { readMel, type Mel } from '#mel';

interface Rotation {
  first: string;
  every: number;
  minutes: number;
  count: number;
  between: [string, string];
}

interface DayCase {
  id: string;
  story: string;
  mel: string;
  source: string;
  mark: string;
  basis: string;
  rotation: Rotation;
  flightFacts?: Record<string, object>;
  expect: Record<string, string>;
  kept: number;
  possible: number;
  breaks?: { flight: string; station: string };
  says?: Record<string, string[]>;
  ifFlown?: Record<string, string | null>;
  repeats?: Record<string, string[]>;
  left?: Record<string, string>;
  saves?: { kind: string; keeps?: number; row?: string; says?: string }[];
  notSaved?: string[];
  [part: string]: unknown;
}

const TOLD = new Set(
  'id story mel source mark basis rotation flightFacts expect kept possible breaks says ifFlown repeats left saves notSaved'.split(
    ' ',
  ),
);
const text = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');
const { defaults, cases } = parse(text('next-flights.yaml')) as { defaults: object; cases: DayCase[] };

const mels = new Map(
  ['t1', 't2'].map((name): [string, Mel] => {
    const loaded = readMel(text(`published-rows-${name}.yaml`), name);
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return [name, loaded.mel];
  }),
);

const plus = (instant: string, minutes: number): string =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString();

function flightsOf(
  { first, every, minutes, count, between }: Rotation,
  facts: DayCase['flightFacts'] = {},
): object[] {
  return Array.from({ length: count }, (_, at) => ({
    id: `F${at + 1}`,
    from: between[at % 2],
    to: between[(at + 1) % 2],
    offBlockAt: plus(first, at * every),
    onBlockAt: plus(first, at * every + minutes + 20),
    flightMinutes: minutes,
    facts: facts[`F${at + 1}`] ?? {},
  }));
}

function read(one: DayCase): CaseRead {
  if ([one.source, one.mark, one.basis].some((part) => typeof part !== 'string')) {
    throw new Error(`${one.id} lacks source, mark or basis`);
  }
  const given = Object.fromEntries(Object.entries(one).filter(([part]) => !TOLD.has(part)));
  const file = { ...defaults, ...given, flights: flightsOf(one.rotation, one.flightFacts) };
  const found = readCase(file, one.id, mels.get(one.mel)!, '2026a');
  if ('errors' in found) throw new Error(JSON.stringify(found.errors));
  return found;
}

/** "F2-F47" names them all. */
function named(range: string): string[] {
  const [from = 0, to = from] = range.split('-').map((id) => Number(id.slice(1)));
  return Array.from({ length: to - from + 1 }, (_, at) => `F${from + at}`);
}

const flight = ({ flights }: NextFlights, id: string) => flights.find((told) => told.flight.id === id)!;

describe('the flights of a day', () => {
  it.each(cases.map((one) => [`${one.id}: ${one.story}`, one] as const))('%s', async (_name, one) => {
    const { situation, flights, stations } = read(one);
    const told = await nextFlights(mels.get(one.mel)!, situation, flights, { stations });
    const expected = Object.entries(one.expect).flatMap(([range, verdict]) =>
      named(range).map((id) => [id, verdict]),
    );
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
