import fc from 'fast-check';
import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { checkMel, findingLine } from './check-mel.js';
import { readMel } from './read-mel.js';
import { validMel } from './valid-mel.fixture.js';

const reasonsFor = (text: string): string[] => {
  const read = readMel(text, 'test.yaml');
  return 'errors' in read ? read.errors.map(({ reason }) => reason) : [];
};

describe('reading a MEL file', () => {
  it('takes YAML and JSON, with LF or CRLF, and an alias or two', () => {
    expect(reasonsFor(stringify(validMel()))).toEqual([]);
    expect(reasonsFor(stringify(validMel()).replaceAll('\n', '\r\n'))).toEqual([]);
    expect(reasonsFor(JSON.stringify(validMel(), null, 2))).toEqual([]);
    expect(reasonsFor(stringify(validMel()).replace('title: Wheel brakes', 'title: &a Wheel brakes'))).toEqual([]);
  });

  it.each([
    ['nothing', '', /must be object/],
    ['a key twice', 'format: a\nformat: b', /"format" stands twice/],
    ['a key twice in JSON', '{"format": "a", "format": "b"}', /"format" stands twice/],
    ['a tag of its own', 'format: !code "x"', /the tag !code is not allowed/],
    ['a tag of a language', 'format: !!js/function "x"', /the tag !!js\/function/],
    ['two documents', 'format: a\n---\nformat: b', /multiple documents/],
    ['a prototype', '__proto__: { a: 1 }', /"__proto__" is not allowed/],
    ['a list as key', '? [a, b]\n: 1', /a key is not a plain text/],
    ['an escaped control character', 'format: "\\u0000"', /U\+0000/],
    ['deep lists', '['.repeat(50_000), /nested more than 80 deep/],
    ['deep lists in block style', '- '.repeat(50_000), /one line opens more than 40 levels/],
    ['a staircase', Array.from({ length: 900 }, (_, at) => `${' '.repeat(at)}a:`).join('\n'), /indented by more/],
    ['many anchors', '&a '.repeat(50_000), /more than 100 anchors/],
    ['many keys', Array.from({ length: 300 }, (_, at) => `k${at}: 1`).join('\n'), /more than 200 keys/],
    ['many values', `a: [${'1,'.repeat(400_000)}]`, /more than 600000 words/],
    ['five megabytes and more', `a: ${'x'.repeat(5_000_000)}`, /longer than 5000000/],
  ])('refuses %s', (_, text, reason) => {
    expect(reasonsFor(text)[0]).toMatch(reason);
  });

  it('refuses aliases that multiply', () => {
    const bomb = ['a: &a [x,x,x,x,x,x,x,x,x]'];
    for (const [at, name] of [...'bcdefgh'].entries()) {
      bomb.push(`${name}: &${name} [${Array(9).fill(`*${'abcdefg'[at]}`).join(',')}]`);
    }
    expect(reasonsFor(bomb.join('\n'))).toEqual([expect.stringMatching(/alias/i)]);
  });

  it('takes signs in texts for texts', () => {
    const texts = { ...validMel(), notice: '- !not a tag & * [ {\n- ? : !' };
    expect(reasonsFor(stringify(texts, { defaultStringType: 'QUOTE_DOUBLE', defaultKeyType: 'PLAIN' }))).toEqual([]);
    expect(reasonsFor(stringify(texts))).toEqual([]);
  });

  it('never throws, whatever the text', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'ab:-?[]{},&*!|>\'"%@#\n\t  \r\\1') });
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), signs), (text) => {
        expect(reasonsFor(text).length).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('checking a file for the command', () => {
  it('says what a good file holds', () => {
    const check = checkMel(stringify(validMel()), 'good.yaml');
    expect(check.findings).toEqual([]);
    expect(check.holds).toMatchObject({ aircraftType: 'T0', revision: '1', entries: 2, rows: 1, incomplete: [] });
  });

  it('lists findings with file, entry, place and reason, and holds nothing', () => {
    const check = checkMel(stringify(validMel()).replace('numberRequired: 3', 'numberRequired: 5'), 'bad.yaml');
    expect(check.holds).toBeNull();
    expect(check.findings.map(findingLine)).toEqual([
      'bad.yaml: entry 32-42-01: /entries/0/subEntries/0/rows/0/numberRequired: 5 required of 4 installed',
    ]);
  });
});
