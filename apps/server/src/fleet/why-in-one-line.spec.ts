import { describe, expect, it } from 'vitest';
import type { Verdict } from '#dispatch';
import { whyInOneLine } from './why-in-one-line.js';

const work = (text: string): Verdict['work'][number] => ({
  work: '80-12-11/1/M1',
  text,
  minutes: 5,
  by: 'technician',
  needsPersonAtStation: false,
  step: 1,
  needs: [],
  startsAfter: 0,
  endsAfter: 5,
});

const verdict = (over: Partial<Parameters<typeof whyInOneLine>[0]>) => ({
  verdict: 'after-work' as const,
  words: 'may fly after work',
  reasons: ['A long reason.'],
  work: [],
  workMinutes: null,
  ...over,
});

describe('why, in one line', () => {
  it('names the first two pieces of work without their steps, and counts the rest', () => {
    const open = [work('(M) Open the door by K-AMM 80.1. Turn the lever.'), work('placard "NO APU" at the switch')];
    expect(whyInOneLine(verdict({ work: open, workMinutes: 25 }))).toBe(
      '2 things to do, 25 min: (M) Open the door by K-AMM 80.1; placard "NO APU" at the switch.',
    );
    expect(whyInOneLine(verdict({ work: [...open, work('Sign row 1')], workMinutes: null }))).toMatch(
      /^3 things to do: .*; and 1 more\.$/,
    );
  });

  it('is the deciding reason of every other answer', () => {
    expect(whyInOneLine(verdict({ verdict: 'may-not-fly', work: [work('Sign row 1')] }))).toBe('A long reason.');
    expect(whyInOneLine(verdict({ verdict: 'may-fly', words: 'may fly', reasons: [] }))).toBe('may fly');
  });
});
