import { Vector3vl } from '3vl';
import fc from 'fast-check';
import { Engine } from 'json-rules-engine';
import { describe, expect, it } from 'vitest';
import { factKey, type Condition, type ConditionLeaf, type Operator } from '#mel';
import type { Truth } from '../verdict.js';
import { compares } from './compare.js';
import { Possible, Unknown, type FactValue, type Scalar } from './marker.js';
import { compileProviso } from './proviso-engine.js';

const UNKNOWN = new Unknown('nobody has said');
const ICING = ['none', 'forecast', 'known'];

// One leaf per kind of fact; values are drawn from small domains so that both answers are common.
const level: fc.Arbitrary<ConditionLeaf> = fc.record({
  fact: fc.constant('flight.level'),
  operator: fc.constantFrom<Operator>(
    'equal',
    'lessThan',
    'lessThanInclusive',
    'greaterThan',
    'greaterThanInclusive',
  ),
  value: fc.constantFrom(1, 2, 3),
});
const icing: fc.Arbitrary<ConditionLeaf> = fc.oneof(
  fc.record({
    fact: fc.constant('flight.icing'),
    operator: fc.constantFrom<Operator>('equal', 'notEqual'),
    value: fc.constantFrom(...ICING),
  }),
  fc.record({
    fact: fc.constant('flight.icing'),
    operator: fc.constantFrom<Operator>('in', 'notIn'),
    value: fc.subarray(ICING, { minLength: 1 }),
  }),
);
const rvsm: fc.Arbitrary<ConditionLeaf> = fc.record({
  fact: fc.constant('flight.rvsm'),
  operator: fc.constantFrom<Operator>('equal', 'notEqual'),
  value: fc.boolean(),
});
const up: fc.Arbitrary<ConditionLeaf> = fc.record({
  fact: fc.constant('entry.up'),
  operator: fc.constant<Operator>('greaterThanInclusive'),
  value: fc.constantFrom(1, 2),
  params: fc.constantFrom({ entry: '32-42' }, { entry: '32-42', units: ['2', '1'] }),
});
const work: fc.Arbitrary<ConditionLeaf> = fc.record({
  fact: fc.constant('work.done'),
  operator: fc.constant<Operator>('equal'),
  value: fc.constant(true),
  params: fc.constant({ work: '32-42/1/M1' }),
});
const leaf = fc.oneof(level, icing, rvsm, up, work);
const { tree } = fc.letrec<{ tree: Condition }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaf,
    fc.array(tie('tree'), { minLength: 1, maxLength: 4 }).map((all) => ({ all })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 4 }).map((any) => ({ any })),
    tie('tree').map((not) => ({ not })),
  ),
}));

const count = fc.integer({ min: 0, max: 3 });
const range = fc
  .tuple(count, count)
  .map(([a, b]) => [...Array(4).keys()].filter((n) => n >= Math.min(a, b) && n <= Math.max(a, b)));
const counted = range.map((values): FactValue => (values.length === 1 ? values[0]! : new Possible(values, values)));
const pair = fc.constantFrom<FactValue>(
  true,
  new Possible([false], [true]),
  new Possible([false], [false, true]),
  false,
);
const or = (value: fc.Arbitrary<FactValue>) =>
  fc.oneof({ weight: 2, arbitrary: value }, fc.constant<FactValue>(UNKNOWN));
const facts = fc.record<Record<string, FactValue>>({
  'flight.level': or(fc.constantFrom(0, 1, 2, 3)),
  'flight.icing': or(fc.constantFrom(...ICING)),
  'flight.rvsm': or(fc.boolean()),
  'entry.up[32-42]': counted,
  'entry.up[32-42/1+2]': counted,
  'work.done[32-42/1/M1]': pair,
});

const BIT: Record<Truth, string> = { F: '0', U: 'x', T: '1' };
const FROM_BIT: Record<string, Truth> = { '0': 'F', x: 'U', '1': 'T' };

// The oracle knows nothing of the engine: it computes with 3vl vectors of two bits, [after, now].
function oracle(condition: Condition, values: Record<string, FactValue>): Vector3vl {
  if ('all' in condition) return condition.all.map((c) => oracle(c, values)).reduce((a, b) => a.and(b));
  if ('any' in condition) return condition.any.map((c) => oracle(c, values)).reduce((a, b) => a.or(b));
  if ('not' in condition) return oracle(condition.not, values).not();
  const value = values[factKey(condition)]!;
  if (value instanceof Unknown) return Vector3vl.fromBin('xx');
  const sides = value instanceof Possible ? [value.after, value.now] : [[value], [value]];
  return Vector3vl.fromBin(sides.map((side) => BIT[truthOver(side, condition)]).join(''));
}

