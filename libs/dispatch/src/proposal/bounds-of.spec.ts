import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { boundsOf } from './bounds-of.js';

const needs = (other: string) => ({
  provisos: [{ fact: 'entry.up', operator: 'greaterThanInclusive' as const, value: 1, params: { entry: other } }],
});
const takes = (...entries: string[]) => ({ consideredInoperative: entries.map((one) => ({ entry: one })) });

describe('bounds alone', () => {
  it('are those of the best rows, signed or not', () => {
    const mel = melOf(entry('a', [needs('b'), {}]), entry('b', [{}]));
    const both = situationOf([{ entry: 'a' }, { entry: 'b' }]);
    expect(boundsOf(mel, both)).toEqual({ verdict: 'after-work', lo: 'after-work', hi: 'after-work', isWhole: true });
    expect(boundsOf(mel, situationOf([{ entry: 'a' }]))).toMatchObject({ verdict: 'may-fly' });
  });

  it('say nothing open of an aircraft without defects, and not of one with work that is not released', () => {
    const mel = melOf(entry('a', [{}]));
    expect(boundsOf(mel, situationOf([])).verdict).toBe('nothing-open');
    const gates = { unanswered: [], openWork: ['panel 7'], orphans: [] };
    expect(boundsOf(mel, situationOf([], { gates })).verdict).toBe('may-not-fly');
  });

  it('say so when the search was given up, and are then no reason to stay on the ground', () => {
    const mel = melOf(entry('a', [takes('b')]), entry('b', [needs('a'), needs('c'), {}]), entry('c', [{}]));
    const situation = situationOf([{ entry: 'a' }]);
    expect(boundsOf(mel, situation, { budget: 1 })).toMatchObject({ verdict: 'not-settled', isWhole: false });
    expect(boundsOf(mel, situation)).toMatchObject({ verdict: 'may-fly', isWhole: true });
  });

  it('stay open where defects can be read in too many ways to tell them apart', () => {
    const names = ['a', 'b', 'c', 'd'];
    const units = ['1', '2', '3'];
    const mel = melOf(...names.map((name) => entry(name, [{}], units)));
    const situation = situationOf(names.map((name) => ({ entry: name, units })));
    expect(boundsOf(mel, situation)).toEqual({
      verdict: 'not-settled',
      lo: 'may-not-fly',
      hi: 'may-fly',
      isWhole: false,
    });
  });
});
