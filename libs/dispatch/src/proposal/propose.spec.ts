import { describe, expect, it } from 'vitest';
import type { Condition } from '#mel';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { leastToFix } from './least-to-fix.js';
import { propose } from './propose.js';
import { whyRefused } from './why-refused.js';

const rvsm = (value: boolean): Condition => ({ fact: 'flight.rvsm', operator: 'equal', value });
const up = (number: string, value = 1): Condition => ({
  fact: 'entry.up',
  operator: 'greaterThanInclusive',
  value,
  params: { entry: number },
});
const M = (minutes: number) => [{ id: 'M1', kind: 'M' as const, text: 'Do it.', minutes }];
const takes = (...entries: string[]) => ({ consideredInoperative: entries.map((one) => ({ entry: one })) });
const rowsOf = async (mel: ReturnType<typeof melOf>, situation: ReturnType<typeof situationOf>) => {
  const { rows, verdict } = await propose(mel, situation);
  return [
    verdict.verdict,
    ...rows.map(({ defect, row, isChange }) => `${defect} ${row}${isChange ? ' change' : ''}`),
  ];
};

describe('a proposal', () => {
  it('keeps the signed rows where they hold, and is then no work', async () => {
    const mel = melOf(entry('a', [{}, {}]), entry('b', [{}, {}]));
    const situation = situationOf([{ entry: 'a', row: '2' }, { entry: 'b' }]);
    expect(await rowsOf(mel, situation)).toEqual(['may-fly', 'D1 2', 'D2 1']);
  });

  it('is at best after work where a row is changed, and says what to do', async () => {
    const mel = melOf(entry('a', [{ provisos: [rvsm(true)] }, { procedures: M(20) }]));
    const facts = { 'flight.rvsm': { value: false } };
    const { verdict, rows } = await propose(mel, situationOf([{ entry: 'a' }], { facts }));
    expect(rows).toEqual([{ defect: 'D1', entry: 'a', units: ['1'], row: '2', signedRow: '1', isChange: true }]);
    expect(verdict.work.map(({ text }) => text)).toEqual([
      '(M) Do it.',
      'Change the row from 1 and sign row 2 of a Item a for unit 1',
    ]);
    expect(verdict.evaluator).toBe('json-rules-engine');
  });

  it('tries no other row than one that is asked about, and says so where it does not do', async () => {
    const mel = melOf(entry('a', [{ provisos: [rvsm(true)] }, {}]), entry('b', [{}, {}]));
    const facts = { 'flight.rvsm': { value: false } };
    const asked = (rowAsked: boolean) =>
      situationOf(
        [
          { entry: 'a', signed: false, rowAsked },
          { entry: 'b', row: null, signed: false },
        ],
        { facts },
      );
    expect(await rowsOf(mel, asked(false))).toEqual(['after-work', 'D1 2 change', 'D2 1 change']);
    expect(await rowsOf(mel, asked(true))).toEqual(['may-not-fly', 'D1 1 change', 'D2 1 change']);
    const ofFirst = whyRefused(mel, asked(true)).filter(({ defect }) => defect === 'D1');
    expect(ofFirst.map(({ row }) => row)).toEqual(['1']);
  });

  it('counts work once, though two units taken along owe it', async () => {
    const mel = melOf(
      entry('a', [takes('b'), { procedures: M(40) }]),
      entry('b', [{ procedures: M(30) }], ['1', '2']),
    );
    const { rows, verdict } = await propose(mel, situationOf([{ entry: 'a', row: null, signed: false }]));
    expect([rows[0]?.row, verdict.workMinutes]).toEqual(['1', 30]);
  });

  it('sees a conflict of three that no pair shows', async () => {
    const two = { any: [up('a'), up('b'), up('c')] };
    const mel = melOf(...['a', 'b', 'c'].map((name) => entry(name, [{ provisos: [two] }])));
    const open = (...names: string[]) => situationOf(names.map((name) => ({ entry: name })));
    expect((await rowsOf(mel, open('a', 'b')))[0]).toBe('may-fly');
    expect((await rowsOf(mel, open('a', 'b', 'c')))[0]).toBe('may-not-fly');
    expect(leastToFix(mel, open('a', 'b', 'c')).repairs.map(({ defects }) => defects)).toEqual([
      ['D1'],
      ['D2'],
      ['D3'],
    ]);
  });

  it('finds rows that hold together along a chain and round a cycle', async () => {
    const mel = melOf(
      entry('a', [takes('b'), takes('c')]),
      entry('b', [{ provisos: [up('d')] }]),
      entry('c', [takes('a')]),
      entry('d', [{}]),
    );
    const situation = situationOf([{ entry: 'a' }, { entry: 'd' }]);
    expect(await rowsOf(mel, situation)).toEqual(['after-work', 'D1 2 change', 'D2 1']);
  });

  it('takes fewest changes, then the least minutes with each act counted once, then the smallest rows', async () => {
    const bad = { provisos: [rvsm(true)] };
    const facts = { 'flight.rvsm': { value: false } };
    const quick = melOf(entry('a', [bad, { procedures: M(30) }, { procedures: M(20) }, { procedures: M(20) }]));
    expect(await rowsOf(quick, situationOf([{ entry: 'a' }], { facts }))).toEqual(['after-work', 'D1 3 change']);
    const untimed = melOf(
      entry('a', [bad, { procedures: [{ id: 'M1', kind: 'M', text: 'Wait.' }] }, { procedures: M(900) }]),
    );
    expect(await rowsOf(untimed, situationOf([{ entry: 'a' }], { facts }))).toEqual(['after-work', 'D1 3 change']);
    const fewer = melOf(entry('a', [{ procedures: M(500) }, {}]));
    expect(await rowsOf(fewer, situationOf([{ entry: 'a' }]))).toEqual(['after-work', 'D1 1']);
  });

  it('gives no row against an airworthiness directive, and none to an item that the MEL does not list', async () => {
    const mel = melOf(entry('a', [{}, {}]), entry('b', []));
    const directives = [{ number: 'AD 1', entry: 'a' }];
    expect((await rowsOf(mel, situationOf([{ entry: 'a' }], { directives })))[0]).toBe('may-not-fly');
    expect((await rowsOf(mel, situationOf([{ entry: 'b', row: null }])))[0]).toBe('may-not-fly');
    expect((await rowsOf(mel, situationOf([{ entry: 'z', row: null }])))[0]).toBe('may-not-fly');
  });

  it('of nothing is nothing', async () => {
    expect(await rowsOf(melOf(entry('a', [])), situationOf([]))).toEqual(['nothing-open']);
  });
});

