import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { finds } from './finds.js';

describe('finding one of many', () => {
  it.each([
    ['', 'Q-KEA'],
    ['qkea', 'Q-KEA'],
    ['Q-KEA', 'Q-KEA'],
    ['  kea ', 'Q-KEA'],
    ['vask odrin', 'Odrin Vask, technician'],
    ['elodie', 'Élodie'],
  ])('"%s" finds %s', (typed, text) => {
    expect(finds(typed, text)).toBe(true);
  });

  it.each([
    ['qkeb', 'Q-KEA'],
    ['odrin quality', 'Odrin Vask, technician'],
  ])('"%s" does not find %s', (typed, text) => {
    expect(finds(typed, text)).toBe(false);
  });

  it('finds a text by any part of any of its words, in any order', () => {
    const word = fc.stringMatching(/^[A-Za-z0-9-]{1,8}$/).filter((text) => /[A-Za-z0-9]/.test(text));
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 6 }), fc.nat(), (words, start) => {
        const typed = words.map((one) => one.slice(start % one.length)).toReversed();
        return finds(typed.join(' '), words.join(' ')) && finds(words.join(' ').toUpperCase(), words.join(' '));
      }),
    );
  });
});
