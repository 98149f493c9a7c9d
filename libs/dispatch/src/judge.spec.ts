import { describe, expect, it } from 'vitest';
import type { Condition } from '#mel';
import { entry, melOf, situationOf } from '../../../tests/support/small-mel.js';
import { judge } from './judge.js';
import type { OpenDefect } from './situation.js';

const rvsm: Condition = { fact: 'flight.rvsm', operator: 'equal', value: false };
const level: Condition = { fact: 'flight.level', operator: 'lessThanInclusive', value: 250 };

const mel = melOf(
  entry('30-01', [
    {
      provisos: [rvsm],
      procedures: [
        { id: 'M1', kind: 'M', text: 'Secure it.', minutes: 90 },
        { id: 'O1', kind: 'O', text: 'Brief it.', minutes: 10 },
      ],
      placard: { text: 'INOP', position: 'panel' },
    },
  ]),
  entry('30-02', [{ provisos: [{ any: [rvsm, level] }] }]),
  entry('30-03', [{ procedures: [{ id: 'M1', kind: 'M', text: 'Wait for it.' }] }]),
);

describe('a verdict', () => {
  it('lists the work that is outstanding, how long it takes, and when the flight could leave', async () => {
    const facts = { 'flight.rvsm': { value: false } };
    const verdict = await judge(mel, situationOf([{ entry: '30-01', signed: false }], { facts }));
    expect(verdict.verdict).toBe('after-work');
    expect(verdict.work.map(({ work, minutes, by }) => [work, minutes, by])).toEqual([
      ['30-01/1/M1', 90, 'technician'],
      ['30-01/1/placard', 0, 'technician'],
      ['30-01/1/O1', 10, 'commander'],
      ['30-01/1/signature', 0, 'technician'],
    ]);
    expect([verdict.workMinutes, verdict.earliestOffBlockAt]).toEqual([100, '2026-03-10T08:00:00Z']);
    const late = await judge(mel, situationOf([{ entry: '30-01' }], { facts, at: '2026-03-10T07:30Z' }));
    expect(late.earliestOffBlockAt).toBe('2026-03-10T09:10:00Z');
  });

  it('invents no figure where the MEL gives none', async () => {
    const verdict = await judge(mel, situationOf([{ entry: '30-03' }]));
    expect([verdict.workMinutes, verdict.earliestOffBlockAt]).toEqual([null, null]);
  });

  it('says when it dies: with the first of its facts, limits and deadlines', async () => {
    const defects = [{ entry: '30-02' }];
    const facts = { 'flight.rvsm': { value: false, validUntil: '2026-03-10T09:00Z' } };
    expect((await judge(mel, situationOf(defects, { facts }))).validUntil).toEqual({
      at: '2026-03-10T09:00:00Z',
      because: 'flight.rvsm is valid until then',
    });
    const unaged = { 'flight.rvsm': { value: false } };
    expect((await judge(mel, situationOf(defects, { facts: unaged }))).validUntil).toEqual({
      at: '2026-03-20T00:00:00Z',
      because: 'the interval of Item 30-02 1 ends',
    });
  });

  it('treats a fact that ends before departure as not known, says so, and asks for it', async () => {
    const facts = {
      'flight.rvsm': { value: false, validUntil: '2026-03-10T07:00Z' },
      'flight.level': { value: 300 },
    };
    const verdict = await judge(mel, situationOf([{ entry: '30-02' }], { facts }));
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.reasons[0]).toContain('it was valid until 2026-03-10T07:00Z only, which is before departure');
    expect(verdict.questions.map(({ fact }) => fact)).toEqual(['flight.rvsm']);
  });

  it('asks nothing that cannot change it', async () => {
    const known = { 'flight.rvsm': { value: false } };
    expect((await judge(mel, situationOf([{ entry: '30-02' }], { facts: known }))).questions).toEqual([]);
    const refused = { 'flight.rvsm': { value: true } };
    const both = situationOf([{ entry: '30-01' }, { entry: '30-02' }], { facts: refused });
    const verdict = await judge(mel, both);
    expect([verdict.verdict, verdict.questions]).toEqual(['may-not-fly', []]);
  });

  it('asks only for what still matters, while it is not settled', async () => {
    const defects = [{ entry: '30-01' }, { entry: '30-02' }];
    const pair = melOf(
      entry('30-01', [{ provisos: [{ fact: 'flight.icing', operator: 'equal', value: 'none' }] }]),
      entry('30-02', [{ provisos: [{ any: [rvsm, level] }] }]),
    );
    const verdict = await judge(pair, situationOf(defects, { facts: { 'flight.level': { value: 200 } } }));
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.questions).toEqual([
      {
        fact: 'flight.icing',
        question: 'Is icing known or forecast anywhere on the flight?',
        mayAnswer: ['dispatcher', 'commander'],
        neededBy: ['30-01/1/p1'],
      },
    ]);
  });

  it('asks for what would turn work into none', async () => {
    const either = melOf(
      entry('30-04', [
        {
          provisos: [
            { any: [rvsm, { fact: 'work.done', operator: 'equal', value: true, params: { work: '30-05/1/M1' } }] },
          ],
        },
      ]),
      entry('30-05', [{ procedures: [{ id: 'M1', kind: 'M', text: 'Do it.' }] }]),
    );
    const verdict = await judge(either, situationOf([{ entry: '30-04' }]));
    expect([verdict.verdict, verdict.lo, verdict.hi]).toEqual(['after-work', 'after-work', 'may-fly']);
    expect(verdict.questions.map(({ fact }) => fact)).toEqual(['flight.rvsm']);
  });

  it('knows nothing of a flight that is not planned', async () => {
    const facts = { 'flight.rvsm': { value: false } };
    const verdict = await judge(mel, situationOf([{ entry: '30-02' }], { facts, flight: null }));
    expect([verdict.verdict, verdict.flight, verdict.hi]).toEqual(['not-settled', null, 'may-fly']);
    expect(verdict.reasons[0]).toContain('no flight is planned');
  });

  it('judges another basis by its own conditions, and not by the MEL', async () => {
    const basis: OpenDefect['basis'] = {
      kind: 'cdl',
      reference: 'CDL 30-1',
      limit: 'not above flight level 250',
      conditions: [{ id: 'a', text: 'Not above flight level 250.', when: level }],
    };
    const stand = (value: number, signed = true) =>
      judge(mel, situationOf([{ entry: null, row: null, basis, signed }], { facts: { 'flight.level': { value } } }));
    expect((await stand(250)).verdict).toBe('may-fly');
    expect((await stand(250, false)).verdict).toBe('after-work');
    const refused = await stand(251);
    expect([refused.verdict, refused.reasons]).toEqual([
      'may-not-fly',
      [
        'Defect D1 (CDL 30-1) is refused: needed is "Not above flight level 250" - highest planned flight level: 251 hundreds of feet.',
      ],
    ]);
  });

  it('counts an item on another basis as down for the rows of other items', async () => {
    const pair = melOf(
      entry('a', [
        { provisos: [{ fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry: 'b' } }] },
      ]),
      entry('b', []),
    );
    const basis: OpenDefect['basis'] = { kind: 'permit', reference: 'P 1', limit: 'one flight', conditions: [] };
    const verdict = await judge(pair, situationOf([{ entry: 'a' }, { entry: 'b', row: null, basis }]));
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons).toEqual([
      'Item a 1 (a, row 1) is refused: needed is "Proviso 1" - Item b: 0 operative, at least 1 needed.',
    ]);
  });

  it('says in words what holds when it may fly, and what it never looked at', async () => {
    const verdict = await judge(
      mel,
      situationOf([{ entry: '30-02' }], {
        facts: { 'flight.level': { value: 200 }, 'flight.rvsm': { value: true } },
      }),
    );
    expect(verdict.reasons).toEqual([
      'Item 30-02 1 (30-02, row 1): every condition holds, and all its work is done and signed.',
    ]);
    expect(verdict.notLookedAt).toHaveLength(5);
    expect([verdict.evaluator, verdict.aircraft, verdict.at]).toEqual([
      'json-rules-engine',
      'Q-ABC',
      '2026-03-10T06:00:00Z',
    ]);
  });

  it('carries every condition of every row with its tree and a reason', async () => {
    const verdict = await judge(mel, situationOf([{ entry: '30-01' }]));
    const conditions = verdict.items.flatMap((item) => item.conditions);
    expect(conditions.map(({ kind }) => kind)).toEqual([
      'configuration',
      'interval',
      'number-required',
      'proviso',
      'procedure',
      'procedure',
      'placard',
      'signed-row',
    ]);
    expect(conditions.every(({ because, text }) => because !== '' && text !== '')).toBe(true);
    expect(conditions.find(({ kind }) => kind === 'proviso')?.tree).toMatchObject({
      fact: 'flight.rvsm',
      known: false,
    });
  });
});
