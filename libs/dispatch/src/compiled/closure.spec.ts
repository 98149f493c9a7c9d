/** Both evaluators on random trees and facts: the same value, and the same explained tree, word for word. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Condition, ConditionLeaf } from '#mel';
import { Possible, Unknown, type FactView } from '../evaluate/marker.js';
import { compileProviso } from '../evaluate/proviso-engine.js';
import { compileClosure } from './closure.js';
import { codeOf } from './code.js';

type Value = string | number | boolean;

const NUMBERS = [0, 1, 2, 100, 120, 121];
const ICING = ['none', 'forecast', 'known'];
const DOMAINS: Record<string, Value[]> = {
  'flight.rvsm': [true, false],
  'flight.icing': ICING,
  'flight.etopsMinutes': NUMBERS,
  'flight.level': NUMBERS,
  'entry.up[30-01]': [0, 1, 2],
  'entry.up[30-01/1+2]': [0, 1, 2],
  'entry.notFailed[30-02]': [0, 1, 2],
  'work.done[30-01/a/M1]': [true, false],
  'judgement.accepted[30-01/a/J1]': [true, false],
};

const ofNumber = (fact: string, params: object = {}): fc.Arbitrary<ConditionLeaf> =>
  fc.record({
    fact: fc.constant(fact),
    operator: fc.constantFrom(
      'equal',
      'notEqual',
      'lessThan',
      'lessThanInclusive',
      'greaterThan',
      'greaterThanInclusive',
    ),
    value: fc.constantFrom(...NUMBERS),
    ...params,
  }) as fc.Arbitrary<ConditionLeaf>;
const ofBoolean = (fact: string, params?: ConditionLeaf['params']): fc.Arbitrary<ConditionLeaf> =>
  fc
    .record({ operator: fc.constantFrom('equal' as const, 'notEqual' as const), value: fc.boolean() })
    .map((rest) => ({ fact, ...rest, ...(params === undefined ? {} : { params }) }));

const leaf: fc.Arbitrary<ConditionLeaf> = fc.oneof(
  ofBoolean('flight.rvsm'),
  ofNumber('flight.etopsMinutes'),
  ofNumber('flight.level'),
  ofNumber('entry.up', { params: fc.constantFrom({ entry: '30-01' }, { entry: '30-01', units: ['2', '1'] }) }),
  ofNumber('entry.notFailed', { params: fc.constant({ entry: '30-02' }) }),
  ofBoolean('work.done', { work: '30-01/a/M1' }),
  ofBoolean('judgement.accepted', { judgement: '30-01/a/J1' }),
  fc.record({
    fact: fc.constant('flight.icing'),
    operator: fc.constantFrom('in' as const, 'notIn' as const),
    value: fc.subarray(ICING, { minLength: 1 }),
    text: fc.constant('a sentence of its own'),
  }),
);

const { tree } = fc.letrec<{ tree: Condition }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    leaf,
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((all) => ({ all })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((any) => ({ any, text: 'one of these' })),
    tie('tree').map((part) => ({ not: part })),
  ),
}));

const valueIn = (domain: Value[]): fc.Arbitrary<FactView['value']> =>
  fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...domain) },
    { weight: 1, arbitrary: fc.constantFrom('5', 'x', true, 7) },
    { weight: 2, arbitrary: fc.constantFrom('nobody has said', 'too old').map((why) => new Unknown(why)) },
    {
      weight: 3,
      arbitrary: fc.tuple(subset(domain), subset(domain)).map(([now, after]) => new Possible(now, after)),
    },
  );
const subset = (domain: Value[]) => fc.subarray(domain);

const view = (domain: Value[]): fc.Arbitrary<FactView> =>
  fc.record(
    {
      value: valueIn(domain),
      source: fc.constant('a forecast'),
      observedAt: fc.constant('2026-03-10T05:00Z'),
      validUntil: fc.constant('2026-03-10T09:00Z'),
    },
    { requiredKeys: ['value'] },
  );
const facts = fc.record(Object.fromEntries(Object.entries(DOMAINS).map(([key, domain]) => [key, view(domain)])));

describe('a proviso as closures', () => {
  it('has the value and the explained tree that the rules engine gives', async () => {
    const seen = { T: 0, U: 0, F: 0, work: 0 };
    await fc.assert(
      fc.asyncProperty(tree, facts, async (when, known) => {
        const proviso = { id: 'a', text: 'a', when };
        const lookup = (key: string): FactView => known[key] ?? { value: new Unknown('not there') };
        const nameOf = (subject: string): string => `<${subject}>`;
        const engine = await compileProviso(proviso, nameOf).judge(lookup);
        const closure = compileClosure(proviso, nameOf);
        expect(JSON.stringify(closure.judge(lookup))).toBe(JSON.stringify(engine));
        expect(closure.value(lookup)).toBe(codeOf(engine));
        expect(closure.entryKeys).toEqual(compileProviso(proviso, nameOf).entryKeys);
        seen[engine.now] += 1;
        if (engine.now !== engine.after) seen.work += 1;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(60);
  });
});
