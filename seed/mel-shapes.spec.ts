import { describe, expect, test } from 'vitest';
import {
  leavesOf,
  loadMel,
  type ConditionLeaf,
  type Entry,
  type EntryRef,
  type Mel,
  type Procedure,
  type Row,
} from '#mel';
import { readSeed, readSeedFile } from './seed-files.js';

const folder = import.meta.dirname;

const loaded = (name: string): Mel => {
  const answer = loadMel(readSeedFile(folder, name), name);
  if ('errors' in answer) throw new Error(JSON.stringify(answer.errors, null, 1));
  return answer.mel;
};

const mel = loaded('mel.yaml');

interface Place {
  entry: Entry;
  row: Row;
}

const places: Place[] = mel.entries.flatMap((entry) =>
  entry.subEntries.flatMap(({ rows }) => rows.map((row) => ({ entry, row }))),
);
const procedures: Procedure[] = places.flatMap(({ row }) => row.procedures ?? []);
const leaves: ConditionLeaf[] = places.flatMap(({ row }) => leavesOf(row));
const lostBy = (row: Row): EntryRef[] => [
  ...(row.consideredInoperative ?? []),
  ...(row.notes ?? []).flatMap(({ lost }) => lost ?? []),
];
const asks = (fact: string): boolean => leaves.some((leaf) => leaf.fact === fact);
const rowOf = (number: string, id: string): Row => {
  const place = places.find(({ entry, row }) => entry.number === number && row.id === id);
  if (place === undefined) throw new Error(`there is no row ${number}/${id}`);
  return place.row;
};

/** Entries that the provisos of one entry's rows name, itself left out. */
const namedBy = (number: string): Set<string> =>
  new Set(
    places
      .filter(({ entry }) => entry.number === number)
      .flatMap(({ row }) => leavesOf(row))
      .flatMap(({ fact, params }) => (fact === 'entry.up' && params?.entry !== undefined ? [params.entry] : []))
      .filter((other) => other !== number),
  );
const numbers = mel.entries.map(({ number }) => number);
const links = numbers.flatMap((from) => [...namedBy(from)].map((to) => ({ from, to })));

/** What is considered inoperative with each entry, under any of its rows. */
const considered = new Map(
  numbers.map((number) => [
    number,
    [
      ...new Set(
        places
          .filter(({ entry }) => entry.number === number)
          .flatMap(({ row }) => lostBy(row).map((ref) => ref.entry)),
      ),
    ],
  ]),
);
const reach = (from: string, steps: number): string[] =>
  steps === 0 ? [from] : (considered.get(from) ?? []).flatMap((next) => reach(next, steps - 1));

describe('the two MELs', () => {
  test('load clean, each in the name of its operator', () => {
    for (const { name, mel: file } of readSeed(folder).operator.operators) {
      expect(loaded(file).content.operator).toBe(name);
    }
  });

  test('say on every page that they are invented', () => {
    for (const one of [mel, loaded('mel-sallowby.yaml')]) {
      expect(one.content.notice).toMatch(/INVENTED.*[Nn]ever for flight/s);
      const sources = one.entries.flatMap((entry) => [entry, ...entry.subEntries.flatMap(({ rows }) => rows)]);
      expect(sources.filter(({ source }) => source?.mark !== 'INVENTED')).toEqual([]);
    }
  });

  test('the first holds at least 40 entries of at least 15 systems', () => {
    expect(mel.entries.length).toBeGreaterThanOrEqual(40);
    expect(new Set(mel.entries.map(({ chapter }) => chapter)).size).toBeGreaterThanOrEqual(15);
    expect(mel.entries.filter(({ number, chapter }) => !number.startsWith(`${chapter}-`))).toEqual([]);
  });

  test('every entry can be found by words and by fault message, and no message is of two entries', () => {
    expect(mel.entries.filter(({ words, faultMessages }) => !words?.length || !faultMessages?.length)).toEqual([]);
    const messages = mel.entries.flatMap(({ faultMessages }) => faultMessages ?? []);
    expect(messages.filter((message, at) => messages.indexOf(message) !== at)).toEqual([]);
  });

  test('every procedure has minutes and a reference, every thing left has a way to undo it', () => {
    expect(
      procedures.filter(
        ({ minutes, reference }) => !minutes || (!reference?.startsWith('K-') && !reference?.startsWith('QOF-')),
      ),
    ).toEqual([]);
    const left = procedures.flatMap((procedure) => procedure.leaves ?? []);
    expect(left.filter(({ undo }) => undo.length < 10)).toEqual([]);
  });
});