function truthOver(values: readonly Scalar[], { operator, value }: ConditionLeaf): Truth {
  const answers = new Set(
    values.map((v) => {
      const listed = Array.isArray(value) && value.includes(v as string);
      if (operator === 'in' || operator === 'notIn') return listed === (operator === 'in');
      if (operator === 'equal' || operator === 'notEqual') return (v === value) === (operator === 'equal');
      const difference = Math.sign(Number(v) - Number(value));
      return { lessThan: [-1], lessThanInclusive: [-1, 0], greaterThan: [1], greaterThanInclusive: [0, 1] }[
        operator
      ].includes(difference);
    }),
  );
  return answers.size > 1 ? 'U' : answers.has(true) ? 'T' : 'F';
}

const proviso = (when: Condition) => ({ id: 'a', text: 'a proviso', when });
const lookupIn = (values: Record<string, FactValue>) => (key: string) => ({ value: values[key] ?? UNKNOWN });

describe('the engine of one proviso', () => {
  it('gives the Kleene values of its tree, now and after, on random trees and facts', async () => {
    await fc.assert(
      fc.asyncProperty(tree, facts, async (when, values) => {
        const answer = await compileProviso(proviso(when)).judge(lookupIn(values));
        const [after, now] = [...oracle(when, values).toBin()].map((bit) => FROM_BIT[bit]);
        expect({ now: answer.now, after: answer.after }).toEqual({ now, after });
      }),
      { numRuns: 3000 },
    );
  });

  it('says unknown where the engine itself says yes: not and notEqual about a fact that nobody has given', async () => {
    const trees: Condition[] = [
      { not: { fact: 'flight.icing', operator: 'equal', value: 'known' } },
      { fact: 'flight.icing', operator: 'notEqual', value: 'known' },
      { fact: 'flight.icing', operator: 'notIn', value: ['known', 'forecast'] },
    ];
    for (const when of trees) {
      const answer = await compileProviso(proviso(when)).judge(() => ({ value: UNKNOWN }));
      expect([answer.now, answer.after]).toEqual(['U', 'U']);
    }
  });

  it('explains a leaf with its sentence, key, value and source, and an unknown one with its question', async () => {
    const when: Condition = {
      all: [
        { fact: 'flight.rvsm', operator: 'equal', value: false, text: 'the flight stays out of RVSM airspace' },
        { fact: 'flight.icing', operator: 'equal', value: 'none' },
      ],
    };
    const answer = await compileProviso(proviso(when)).judge((key) =>
      key === 'flight.rvsm'
        ? { value: false, source: 'flight plan', validUntil: '2026-05-14T06:00Z' }
        : { value: UNKNOWN },
    );
    expect(answer.children).toMatchObject([
      {
        text: 'the flight stays out of RVSM airspace',
        fact: 'flight.rvsm',
        expected: false,
        actual: false,
        known: true,
        source: 'flight plan',
        validUntil: '2026-05-14T06:00Z',
        now: 'T',
      },
      {
        text: 'icing is none',
        actual: null,
        known: false,
        because: 'nobody has said',
        mayAnswer: ['dispatcher', 'commander'],
        question: 'Is icing known or forecast anywhere on the flight?',
        now: 'U',
      },
    ]);
  });

  it('looks at its rule even when runs of the same engine overlap', async () => {
    const compiled = compileProviso(proviso({ fact: 'flight.rvsm', operator: 'equal', value: true }));
    const runAfter = async (turns: number, value: boolean) => {
      for (let turn = 0; turn < turns; turn++) await Promise.resolve();
      return (await compiled.judge(() => ({ value }))).now;
    };
    for (let turns = 0; turns < 60; turns++) {
      expect(await Promise.all([runAfter(0, true), runAfter(turns, false)])).toEqual(['T', 'F']);
    }
  });

  it('compares single values as the engine does', async () => {
    const operators: Operator[] = [
      'equal',
      'notEqual',
      'lessThan',
      'lessThanInclusive',
      'greaterThan',
      'greaterThanInclusive',
      'in',
      'notIn',
    ];
    for (const operator of operators) {
      const listed = operator === 'in' || operator === 'notIn';
      for (const expected of listed ? [['a', 2], [3]] : [true, 'a', 2]) {
        const engine = new Engine([
          { conditions: { all: [{ fact: 'f', operator, value: expected }] }, event: { type: 'x' } },
        ]);
        for (const value of [true, false, 'a', 'b', '5', 1, 2, 3]) {
          const { results } = await engine.run({ f: value });
          expect([operator, expected, value, compares(value, operator, expected as Scalar)]).toEqual([
            operator,
            expected,
            value,
            results.length === 1,
          ]);
        }
      }
    }
  });
});
