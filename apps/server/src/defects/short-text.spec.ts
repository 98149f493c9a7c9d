import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstWords } from './short-text.js';

describe('the first words of a text', () => {
  it('are the whole text when it is short', () => {
    expect(firstWords('Left landing light out.', 60)).toBe('Left landing light out.');
  });

  it('end at a word, with no full stop before the ellipsis', () => {
    expect(firstWords('Bypass came on at descent, out again after landing. No change seen.', 54)).toBe(
      'Bypass came on at descent, out again after landing…',
    );
  });

  it('stand on one line', () => expect(firstWords('Left\n\n light  out', 60)).toBe('Left light out'));

  it('of a single long word are its beginning', () => expect(firstWords('x'.repeat(100), 10)).toBe('xxxxxxxxx…'));

  it('are never longer than asked, never half a character, and always begin as the text does', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 2, max: 30 }), (text, most) => {
        const words = firstWords(text, most);
        expect(words.length).toBeLessThanOrEqual(most);
        expect(words.isWellFormed()).toBe(true);
        expect(text.replace(/\s+/g, ' ').trim().startsWith(words.replace(/…$/, ''))).toBe(true);
      }),
    );
  });
});