describe('rows and numbers', () => {
  test('an entry with several rows', () => {
    expect(mel.entry('49-10-21')?.subEntries[0]?.rows).toHaveLength(3);
  });

  test('a number over positions: one of two on each engine, four installed', () => {
    expect(rowOf('26-12-11', 'e1')).toMatchObject({ numberInstalled: 4, numberRequired: 2, covers: ['1A', '1B'] });
    expect(leavesOf(rowOf('26-12-11', 'e2'))[0]?.params?.units).toEqual(['2A', '2B']);
  });

  test('a row for some units only, with no relief for the others', () => {
    expect(mel.entry('23-12-11')?.subEntries[0]?.rows.map(({ covers }) => covers)).toEqual([['2', '3']]);
  });

  test('sub-entries by configuration and by serial number', () => {
    const by = mel.entries.flatMap(({ subEntries }) =>
      subEntries.flatMap(({ appliesTo }) => Object.keys(appliesTo ?? {})),
    );
    expect(new Set(by)).toEqual(new Set(['configurations', 'serials']));
    const regional = { type: 'Kellwing', configuration: ['regional'], serial: 1004 };
    expect(mel.unitsOf('23-11-11', regional)).toEqual(['1']);
    expect(mel.unitsOf('23-11-11', { ...regional, configuration: ['oceanic'] })).toEqual(['1', '2']);
    expect(mel.matchSubEntry('28-22-11', regional).kind).toBe('none');
  });

  test('a row whose text is held incompletely', () => {
    expect(places.filter(({ row }) => row.incomplete !== undefined)).toHaveLength(1);
  });

  test('a symmetrical pair: each of two panels is relieved only with the other down', () => {
    const row = rowOf('27-61-11', 'p2');
    expect(row.covers).toEqual(['L2', 'R2']);
    expect(row.needsDown).toEqual([{ entry: '27-61-11', units: ['L2', 'R2'] }]);
  });

  test('a judgement asked of a named role', () => {
    expect(rowOf('22-11-11', '2').judgements?.[0]?.by).toBe('commander');
  });

  test('entries without interaction: cabin items and the list of items without effect on safety', () => {
    const none = mel.entries.filter(({ interaction }) => interaction === 'none');
    expect(none.length).toBeGreaterThanOrEqual(4);
    expect(none.some(({ words }) => words?.includes('NEF'))).toBe(true);
  });
});

describe('intervals and repeats', () => {
  const ownIntervals = places
    .filter(({ row }) => row.category === 'A')
    .flatMap(({ row }) => [row.interval ?? [], Object.values(row.intervalByUnit ?? {})].flat());

  test.each([
    ['calendar days', /^\d+ calendar-days$/],
    ['flight-days', /^\d+ flight-days$/],
    ['flights', /^\d+ flights$/],
    ['flight hours', /^\d+ flight-hours$/],
    ['the first of two', / or /],
    ['engine hours of time-limited dispatch', /^\d+ engine-hours, time-limited dispatch$/],
    ['a departure from a designated station', /next departure from a designated station$/],
    ['an opportunity at a base', /^first opportunity at a base$/],
    ['the later of two', /, whichever is later$/],
    ['something to be done by a shorter limit', /, M1 within 1 flight-day$/],
  ])('category A in %s', (_, shape) => {
    expect(ownIntervals.some((text) => shape.test(text))).toBe(true);
  });

  test('category A that differs by unit', () => {
    expect(rowOf('34-33-11', '1').intervalByUnit).toEqual({ 1: '2 flight-days', 2: '4 flight-days' });
  });

  test('all four categories, and a shorter number of days than the letter gives', () => {
    expect(new Set(places.map(({ row }) => row.category))).toEqual(new Set(['A', 'B', 'C', 'D']));
    expect(places.some(({ row }) => row.category === 'C' && row.interval !== undefined)).toBe(true);
  });

  test('procedures of both kinds, done once or again: each departure, each flight-day, by hours, after the first flight', () => {
    expect(new Set(procedures.map(({ kind }) => kind))).toEqual(new Set(['M', 'O']));
    const repeats = procedures.map(({ repeat }) => repeat);
    expect(repeats).toContainEqual('each-departure');
    expect(repeats).toContainEqual('each-flight-day');
    expect(repeats).toContainEqual({ every: '12 hours' });
    expect(repeats).toContainEqual({ afterFirstFlightThenEvery: '100 flight-hours' });
  });

  test('things left on the aircraft: breaker, lock pin, valve position, connector, equipment; and placards', () => {
    const kinds = new Set(procedures.flatMap((one) => one.leaves ?? []).map(({ kind }) => kind));
    expect(kinds).toEqual(
      new Set(['breaker', 'lock-pin', 'valve-position', 'connector-capped', 'equipment-removed']),
    );
    expect(places.filter(({ row }) => row.placard !== undefined).length).toBeGreaterThan(40);
  });
});

