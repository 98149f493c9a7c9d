/**
 * The published rows load clean: they are what the loader and the engine are judged by, and the dispatch cases stand on
 * them. Sources and marks stand beside each row in the files.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readMel, type Mel, type Row } from '#mel';

const load = (name: string): Mel => {
  const file = `published-rows-${name}.yaml`;
  const loaded = readMel(readFileSync(new URL(file, import.meta.url), 'utf8'), file);
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors, null, 2));
  return loaded.mel;
};

const rowsOf = (mel: Mel): Row[] => mel.entries.flatMap(({ subEntries }) => subEntries.flatMap(({ rows }) => rows));

describe.each(['t1', 't2', 'stand-ins'])('the published rows %s', (name) => {
  it('load without an error, each with its source and mark', () => {
    const rows = rowsOf(load(name));
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter(({ source }) => source?.document === undefined || source.mark === undefined)).toEqual([]);
  });
});

describe('the published columns', () => {
  const t1 = load('t1');
  const t2 = load('t2');
  const columns = (mel: Mel, number: string) =>
    mel
      .entry(number)
      ?.subEntries[0]?.rows.map((row) => [
        row.category,
        row.numberInstalled,
        row.numberRequired,
        [...new Set((row.procedures ?? []).map(({ kind }) => kind))].join(','),
      ]);

  // Category, installed, required, (M)(O) as the table prints them; SEEN-Q.
  it.each([
    [
      'P-01, P-02',
      t1,
      '22-10-01',
      [
        ['C', 2, 1, 'O'],
        ['B', 2, 0, 'O'],
      ],
    ],
    ['P-04', t1, '32-42-01', [['C', 4, 3, 'M,O']]],
    ['P-06', t1, '78-30-01', [['C', 2, 1, 'M,O']]],
    [
      'P-11, P-12',
      t1,
      '49-10-01',
      [
        ['C', 1, 0, 'O'],
        ['A', 1, 0, 'O'],
      ],
    ],
    ['P-28', t1, '30-11-01', [['C', 2, 0, 'M']]],
    [
      'P-58',
      t1,
      '49-30-01',
      [
        ['C', 1, 0, ''],
        ['A', 1, 0, ''],
      ],
    ],
    ['P-61', t1, '26-15-01', [['A', 1, 0, 'O']]],
    [
      'P-70',
      t1,
      '28-21-02',
      [
        ['C', 2, 1, 'O'],
        ['C', 2, 0, 'O'],
        ['C', 2, 0, 'O'],
      ],
    ],
    [
      'P-71',
      t1,
      '30-31-05',
      [
        ['C', 2, 1, ''],
        ['C', 2, 0, ''],
      ],
    ],
    [
      'P-76',
      t1,
      '33-40-02-1',
      [
        ['C', 2, 1, ''],
        ['C', 2, 0, ''],
      ],
    ],
    ['P-07', t2, '78-01-03', [['C', 2, 1, 'M,O']]],
    ['P-10', t2, '32-01', [['C', 1, 0, 'M']]],
    [
      'P-14, P-15',
      t2,
      '49-01-01',
      [
        ['C', 1, 0, ''],
        ['C', 1, 0, 'M,O'],
      ],
    ],
    ['P-30', t2, '30-05-02-01', [['B', 2, 1, '']]],
    ['P-36', t2, '24-01-02', [['B', 2, 1, 'M,O']]],
    ['P-91', t2, '30-05-01-01', [['B', 1, 0, '']]],
  ] as const)('of %s stand in the file', (_, mel, number, expected) => {
    expect(columns(mel, number)).toEqual(expected);
  });

  it('of P-09 differ by configuration, and an unknown configuration is said', () => {
    const aircraft = { type: 'T2', configuration: ['OLDER-MODEL'], serial: null };
    expect(t2.rowsOf('32-02', aircraft)?.[0]?.procedures?.map(({ kind }) => kind)).toEqual(['O']);
    expect(t2.matchSubEntry('32-02', { ...aircraft, configuration: null })).toMatchObject({
      kind: 'unknown',
      missing: ['configuration'],
    });
  });

  it('say which rows are held only in part', () => {
    const partly = (mel: Mel) =>
      mel.entries
        .filter(({ subEntries }) => subEntries.some(({ rows }) => rows.some((row) => row.incomplete !== undefined)))
        .map(({ number }) => number);
    expect(partly(t1)).toEqual(['29-25-01', '32-42-04', '78-30-01', '34-ADSB-IN', '34-GROUND-PROXIMITY']);
    expect(partly(t2)).toEqual([]);
  });
});
