import { readFileSync } from 'node:fs';
import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { canonicalize as secondOpinion } from 'json-canonicalize';
import { describe, expect, it } from 'vitest';
import { canonicalText, recordBytes, Unrecordable } from './index.js';

interface Vectors {
  source: string;
  pairs: { name: string; input: string; output: string; outputHex: string }[];
  numbers: [bits: string, text: string][];
}

const path = new URL('../../../tests/vectors/canonical-json.json', import.meta.url);
const vectors = JSON.parse(readFileSync(path, 'utf8')) as Vectors;

describe(`the canonical form, against ${vectors.source}`, () => {
  it.each(vectors.pairs)('gives the published text of $name', ({ input, output, outputHex }) => {
    expect(canonicalText(JSON.parse(input))).toBe(output);
    expect(Buffer.from(canonicalText(JSON.parse(input))).toString('hex')).toBe(outputHex);
  });

  it.each(vectors.numbers)('writes the double %s as %s', (bits, text) => {
    expect(canonicalText(Buffer.from(bits, 'hex').readDoubleBE(0))).toBe(text);
  });
});

describe('the canonical form', () => {
  it('agrees with a second implementation on any JSON value without lone surrogates', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5, stringUnit: 'binary' }), (value) => {
        expect(canonicalText(value)).toBe(secondOpinion(value));
      }),
    );
  });

  it('reads back as the value it was made of, and is the same for the same members in another order', () => {
    const json = fc.jsonValue({ maxDepth: 4, noUnicodeString: false });
    fc.assert(
      fc.property(fc.dictionary(fc.string(), json), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse());
        expect(canonicalText(turned)).toBe(canonicalText(value));
        expect(canonicalText(JSON.parse(canonicalText(value)))).toBe(canonicalText(value));
      }),
    );
  });

  it('keeps a member named __proto__ that came out of JSON', () => {
    expect(canonicalText(JSON.parse('{"b":1,"__proto__":{"a":2}}'))).toBe('{"__proto__":{"a":2},"b":1}');
  });

  it('refuses a lone surrogate, where the second implementation lets it pass', () => {
    expect(secondOpinion('\ud800')).toBe('"\\ud800"');
    expect(() => canonicalText({ remarks: ['ok', 'a\ud800b'] })).toThrow(
      'The value at "/remarks/1" holds a lone surrogate, which is not a character.',
    );
    expect(() => canonicalText({ '\udc00': 1 })).toThrow(Unrecordable);
  });
});

describe('the bytes of an entry', () => {
  class Stand {
    gate = 4;
  }
  const looped: Record<string, unknown> = {};
  looped['inner'] = { looped };
  const deep = JSON.parse('['.repeat(200) + ']'.repeat(200)) as unknown;
  const named = Object.assign([1], { extra: 2 });
  // eslint-disable-next-line no-sparse-arrays
  const holed = [1, , 3];

  it.each([
    ['undefined', { a: { b: undefined } }, '/a/b', 'is of type undefined, which JSON cannot hold.'],
    ['a BigInt', [1n], '/0', 'is of type bigint, which JSON cannot hold.'],
    ['a function', { toJSON: () => 1 }, '/toJSON', 'is of type function, which JSON cannot hold.'],
    ['a symbol', [Symbol('x')], '/0', 'is of type symbol, which JSON cannot hold.'],
    ['a Date', { at: new Date(0) }, '/at', 'is no plain object (Date): write instants and numbers as text first.'],
    ['a Map', { a: new Map() }, '/a', 'is no plain object (Map): write instants and numbers as text first.'],
    [
      'an object of a class',
      [new Stand()],
      '/0',
      'is no plain object (Stand): write instants and numbers as text first.',
    ],
    ['NaN', [NaN], '/0', 'is NaN, which JSON cannot hold.'],
    ['infinity', [-Infinity], '/0', 'is -Infinity, which JSON cannot hold.'],
    [
      'a rounded integer',
      { n: 2 ** 53 },
      '/n',
      'is 9007199254740992, an integer beyond 2^53 - 1 that may already be rounded.',
    ],
    ['U+0000 in a text', { t: 'a\u0000b' }, '/t', 'holds the character U+0000.'],
    ['U+0000 in a key', { 'a\u0000': 1 }, '/a\u0000', 'holds the character U+0000.'],
    ['a hole', holed, '', 'is a list with holes or with named members.'],
    ['a list with members', { named }, '/named', 'is a list with holes or with named members.'],
    ['a cycle', looped, '/inner/looped', 'contains itself.'],
    ['200 levels', deep, '/0'.repeat(100), 'lies deeper than 100 levels.'],
    ['a getter', Object.defineProperty({}, 'g', { get: () => 1, enumerable: true }), '/g', 'is computed or hidden.'],
    ['a hidden member', Object.defineProperty({}, 'g', { value: 1 }), '/g', 'is computed or hidden.'],
    ['a symbol key', { [Symbol('x')]: 1 }, '', 'has members named by symbols.'],
    ['a key with / and ~', { 'a/b~c': undefined }, '/a~1b~0c', 'is of type undefined, which JSON cannot hold.'],
  ])('refuse %s and say where', (_what, value, pointer, reason) => {
    expect(() => recordBytes(value)).toThrow(expect.objectContaining({ name: 'Unrecordable', pointer, reason }));
  });

  it('keep a sentence short and printable whatever the key', () => {
    const refusal = catching(() => recordBytes({ [`\u0007${'k'.repeat(1_000_000)}`]: undefined }));
    expect(refusal.message.length).toBeLessThan(300);
    expect(refusal.message).toMatch(/^The value at "\/\\u0007k+\.\.\." is of type undefined/);
    expect(catching(() => recordBytes(undefined)).message).toBe(
      'The value at the top is of type undefined, which JSON cannot hold.',
    );
  });

  it('are the canonical text in UTF-8 for whatever they accept', () => {
    const number = fc.oneof(
      fc.maxSafeInteger(),
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
    );
    const leaf = fc.oneof(number, fc.string({ unit: 'grapheme' }), fc.boolean(), fc.constant(null));
    const value = fc.letrec((tie) => ({
      any: fc.oneof({ maxDepth: 4 }, leaf, fc.array(tie('any')), fc.dictionary(fc.string(), tie('any'))),
    })).any;
    fc.assert(
      fc.property(value, (accepted) => {
        expect(new TextDecoder().decode(recordBytes(accepted))).toBe(canonicalize(accepted));
      }),
    );
  });
});

function catching(act: () => unknown): Error {
  try {
    act();
  } catch (thrown) {
    return thrown as Error;
  }
  throw new Error('Nothing was thrown.');
}
