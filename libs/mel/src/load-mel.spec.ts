import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { loadMel } from './load-mel.js';
import { MEL_SCHEMA } from './mel-schema.js';
import { spoilt, validMel } from './valid-mel.fixture.js';

const ROW = '/entries/0/subEntries/0/rows/0';

const errorsOf = (value: unknown) => {
  const loaded = loadMel(value, 'test.yaml');
  return 'errors' in loaded ? loaded.errors : [];
};

describe('loading a MEL', () => {
  it('loads a valid one and freezes it to the last leaf', () => {
    const loaded = loadMel(validMel(), 'test.yaml');
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    const row = loaded.mel.entry('32-42-01')?.subEntries[0]?.rows[0];
    expect(() => ((row as { category: string }).category = 'D')).toThrow(TypeError);
    expect(Object.isFrozen(row?.provisos?.[0]?.when)).toBe(true);
  });

  it('keeps nothing of the value it was given', () => {
    const given = validMel();
    const loaded = loadMel(given, 'test.yaml');
    given.entries = [];
    expect('mel' in loaded && loaded.mel.entries.length).toBe(2);
  });

  it('takes the number of units where a row does not say how many are installed', () => {
    const loaded = loadMel(spoilt(`${ROW}/numberInstalled`, undefined), 'test.yaml');
    expect('mel' in loaded && loaded.mel.entry('32-42-01')?.subEntries[0]?.rows[0]?.numberInstalled).toBe(4);
  });

  it('lists every error of a file with file, entry, field and reason, and loads nothing', () => {
    const content = validMel();
    const row = content.entries[0]?.subEntries[0]?.rows[0];
    if (row === undefined) throw new Error('no row');
    row.numberRequired = 5;
    row.covers = ['9'];
    content.effectiveOn = '2026-02-30';
    expect(errorsOf(content)).toEqual([
      {
        file: 'test.yaml',
        entry: null,
        field: '/effectiveOn',
        reason: '"2026-02-30" is not a day of the calendar',
      },
      {
        file: 'test.yaml',
        entry: '32-42-01',
        field: `${ROW}/numberRequired`,
        reason: '5 required of 4 installed',
      },
      {
        file: 'test.yaml',
        entry: '32-42-01',
        field: `${ROW}/covers/0`,
        reason: '"9" is no unit of this sub-entry',
      },
    ]);
  });

  it('reports at most 200 errors', () => {
    const entries = Array.from({ length: 300 }, () => ({ ...validMel().entries[1], chapter: 'x' }));
    expect(errorsOf({ ...validMel(), entries })).toHaveLength(200);
  });
});

describe('intervals of category A', () => {
  const row = (more: object) => {
    const content = validMel() as unknown as { entries: { subEntries: { rows: object[] }[] }[] };
    const rows = content.entries[0]?.subEntries[0]?.rows ?? [];
    rows[0] = { ...rows[0], category: 'A', ...more };
    return errorsOf(content);
  };

  it('may differ by unit when every relieved unit has one', () => {
    const byUnit = { '1': '2 flight-days', '2': '3 flight-days' };
    expect(row({ covers: ['1', '2'], intervalByUnit: byUnit })).toEqual([]);
    expect(row({ intervalByUnit: byUnit }).map(({ reason }) => reason)).toEqual([
      'unit "3" has no interval',
      'unit "4" has no interval',
    ]);
    expect(row({ interval: '5 flights', intervalByUnit: { '7': '2 flights' } })[0]?.reason).toMatch(
      /no unit that this row/,
    );
  });

  it('belong to category A alone', () => {
    expect(row({ category: 'C', intervalByUnit: { '1': '2 flights' } })[0]?.reason).toMatch(/only category A/);
  });
});

describe('the published schema', () => {
  it('is a schema of draft 2020-12, frozen, with a name of its own', () => {
    expect(new Ajv2020().validateSchema(MEL_SCHEMA)).toBe(true);
    expect(Object.isFrozen(MEL_SCHEMA['$defs'])).toBe(true);
    expect(MEL_SCHEMA['$id']).toBe('urn:proviso:mel:1');
  });
});