describe('the budget of a proposal', () => {
  const names = ['b', 'c', 'd', 'e', 'f', 'g'];
  const hard = melOf(
    entry('a', [takes(...names)]),
    ...names.map((name) => entry(name, [{ provisos: [up('a')] }, { provisos: [up('h')] }, {}])),
    entry('h', [takes('a')]),
  );
  const situation = situationOf([{ entry: 'a' }]);

  it('is counted in nodes, and enough where the search ends in it', async () => {
    const { verdict, shownBest, reason, nodes } = await propose(hard, situation, { budget: 1000 });
    expect([verdict.verdict, shownBest, reason]).toEqual(['may-fly', true, null]);
    expect(nodes).toBeGreaterThan(6);
    expect((await propose(hard, situation, { budget: 1000 })).nodes).toBe(nodes);
  });

  it('exhausted, makes the answer not settled, never may not fly', async () => {
    const { verdict, shownBest, reason } = await propose(hard, situation, { budget: 3 });
    expect([verdict.verdict, shownBest, reason]).toEqual(['not-settled', false, 'budget']);
    expect(verdict.reasons[0]).toContain('budget');
  });

  it('exhausted, keeps a choice that was found', async () => {
    const mel = melOf(entry('a', [takes('b')]), entry('b', [{ procedures: M(10) }, {}]));
    const cut = await propose(mel, situationOf([{ entry: 'a' }]), { budget: 1 });
    expect([cut.verdict.verdict, cut.shownBest]).toEqual(['after-work', false]);
  });

  it('exhausted, makes repairs "these, perhaps others"', () => {
    const refused = melOf(entry('a', [{ provisos: [up('b')] }]), entry('b', [{ provisos: [up('a')] }]));
    const both = situationOf([{ entry: 'a' }, { entry: 'b' }]);
    expect(leastToFix(refused, both, { budget: 2 })).toMatchObject({ isWhole: false, reason: 'budget' });
    expect(leastToFix(refused, both)).toMatchObject({ isWhole: true, reason: null });
    expect(whyRefused(refused, both, { budget: 3 }).every(({ isWhole }) => !isWhole)).toBe(true);
  });
});

describe('least to fix', () => {
  it('goes through all sets where a repair can take away what another row needs', () => {
    // a needs its partner down: fixing the partner alone makes it worse.
    const mel = melOf(
      entry('a', [{ needsDown: [{ entry: 'b' }] }]),
      entry('b', [{}]),
      entry('c', [{ provisos: [up('b')] }]),
    );
    const situation = situationOf([{ entry: 'a' }, { entry: 'b' }, { entry: 'c' }]);
    expect(leastToFix(mel, situation).repairs.map(({ defects }) => defects)).toEqual([['D3'], ['D1', 'D2']]);
  });

  it('is nothing where a gate is closed that no repair opens', () => {
    const mel = melOf(entry('a', [{ provisos: [rvsm(true)] }]));
    const gates = { unanswered: ['sheet 9'], openWork: [], orphans: [] };
    expect(leastToFix(mel, situationOf([{ entry: 'a' }], { gates }))).toEqual({
      repairs: [],
      isWhole: true,
      reason: null,
    });
  });
});
