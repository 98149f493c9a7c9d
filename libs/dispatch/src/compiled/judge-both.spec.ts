import { describe, expect, it } from 'vitest';
import type { Condition } from '#mel';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';
import { closureOf } from './closures-of-mel.js';
import { judgeBoth } from './judge-both.js';

const rvsm: Condition = { fact: 'flight.rvsm', operator: 'equal', value: false };
const up: Condition = {
  fact: 'entry.up',
  operator: 'greaterThanInclusive',
  value: 1,
  params: { entry: '30-02' },
};
const mel = melOf(entry('30-01', [{ provisos: [rvsm, up] }]), entry('30-02', [{}]));
const situation = situationOf([{ entry: '30-01' }], { facts: { 'flight.rvsm': { value: false } } });

describe('judging by both evaluators', () => {
  it('gives the answer of the rules engine when they agree', async () => {
    const both = await judgeBoth(mel, situation);
    expect(both.disagreement).toBeNull();
    expect(both.verdict).toEqual(await judge(mel, situation));
  });

  it('tells a disagreement with both trees', async () => {
    const lying: typeof closureOf = (of, proviso) => {
      const closure = closureOf(of, proviso);
      if (proviso.id !== 'p1') return closure;
      return { ...closure, judge: (lookup) => ({ ...closure.judge(lookup), now: 'F', after: 'F' }) };
    };
    const { verdict, disagreement } = await judgeBoth(mel, situation, lying);
    expect(verdict.verdict).toBe('may-fly');
    expect(disagreement).toMatchObject({
      engine: { verdict: 'may-fly', lo: 'may-fly', hi: 'may-fly' },
      compiled: { verdict: 'may-not-fly', lo: 'may-not-fly', hi: 'may-not-fly' },
    });
    expect(disagreement?.conditions).toMatchObject([
      {
        where: '30-01/1 (D1): 30-01/1/p1',
        engine: { now: 'T', tree: { node: 'leaf', now: 'T', fact: 'flight.rvsm' } },
        compiled: { now: 'F', tree: { node: 'leaf', now: 'F', fact: 'flight.rvsm' } },
      },
    ]);
  });
});
