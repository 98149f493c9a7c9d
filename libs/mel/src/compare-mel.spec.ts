import { describe, expect, it } from 'vitest';
import { checkAgainst } from './check-against.js';
import { compareMel } from './compare-mel.js';
import type { Entry, MelContent, Row } from './content.js';
import { loadMel } from './load-mel.js';
import type { Mel } from './mel.js';
import { validMel } from './valid-mel.fixture.js';

const load = (change: (content: MelContent, row: Row) => void = () => undefined): Mel => {
  const content = validMel();
  const row = content.entries[0]?.subEntries[0]?.rows[0];
  if (row === undefined) throw new Error('no row');
  change(content, row);
  const loaded = loadMel(content, 'test.yaml');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
};

const master = load();
const against = (change: (content: MelContent, row: Row) => void) =>
  checkAgainst(master, load(change)).map(({ field, kind, reason }) => [field, kind, reason]);

describe('a MEL held against the master list', () => {
  it('stands when it says the same in other words', () => {
    const same = against((content, row) => {
      content.document = 'Another cover';
      row.remarks = 'Otherwise worded.';
      const proviso = row.provisos?.[0];
      if (proviso !== undefined) proviso.text = 'Otherwise worded.';
    });
    expect(same).toEqual([]);
  });

  // D-01, SEEN: category D where the master says C is less restrictive.
  it('is refused with category D where the master says C', () => {
    expect(against((_, row) => (row.category = 'D'))).toEqual([
      ['category', 'less-restrictive', 'category D stands against category C'],
    ]);
  });

  // D-02, SEEN-Q: category B where the master says C stands.
  it('stands with category B where the master says C, and with a shorter number of days', () => {
    expect(against((_, row) => (row.category = 'B'))).toEqual([]);
    expect(against((_, row) => (row.interval = '5 calendar-days'))).toEqual([]);
  });

  it('is refused with fewer required, and stands with more', () => {
    expect(against((_, row) => (row.numberRequired = 2))).toEqual([
      ['numberRequired', 'less-restrictive', '2 of 4 required stands against 3 of 4'],
    ]);
    expect(against((_, row) => (row.numberRequired = 4))).toEqual([]);
    const installed = (units: string[], numberRequired: number) =>
      against((content, row) => {
        const subEntry = content.entries[0]?.subEntries[0];
        if (subEntry !== undefined) subEntry.units = units;
        Object.assign(row, { numberInstalled: units.length, numberRequired });
      });
    expect(installed(['1', '2'], 1)).toEqual([
      ['numberRequired', 'less-restrictive', '1 of 2 required stands against 3 of 4'],
    ]);
    expect(installed(['1', '2', '3', '4', '5'], 3)).toEqual([
      ['numberRequired', 'less-restrictive', '3 of 5 required stands against 3 of 4'],
    ]);
  });

  it('is refused where a demand of the master is missing', () => {
    const drop = (key: keyof Row) => against((_, row) => delete row[key]);
    expect(drop('provisos')).toEqual([
      ['provisos', 'less-restrictive', expect.stringMatching(/^proviso a \(.*\) is missing$/)],
    ]);
    expect(drop('procedures').map(([field, kind]) => [field, kind])).toEqual([
      ['procedures', 'less-restrictive'],
      ['procedures', 'less-restrictive'],
    ]);
    expect(drop('placard')).toEqual([['placard', 'less-restrictive', 'the placard is missing']]);
    expect(drop('judgements')).toHaveLength(1);
    expect(drop('consideredInoperative')).toHaveLength(1);
    expect(drop('notes')).toHaveLength(1);
  });

  it('asks a person where a condition is another, or an interval is counted otherwise', () => {
    const reworded = against((_, row) => {
      const proviso = row.provisos?.[0];
      if (proviso !== undefined) proviso.when = { fact: 'flight.rvsm', operator: 'equal', value: false };
    });
    expect(reworded).toEqual([['provisos', 'unclear', expect.stringMatching(/has another condition/)]]);
    const flights = against((_, row) => Object.assign(row, { category: 'A', interval: '4 flights' }));
    expect(flights).toEqual([['category', 'unclear', 'category A, 4 flights stands against category C']]);
  });

  it('asks a person where a letter, which may be extended, stands for category A', () => {
    const strict = load((_, row) => Object.assign(row, { category: 'A', interval: '10 calendar-days' }));
    expect(checkAgainst(strict, master).map(({ field, kind }) => [field, kind])).toEqual([['category', 'unclear']]);
    expect(checkAgainst(master, strict)).toEqual([]);
  });

  it('is refused with relief for an item that the master does not list', () => {
    const relief = (content: MelContent, row: Row) => {
      const { consideredInoperative: _, ...own } = row;
      const subEntries = [{ id: 'a', units: ['1', '2', '3', '4'], rows: [own] }];
      content.entries.push({ number: '33-01', title: 'Lights', chapter: '33', subEntries });
    };
    expect(against(relief)).toEqual([['number', 'less-restrictive', expect.stringMatching(/no such entry/)]]);
  });

  it('asks a person when it is written for other aircraft, and takes a renamed row by what it says', () => {
    const other = against((content) => {
      const subEntry = content.entries[0]?.subEntries[0];
      if (subEntry !== undefined) subEntry.appliesTo = { configurations: ['X'] };
    });
    expect(other).toEqual([['appliesTo', 'unclear', expect.stringMatching(/same aircraft/)]]);
    expect(against((_, row) => (row.id = 'first'))).toEqual([]);
    expect(against((_, row) => Object.assign(row, { id: 'first', category: 'D' }))).toHaveLength(1);
  });
});

describe('two revisions compared', () => {
  const changes = (change: (content: MelContent, row: Row) => void) =>
    compareMel(master, load(change)).map(({ entry, row, what, field, weighing }) => [
      entry,
      row,
      what,
      field,
      weighing,
    ]);

  it('are alike when nothing was changed', () => {
    expect(compareMel(master, load())).toEqual([]);
  });

  it('differ by each change, weighed from the old one', () => {
    expect(changes((_, row) => (row.category = 'D'))).toEqual([
      ['32-42-01', '1', 'changed', 'category', 'less-restrictive'],
    ]);
    expect(changes((_, row) => (row.numberRequired = 4))).toEqual([
      ['32-42-01', '1', 'changed', 'numberRequired', 'more-restrictive'],
    ]);
    expect(changes((_, row) => (row.remarks = 'Otherwise.'))).toEqual([
      ['32-42-01', '1', 'changed', null, 'text-only'],
    ]);
    expect(changes((_, row) => (row.covers = ['1', '2']))).toEqual([
      ['32-42-01', '1', 'changed', 'covers', 'more-restrictive'],
    ]);
    expect(changes((_, row) => (row.incomplete = 'One page is missing.'))).toEqual([
      ['32-42-01', '1', 'changed', 'incomplete', 'more-restrictive'],
    ]);
  });

  it('differ by what came and what went', () => {
    const another: Entry = {
      number: '33-01',
      title: 'x',
      chapter: '33',
      subEntries: [{ id: 'a', units: ['1'], rows: [] }],
    };
    expect(changes((content) => content.entries.push(another))).toEqual([
      ['33-01', null, 'added', null, 'less-restrictive'],
    ]);
    expect(changes((content) => content.entries[0]?.subEntries[0]?.rows.pop())).toEqual([
      ['32-42-01', '1', 'removed', null, 'more-restrictive'],
    ]);
    expect(changes((_, row) => (row.id = '2')).map(([, row, what]) => [row, what])).toEqual([
      ['1', 'removed'],
      ['2', 'added'],
    ]);
  });
});