describe('provisos', () => {
  test.each([
    'flight.etopsMinutes',
    'flight.icing',
    'flight.conditions',
    'flight.daylight',
    'flight.rvsm',
    'flight.runwayWidthMetres',
    'flight.runwayState',
    'flight.level',
    'flight.minimaNeed',
    'flight.performanceAdjusted',
    'work.done',
    'entry.up',
  ])('ask about %s', (fact) => {
    expect(asks(fact)).toBe(true);
  });

  test('use all, any and not', () => {
    const trees = places.flatMap(({ row }) => row.provisos ?? []).map(({ when }) => Object.keys(when)[0]);
    expect(trees).toEqual(expect.arrayContaining(['all', 'any', 'not']));
  });
});

describe('how entries bear on each other', () => {
  test('references one way', () => {
    expect(links).toContainEqual({ from: '24-21-11', to: '24-21-21' });
    expect(
      links.filter(({ from, to }) => !links.some((back) => back.from === to && back.to === from)).length,
    ).toBeGreaterThan(3);
  });

  test('references both ways: recorders, brakes and reversers', () => {
    expect(namedBy('23-71-11')).toContain('31-30-11');
    expect(namedBy('31-30-11')).toContain('23-71-11');
    expect(namedBy('32-42-21')).toContain('78-31-21');
    expect(namedBy('78-31-21')).toContain('32-42-21');
  });

  test('considered inoperative: a chain of two, and a cycle', () => {
    expect(reach('26-12-21', 2)).toContain('24-21-21');
    expect(reach('38-11-11', 2)).toContain('38-11-11');
  });

  test('a NOTE whose lost function is another entry', () => {
    expect(rowOf('34-45-11', 'o1').notes?.[0]?.lost).toEqual([{ entry: '34-44-11' }]);
  });
});

describe('the systems that the demo is about', () => {
  test('a start valve opened by hand for every start, by somebody who stands beside a running engine', () => {
    const byHand = rowOf('80-12-11', '1').procedures?.find(({ needsPersonAtStation }) => needsPersonAtStation);
    expect(byHand?.repeat).toBe('each-departure');
    const cautions = byHand?.cautions?.join(' ') ?? '';
    for (const words of [
      'manual prevails',
      'engine is running',
      'intake and exhaust',
      'Hearing protection',
      'Headset contact',
    ]) {
      expect(cautions).toContain(words);
    }
  });

  test.each([
    ['fuel filter bypass', '73-33-11'],
    ['thrust reverser', '78-31-21'],
    ['brake', '32-42-21'],
    ['APU', '49-10-21'],
    ['pack', '21-50-11'],
    ['generator', '24-21-11'],
  ])('%s', (word, number) => {
    const entry = mel.entry(number);
    expect([entry?.title ?? '', ...(entry?.words ?? [])].join(' ').toLowerCase()).toContain(word.toLowerCase());
  });
});
