import { describe, expect, it } from 'vitest';
import { loadMel } from './load-mel.js';
import { judgementsOf, leavesOf, worksOf, type Mel } from './mel.js';
import { spoilt, validMel } from './valid-mel.fixture.js';

const loaded = (value: unknown): Mel => {
  const result = loadMel(value, 'test.yaml');
  if ('errors' in result) throw new Error(JSON.stringify(result.errors));
  return result.mel;
};

const units = ['L', 'R'];
const configured = loaded(
  spoilt('/entries/1/subEntries', [
    { id: 'old', units, rows: [], appliesTo: { configurations: ['OLD'], serials: [{ from: 1, to: 99 }] } },
    { id: 'new', units, rows: [], appliesTo: { configurations: ['NEW'] } },
    { id: 'other', units, rows: [], appliesTo: { types: ['T9'], configurations: ['OTHER'] } },
  ]),
);
const aircraft = { type: 'T0', configuration: ['OLD'], serial: 50 };
const matchFor = (more: object) => configured.matchSubEntry('32-51-01', { ...aircraft, ...more });

describe('the sub-entry for an aircraft', () => {
  it('is the one whose type, configuration and serial all fit', () => {
    expect(matchFor({})).toMatchObject({ kind: 'one', subEntry: { id: 'old' } });
    expect(matchFor({ configuration: ['NEW', 'X'], serial: null })).toMatchObject({
      kind: 'one',
      subEntry: { id: 'new' },
    });
  });

  it('is none when nothing fits, or there is no such entry', () => {
    expect(matchFor({ serial: 100 })).toEqual({ kind: 'none' });
    expect(matchFor({ configuration: [] })).toEqual({ kind: 'none' });
    expect(configured.matchSubEntry('99-99-99', aircraft)).toEqual({ kind: 'none' });
  });

  it('is unknown, and says what is missing, when the aircraft is not known well enough', () => {
    expect(matchFor({ configuration: null })).toMatchObject({
      kind: 'unknown',
      candidates: [{ id: 'old' }, { id: 'new' }],
      missing: ['configuration'],
    });
    expect(matchFor({ serial: null })).toMatchObject({
      kind: 'unknown',
      candidates: [{ id: 'old' }],
      missing: ['serial'],
    });
  });

  it('is unknown when the aircraft carries the codes of two', () => {
    expect(matchFor({ configuration: ['OLD', 'NEW'] })).toMatchObject({ kind: 'unknown', missing: [] });
  });

  it('gives units and rows only when it is one', () => {
    expect(configured.unitsOf('32-51-01', aircraft)).toEqual(['L', 'R']);
    expect(configured.unitsOf('32-51-01', { ...aircraft, configuration: null })).toBeNull();
    expect(configured.rowsOf('32-42-01', aircraft)?.map(({ id }) => id)).toEqual(['1']);
    expect(configured.row('32-42-01', '1', aircraft)?.row.category).toBe('C');
    expect(configured.row('32-42-01', '2', aircraft)).toBeUndefined();
  });
});

describe('a row', () => {
  const row = loaded(validMel()).rowsOf('32-42-01', aircraft)?.[0];
  if (row === undefined) throw new Error('no row');

  it('lists its leaves in the order written', () => {
    expect(leavesOf(row).map(({ fact }) => fact)).toEqual(['entry.up', 'flight.runwayWidthMetres']);
  });

  it('lists its works with the placard last, and its judgements', () => {
    expect(worksOf('32-42-01', row)).toEqual(['32-42-01/1/M1', '32-42-01/1/O1', '32-42-01/1/placard']);
    expect(judgementsOf('32-42-01', row)).toEqual(['32-42-01/1/J1']);
  });
});
