import fc from 'fast-check';
import { expect, it } from 'vitest';
import { csv } from './csv.js';

it.each([
  ['=HYPERLINK("x")', `"'=HYPERLINK(""x"")"`],
  ['+1', `"'+1"`],
  ['-2+3', `"'-2+3"`],
  ['@SUM(A1)', `"'@SUM(A1)"`],
  ['\t=1', `"' =1"`],
  ['\r\n=1', `"' =1"`],
  ['\uff1d1', `"'\uff1d1"`],
  ['\u200b=1', `"'\u200b=1"`],
  ['Q-KEA/3', '"Q-KEA/3"'],
  ['says "no"', '"says ""no"""'],
  ['two\nlines', '"two lines"'],
])('writes %j as %s', (text, cell) => {
  expect(csv([[text]])).toBe(`${cell}\r\n`);
});

it('gives back every row and cell, none of which begins as a formula does', () => {
  const cells = fc.array(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('=1', '@x', '"', ',', '\n')), {
    minLength: 1,
    maxLength: 4,
  });
  fc.assert(
    fc.property(fc.array(cells, { minLength: 1, maxLength: 4 }), (rows) => {
      const read = readBack(csv(rows));
      expect(read.map((row) => row.length)).toEqual(rows.map((row) => row.length));
      for (const cell of read.flat()) expect(cell).not.toMatch(/^\s*[=+\-@\t\r]/);
    }),
  );
});

/** A reader of its own, as RFC 4180 says. */
function readBack(text: string): string[][] {
  return text
    .split('\r\n')
    .slice(0, -1)
    .map((line) =>
      [...line.matchAll(/"((?:[^"]|"")*)"(?:,|$)/g)].map(([, cell]) => (cell ?? '').replaceAll('""', '"')),
    );
}
