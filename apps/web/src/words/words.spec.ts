import { describe, expect, it } from 'vitest';
import { readable, sentence } from './readable.js';
import { counted, itemName, pointerWords, standingOf, stepsOf, truthWords } from './words.js';

describe('words for what the interface codes', () => {
  it('tells what holds, what is to be done, what is refused and what nobody knows apart', () => {
    const all = ['T', 'U', 'F'] as const;
    const said = all.flatMap((now) => all.map((after) => `${now}${after} ${standingOf({ now, after })}`));
    expect(said.filter((line) => /^(TT|UU|FF|FT|FU|UT)/.test(line))).toEqual([
      'TT holds',
      'UT open',
      'UU open',
      'FT to-do',
      'FU open',
      'FF refused',
    ]);
    expect(truthWords({ now: 'U', after: 'F' })).toBe('does not hold');
    expect(truthWords({ now: 'F', after: 'U' })).toBe('to be done; not known whether it can be');
  });

  it('breaks a procedure into its sentences and leaves references whole', () => {
    expect(
      stepsOf('Open the door. On the call "open" turn the lever. "Close": see task 2.1 and K-AMM 80-12-11.'),
    ).toEqual(['Open the door.', 'On the call "open" turn the lever.', '"Close": see task 2.1 and K-AMM 80-12-11.']);
    expect(stepsOf('  One step only ')).toEqual(['One step only']);
  });

  it('counts one, many and none', () => {
    expect([0, 1, 2].map((count) => counted(count, 'open item', 'open items', 'nothing open'))).toEqual([
      'nothing open',
      '1 open item',
      '2 open items',
    ]);
  });

  it('names an item by title and unit, and says when nobody knows which', () => {
    const item = { title: 'Engine start valve', entry: '80-12-11', units: ['2'], oneOf: false };
    expect(itemName(item)).toBe('Engine start valve, 2');
    expect(itemName({ ...item, units: ['1', '2'], oneOf: true })).toBe(
      'Engine start valve, one of 1, 2: not known which',
    );
    expect(itemName({ ...item, entry: null, units: [] })).toBe('Engine start valve');
  });

  it('reads a pointer as words', () => {
    expect(pointerWords('/sign/secret')).toBe('sign secret');
    expect(pointerWords('/recordedAt')).toBe('recorded at');
  });

  it('reads instants in a sentence on the clock of the base, and roles as people call them', () => {
    const said = 'not inside: off blocks 2026-10-27T23:05:00.000Z, last day 2026-10-27; ask maintenance-control';
    expect(readable(said, 'Europe/Paris')).toBe(
      'not inside: off blocks 28 Oct 2026 00:05 (UTC+01:00), last day 2026-10-27; ask maintenance control',
    );
    expect(sentence('it is not done')).toBe('It is not done.');
    expect(sentence('Is it?')).toBe('Is it?');
  });
});
