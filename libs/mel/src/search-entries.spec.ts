import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadMel } from './load-mel.js';
import { searchEntries } from './search-entries.js';
import { validMel } from './valid-mel.fixture.js';
import { nearlyEqual } from './words.js';

const content = validMel();
content.entries.push(
  {
    number: '33-42-01',
    title: 'Landing lights',
    chapter: '33',
    words: ['lamp'],
    subEntries: [{ id: 'a', units: ['L'], rows: [] }],
  },
  {
    number: '34-43-01',
    title: 'Weather radar',
    chapter: '34',
    jasc: '3442',
    faultMessages: ['WXR 1 FAULT'],
    subEntries: [{ id: 'a', appliesTo: { configurations: ['RADAR'] }, units: ['1'], rows: [] }],
  },
);
const result = loadMel(content, 'test.yaml');
if ('errors' in result) throw new Error(JSON.stringify(result.errors));
const { mel } = result;
const aircraft = { type: 'T0', configuration: [], serial: null };
const found = (query: string) => searchEntries(mel, aircraft, query);
const numbers = (query: string) => found(query).map(({ entry }) => entry.number);

describe('searching entries', () => {
  it('finds by number, whole or begun, however it is written', () => {
    expect(numbers('32-42-01')[0]).toBe('32-42-01');
    expect(numbers('324201')[0]).toBe('32-42-01');
    expect(numbers('32 42')[0]).toBe('32-42-01');
    expect(found('32-42-01')[0]?.because[0]).toBe('number 32-42-01');
  });

  it('finds by words of the title, of the entry, and by begun words', () => {
    expect(numbers('landing')).toEqual(['33-42-01', '32-42-01', '32-51-01']);
    expect(numbers('lamp')).toEqual(['33-42-01']);
    expect(numbers('steer')[0]).toBe('32-51-01');
    expect(found('landing').map(({ because }) => because)).toEqual([
      ['title has "landing"'],
      ['system has "landing"'],
      ['system has "landing"'],
    ]);
  });

  it('puts the entry first that has most of the words', () => {
    expect(numbers('weather radar inop')[0]).toBe('34-43-01');
    expect(numbers('nose wheel')).toEqual(['32-51-01', '32-42-01']);
  });

  it('finds by chapter, JASC code and fault message', () => {
    expect(numbers('33')).toEqual(['33-42-01']);
    expect(numbers('3442')).toEqual(['34-43-01']);
    expect(found('BRAKE 3 FAULT')[0]).toMatchObject({ entry: { number: '32-42-01' } });
    expect(found('brake 3 fault')[0]?.because[0]).toBe('fault message "BRAKE 3 FAULT"');
  });

  it('forgives one slip in a word of five letters or more, and says so', () => {
    expect(found('steerign')[0]?.because).toEqual(['title has "steering", nearly "steerign"']);
    expect(numbers('raddar')).toEqual(['34-43-01']);
    expect(numbers('ludder')).toEqual([]);
  });

  it('says whether the entry is written for this aircraft', () => {
    expect(found('radar')[0]?.applies).toEqual({ kind: 'none' });
    expect(searchEntries(mel, { ...aircraft, configuration: null }, 'radar')[0]?.applies.kind).toBe('unknown');
    expect(searchEntries(mel, { ...aircraft, configuration: ['RADAR'] }, 'radar')[0]?.applies.kind).toBe('one');
  });

  it('finds nothing for nothing, and never throws', () => {
    expect(found('')).toEqual([]);
    expect(found(' -/ ')).toEqual([]);
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (query) => {
        expect(numbers(query)).toEqual(numbers(query));
      }),
      { numRuns: 500 },
    );
  });
});

/** Optimal string alignment distance by the textbook table: an oracle that shares nothing with the rule. */
const distance = (left: string, right: string): number => {
  const table = Array.from({ length: left.length + 1 }, (_, row) =>
    Array.from({ length: right.length + 1 }, (__, column) => (row === 0 ? column : column === 0 ? row : 0)),
  );
  const at = (row: number, column: number): number => table[row]?.[column] ?? Infinity;
  for (let row = 1; row <= left.length; row += 1) {
    for (let column = 1; column <= right.length; column += 1) {
      const cost = left[row - 1] === right[column - 1] ? 0 : 1;
      let best = Math.min(at(row - 1, column) + 1, at(row, column - 1) + 1, at(row - 1, column - 1) + cost);
      const swapped =
        row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1];
      if (swapped) best = Math.min(best, at(row - 2, column - 2) + 1);
      (table[row] as number[])[column] = best;
    }
  }
  return at(left.length, right.length);
};

describe('nearly equal words', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 5, maxLength: 8 });

  it('are those at most one edit or one swap apart', () => {
    fc.assert(
      fc.property(word, word, (left, right) => {
        expect(nearlyEqual(left, right)).toBe(distance(left, right) <= 1);
        expect(nearlyEqual(left, right)).toBe(nearlyEqual(right, left));
      }),
      { numRuns: 5000 },
    );
  });

  it('are never numbers or short words', () => {
    expect(nearlyEqual('12345', '12346')).toBe(false);
    expect(nearlyEqual('pump', 'pumps')).toBe(false);
  });
});
