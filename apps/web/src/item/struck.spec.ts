import { describe, expect, it } from 'vitest';
import { struckPieces } from './struck.js';

describe('what was corrected is struck', () => {
  const words = 'Rectified: lamp changed (AMM 33); part PN-1, serial S-1 fitted';

  it.each([
    [[], [[words, false]]],
    [['not there'], [[words, false]]],
    [[null, ''], [[words, false]]],
    [
      ['Rectified'],
      [
        ['Rectified', true],
        [words.slice(9), false],
      ],
    ],
    [
      ['serial S-1 fitted', 'part PN-1'],
      [
        ['Rectified: lamp changed (AMM 33); ', false],
        ['part PN-1', true],
        [', ', false],
        ['serial S-1 fitted', true],
      ],
    ],
  ] as const)('%j', (corrected, pieces) => {
    expect(struckPieces(words, corrected).map(({ text, struck }) => [text, struck])).toEqual(pieces);
  });

  it('never loses or repeats a character', () => {
    for (const corrected of [['a'], ['a', 'a'], ['abc', 'b'], ['b', 'abc'], ['abcabc']]) {
      const pieces = struckPieces('abcabc', corrected);
      expect(pieces.map(({ text }) => text).join('')).toBe('abcabc');
    }
  });
});
