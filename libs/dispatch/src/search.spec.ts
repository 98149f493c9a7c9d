import { describe, expect, it } from 'vitest';
import type { Condition } from '#mel';
import { entry, melOf, situationOf } from '../../../tests/support/small-mel.js';
import { judge } from './judge.js';
import type { Situation } from './situation.js';

const rvsm = (value: boolean): Condition => ({ fact: 'flight.rvsm', operator: 'equal', value });
const up = (number: string): Condition => ({
  fact: 'entry.up',
  operator: 'greaterThanInclusive',
  value: 1,
  params: { entry: number },
});
const settings = (budget: number) => ({ settings: { ...situationOf([]).settings, budget } });
const root = (...taken: string[]) => entry('root', [{ consideredInoperative: taken.map((one) => ({ entry: one })) }]);

describe('rows of units that are only considered inoperative', () => {
  it('are chosen so that all of them hold together', async () => {
    const mel = melOf(
      root('a', 'b'),
      entry('a', [{ provisos: [up('c')] }, { consideredInoperative: [{ entry: 'c' }] }]),
      entry('b', [{ provisos: [rvsm(true)] }, { provisos: [rvsm(false)] }]),
      entry('c', []),
    );
    const verdict = await judge(
      mel,
      situationOf([{ entry: 'root' }], { facts: { 'flight.rvsm': { value: false } } }),
    );
    expect(verdict.verdict).toBe('may-fly');
    expect(verdict.items.map(({ entry: number, row }) => `${number} ${row}`)).toEqual(['a 1', 'b 2', 'root 1']);
    expect(verdict.refusedRows).toEqual([
      { entry: 'b', unit: '1', row: '1', because: ['needed is "Proviso 1" - flies in RVSM airspace: no'] },
    ]);
  });

  it('are followed to any depth, and a cycle adds nothing', async () => {
    const chain = ['a', 'b', 'c', 'd', 'e'];
    const mel = melOf(
      ...chain.map((number, at) =>
        entry(number, [{ consideredInoperative: [{ entry: chain[(at + 1) % chain.length]! }] }]),
      ),
    );
    const verdict = await judge(mel, situationOf([{ entry: 'a' }]));
    expect(verdict.items.map((item) => item.entry)).toEqual(chain);
    expect(verdict.items.map(({ cause }) => cause.kind)).toEqual([
      'failed',
      ...Array<string>(4).fill('considered-inoperative'),
    ]);
    expect(verdict.verdict).toBe('may-fly');
  });

  it('give no verdict better than not settled for "row 1 if p, row 2 if not p"', async () => {
    const mel = melOf(root('a'), entry('a', [{ provisos: [rvsm(true)] }, { provisos: [rvsm(false)] }]));
    const verdict = await judge(mel, situationOf([{ entry: 'root' }]));
    expect([verdict.verdict, verdict.lo, verdict.hi]).toEqual(['not-settled', 'may-not-fly', 'may-fly']);
    expect(verdict.questions.map(({ fact }) => fact)).toEqual(['flight.rvsm']);
  });

  it('may bring down the partner that another row needs down', async () => {
    const mel = melOf(
      root('a', 'b'),
      entry('a', [{ needsDown: [{ entry: 'c' }] }]),
      entry('b', [{}, { consideredInoperative: [{ entry: 'c' }] }]),
      entry('c', [{}]),
    );
    expect((await judge(mel, situationOf([{ entry: 'root' }]))).verdict).toBe('may-fly');
  });

  it('do not bring down a partner that nothing brings down', async () => {
    const mel = melOf(entry('a', [{ needsDown: [{ entry: 'c' }] }]), entry('c', [{}]));
    const verdict = await judge(mel, situationOf([{ entry: 'a' }]));
    expect([verdict.verdict, verdict.reasons]).toEqual([
      'may-not-fly',
      ['Item a 1 (a, row 1) is refused: Item c 1 is not inoperative.'],
    ]);
    expect((await judge(mel, situationOf([{ entry: 'a' }, { entry: 'c' }]))).verdict).toBe('may-fly');
  });

  it('are not there for an item that offers none', async () => {
    const verdict = await judge(melOf(root('a'), entry('a', [])), situationOf([{ entry: 'root' }]));
    expect([verdict.verdict, verdict.reasons]).toEqual([
      'may-not-fly',
      ['Item a 1 (a) is refused: Item a 1 is considered inoperative and its entry offers no relief.'],
    ]);
  });
});

