import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../tests/support/small-mel.js';
import { judge } from './judge.js';
import type { RecordedJudgement, Situation } from './situation.js';

const mel = melOf(entry('21-01', [{}]), entry('22-01', [{}]), entry('25-01', [{}], ['1'], { interaction: 'none' }));
const asked = {
  base: 'UTC',
  expiryInFlight: 'departure-inside',
  combinationNeedsAcceptance: true,
  budget: 1000,
} as const;
const accepted = (change: Partial<RecordedJudgement> = {}): RecordedJudgement => ({
  judgement: 'combination',
  accepted: true,
  by: 'Ben Holt',
  role: 'maintenance-control',
  at: '2026-03-10T05:00Z',
  ...change,
});
const two = (change: Partial<Situation> = {}) =>
  judge(mel, situationOf([{ entry: '21-01' }, { entry: '22-01' }], { settings: asked, ...change }));

describe('the gates of the whole aircraft', () => {
  it('let a sound aircraft with nothing open pass', async () => {
    const verdict = await judge(mel, situationOf([]));
    expect([verdict.verdict, verdict.words]).toEqual(['nothing-open', 'nothing open']);
    expect(verdict.reasons).toEqual(['No defect is open, and nothing else keeps the aircraft on the ground.']);
  });

  it.each([
    ['unanswered', 'Not every write-up is answered: a; b.'],
    ['openWork', 'Work is open that is not released: a; b.'],
    ['orphans', 'Left altered on the aircraft, and owned by no open item: a; b.'],
  ] as const)('close on %s, and say what it is', async (gate, reason) => {
    const gates = { unanswered: [], openWork: [], orphans: [], [gate]: ['b', 'a'] };
    const verdict = await judge(mel, situationOf([], { gates }));
    expect([verdict.verdict, verdict.reasons]).toEqual(['may-not-fly', [reason]]);
  });

  it('close on a defect that stands on nothing', async () => {
    const verdict = await judge(mel, situationOf([{ id: 'D7', entry: '21-01', row: null }]));
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons[0]).toBe('Not every write-up is answered: D7.');
  });

  it('close on an item that the MEL does not hold (D-07, FAA, SEEN-Q)', async () => {
    const verdict = await judge(mel, situationOf([{ id: 'D7', entry: '99-99' }]));
    expect([verdict.verdict, verdict.reasons]).toEqual([
      'may-not-fly',
      ['Defect D7 is refused: defect D7 is not in this MEL for this aircraft, so it must work.'],
    ]);
  });

  it('wait for a named person to accept a combination, when the operator asks for it', async () => {
    const verdict = await two();
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.questions).toEqual([
      {
        fact: 'judgement.accepted[combination]',
        question: 'Is the combination of open items acceptable for this flight?',
        mayAnswer: ['maintenance-control'],
        neededBy: ['combination'],
      },
    ]);
    expect((await two({ settings: { ...asked, combinationNeedsAcceptance: false } })).verdict).toBe('may-fly');
  });

  it.each([
    ['accepted', {}, 'may-fly'],
    ['not accepted', { accepted: false }, 'may-not-fly'],
    ['accepted by another role', { role: 'technician' }, 'not-settled'],
    ['accepted for another flight', { forFlight: 'F2' }, 'not-settled'],
    ['accepted for this flight', { forFlight: 'F1' }, 'may-fly'],
    ['accepted until before departure', { validUntil: '2026-03-10T07:59Z' }, 'not-settled'],
    ['to be accepted later', { at: '2026-03-10T06:01Z' }, 'not-settled'],
  ] as const)('take a combination that is %s as it is', async (_, change, verdict) => {
    expect((await two({ judgements: [accepted(change)] })).verdict).toBe(verdict);
  });

  it('take the last answer, and of two at once the refusal', async () => {
    const later = accepted({ accepted: false, at: '2026-03-10T05:30Z' });
    expect((await two({ judgements: [later, accepted()] })).verdict).toBe('may-not-fly');
    expect((await two({ judgements: [accepted({ at: later.at }), later] })).verdict).toBe('may-not-fly');
    expect((await two({ judgements: [later, accepted({ at: '2026-03-10T05:40Z' })] })).verdict).toBe('may-fly');
  });

  it('tell the person who judges a combination what was found: shared systems, work for the crew, notes', async () => {
    const crew = [{ id: 'O1', kind: 'O', text: 'Brief it.', minutes: 5 }] as const;
    const busy = melOf(
      entry('21-01', [{ procedures: [...crew] }], ['1'], { chapter: '21' }),
      entry('21-02', [{ notes: [{ text: 'Any mode may be used.' }] }], ['1'], { chapter: '21' }),
      entry('34-01', [{}], ['1'], { chapter: '34' }),
    );
    const open = ['21-01', '21-02', '34-01'].map((one) => ({ entry: one }));
    const { gates } = await judge(busy, situationOf(open, { settings: asked }));
    expect(gates.find(({ gate }) => gate === 'combination')?.found).toEqual([
      'Of one system (ATA chapter 21): Item 21-01 1, Item 21-02 1.',
      'For the crew, with Item 21-01 1: 1 procedure, 5 min.',
      'Note to Item 21-02 1: Any mode may be used.',
    ]);
  });

  it('leave out items that are marked as without interaction', async () => {
    const verdict = await judge(mel, situationOf([{ entry: '21-01' }, { entry: '25-01' }], { settings: asked }));
    expect(verdict.verdict).toBe('may-fly');
  });
});