describe('the budget of the search', () => {
  const names = ['a', 'b', 'c', 'd', 'e', 'f'];
  const hard = melOf(
    root(...names),
    ...names.map((name) => entry(name, [{ provisos: [rvsm(true)] }, { provisos: [rvsm(false)] }])),
  );
  const facts = { 'flight.rvsm': { value: false } };

  it('is enough for what can be found in it', async () => {
    expect((await judge(hard, situationOf([{ entry: 'root' }], { facts, ...settings(1000) }))).verdict).toBe(
      'may-fly',
    );
  });

  it('exhausted, makes the answer not settled, never may not fly', async () => {
    const verdict = await judge(hard, situationOf([{ entry: 'root' }], { facts, ...settings(3) }));
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.reasons[0]).toContain('budget');
  });

  it('exhausted, still lets a closed gate refuse', async () => {
    const gates = { unanswered: ['sheet 9'], openWork: [], orphans: [] };
    const verdict = await judge(hard, situationOf([{ entry: 'root' }], { facts, gates, ...settings(1) }));
    expect(verdict.verdict).toBe('may-not-fly');
  });

  it('exhausted, keeps a choice that was found', async () => {
    const mel = melOf(
      root('a', 'b'),
      entry('a', [{ procedures: [{ id: 'M1', kind: 'M', text: 'Do it.' }] }, {}]),
      entry('b', [{ procedures: [{ id: 'M1', kind: 'M', text: 'Do it.' }] }, {}]),
    );
    const whole = await judge(mel, situationOf([{ entry: 'root' }], settings(1000)));
    const cut = await judge(mel, situationOf([{ entry: 'root' }], settings(3)));
    expect([whole.verdict, cut.verdict]).toEqual(['may-fly', 'after-work']);
    expect(cut.reasons.at(-1)).toContain('a better answer may exist');
  });
});

describe('a defect that may be of several units', () => {
  const mel = melOf(entry('a', [{ numberRequired: 1 }, { covers: ['1'] }], ['1', '2']));
  const judged = (row: string, change: Partial<Situation> = {}) =>
    judge(mel, situationOf([{ entry: 'a', units: ['1', '2'], row }], change));

  it('counts as exactly one down', async () => {
    const verdict = await judged('1');
    expect(verdict.verdict).toBe('may-fly');
    expect(verdict.items.map(({ unit, perhaps }) => [unit, perhaps])).toEqual([
      ['1', true],
      ['2', true],
    ]);
  });

  it('is settled only when every unit that it may be of agrees', async () => {
    const verdict = await judged('2');
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.questions).toEqual([
      {
        fact: 'defect.unit[D1]',
        question: 'Which of Item a failed: 1 or 2?',
        mayAnswer: ['technician', 'maintenance-control'],
        neededBy: ['a/2'],
      },
    ]);
  });

  it('is given up when the readings are too many to tell apart', async () => {
    const units = ['1', '2', '3', '4', '5'];
    const many = melOf(entry('a', [{ numberRequired: 1 }], units));
    const defects = [1, 2, 3].map(() => ({ entry: 'a', units }));
    const verdict = await judge(many, situationOf(defects));
    expect([verdict.verdict, verdict.lo, verdict.hi]).toEqual(['not-settled', 'may-not-fly', 'may-fly']);
    expect(verdict.reasons[0]).toContain('budget');
  });
});
