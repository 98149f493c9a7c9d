/** Story 6 as the answer reads it (DERIVED): past the deadline only the permit carries the flight, and nothing else. */
import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';
import type { GrantInForce, OpenDefect, Situation } from '../situation.js';

const mel = melOf(
  entry('30-01', [
    { category: 'B' },
    { category: 'A', interval: '4 flights' },
    { category: 'B', procedures: [{ id: 'M1', kind: 'M', text: 'Secure it.', minutes: 10 }] },
  ]),
);

const permit: GrantInForce = {
  document: { kind: 'permit', number: 'PF-12', authority: 'the authority of the state of registry' },
  limit: 'one flight to the base, no passengers',
  from: '2026-03-10T00:00Z',
  until: '2026-03-13T00:00Z',
  flights: 1,
  kindsOfFlight: ['ferry'],
  flightsUsed: 0,
};
const over = { recordedAt: '2026-03-01T12:00Z', deadline: { lastDay: '2026-03-04', endsAt: '2026-03-05T00:00Z' } };

const ask = (
  grants: GrantInForce[],
  { kind = 'ferry', defect = {}, ...change }: Partial<Situation> & { kind?: string | null; defect?: object } = {},
) => {
  const facts = { 'flight.kind': { value: kind } };
  const item: Partial<OpenDefect> & { entry: string } = { entry: '30-01', ...over, grants, ...defect };
  return judge(mel, situationOf([item], { facts, ...change }));
};

describe('a flight past the deadline', () => {
  it('may not fly without a document, and only under the one that covers it', async () => {
    expect((await ask([])).verdict).toBe('may-not-fly');
    const answer = await ask([permit]);
    expect(answer).toMatchObject({
      verdict: 'may-fly',
      words: 'may fly only under permit PF-12',
      onlyUnder: ['permit PF-12'],
      validUntil: { at: '2026-03-13T00:00:00Z', because: 'permit PF-12 ends' },
    });
    expect(answer.reasons[0]).toBe(
      'Item 30-01 1 (30-01, row 1) may fly only under permit PF-12 (one flight to the base, no passengers), good from 2026-03-10T00:00Z until 2026-03-13T00:00Z: The last day is 2026-03-04 (UTC); off blocks 2026-03-10T08:00Z is after it.',
    );
  });

  it('leaves everything else as it was: other conditions still count, and work is still owed', async () => {
    const answer = await ask([permit], { defect: { row: '3' } });
    expect([answer.verdict, answer.words]).toEqual(['after-work', 'may fly after work, only under permit PF-12']);
    expect(answer.work.map(({ work }) => work)).toEqual(['30-01/3/M1']);
    const gates = { unanswered: ['write-up 7'], openWork: [], orphans: [] };
    const grounded = await ask([permit], { gates });
    expect([grounded.verdict, grounded.words]).toEqual(['may-not-fly', 'may not fly']);
  });

  it('may not fly as another kind of flight, a second time, before it begins, or after it ends', async () => {
    const refused = async (grants: GrantInForce[], change: Parameters<typeof ask>[1] = {}) => {
      const { verdict, onlyUnder, reasons } = await ask(grants, change);
      expect([verdict, onlyUnder]).toEqual(['may-not-fly', []]);
      return reasons[0];
    };
    expect(await refused([permit], { kind: 'passenger' })).toContain(
      'It could fly only under permit PF-12, which does not cover the flight: it is for a ferry flight.',
    );
    expect(await refused([{ ...permit, flightsUsed: 1 }])).toContain('its one flight is used');
    expect(await refused([{ ...permit, from: '2026-03-10T08:01Z' }])).toContain('it begins at');
    expect(await refused([{ ...permit, until: '2026-03-10T10:00Z' }])).toContain('it ends at');
  });

  it('is not settled while the kind of flight is not known, and asks for it', async () => {
    const answer = await ask([permit], { kind: null });
    expect([answer.verdict, answer.lo, answer.hi]).toEqual(['not-settled', 'may-not-fly', 'may-fly']);
    expect(answer.questions.map(({ fact }) => fact)).toEqual(['flight.kind']);
  });

  it('is not settled while it is not known how many flights the document has carried', async () => {
    const { flightsUsed: _used, ...unknown } = permit;
    expect((await ask([unknown])).verdict).toBe('not-settled');
    expect((await ask([unknown], { kind: 'passenger' })).verdict).toBe('may-not-fly');
  });

  it('needs no document while the interval runs', async () => {
    const answer = await ask([permit], { defect: { recordedAt: '2026-03-09T12:00Z', deadline: undefined } });
    expect([answer.words, answer.onlyUnder]).toEqual(['may fly', []]);
  });

  it('flies under the document where a counted interval is used up, and asks both where neither is known', async () => {
    const counted = { row: '2', deadline: undefined };
    expect((await ask([permit], { defect: { ...counted, used: { flights: 4 } } })).onlyUnder).toEqual([
      'permit PF-12',
    ]);
    const open = await ask([permit], { kind: null, defect: counted });
    expect(open.verdict).toBe('not-settled');
    expect(open.questions.map(({ fact }) => fact)).toEqual(['defect.used[D1]', 'flight.kind']);
    const wrong = await ask([permit], { kind: 'passenger', defect: counted });
    expect(wrong.questions.map(({ fact }) => fact)).toEqual(['defect.used[D1]']);
  });

  it('names every document that it needs', async () => {
    const other = {
      ...permit,
      document: { ...permit.document, kind: 'authority-document' as const, number: 'AD-7' },
    };
    const facts = { 'flight.kind': { value: 'ferry' } };
    const items = [
      { entry: '30-01', ...over, grants: [permit] },
      { entry: null, ...over, row: null, grants: [other], basis: basisOf() },
    ];
    const answer = await judge(mel, situationOf(items, { facts }));
    expect(answer.words).toBe('may fly only under authority document AD-7 and permit PF-12');
  });
});

const basisOf = (interval?: string) => ({
  kind: 'cdl' as const,
  reference: 'CDL 52-1',
  limit: 'one door seal',
  conditions: [],
  ...(interval === undefined ? {} : { interval }),
});

describe('the time that another basis gives', () => {
  const on = async (defect: Partial<OpenDefect>) =>
    (await judge(mel, situationOf([{ entry: null, row: null, basis: basisOf(), ...defect }]))).verdict;

  it('ends as it was stored', async () => {
    expect(await on({ recordedAt: '2026-03-01T12:00Z' })).toBe('may-fly');
    expect(await on({ ...over })).toBe('may-not-fly');
    expect(await on({ ...over, deadline: { endsAt: '2026-03-10T08:01Z' } })).toBe('may-fly');
  });

  it('is counted from its interval, which may be one of flights', async () => {
    expect(await on({ basis: basisOf('2 flights'), used: { flights: 1 } })).toBe('may-fly');
    expect(await on({ basis: basisOf('2 flights'), used: { flights: 2 } })).toBe('may-not-fly');
    expect(await on({ basis: basisOf('2 flights') })).toBe('not-settled');
    expect(await on({ basis: basisOf('3 calendar-days'), recordedAt: '2026-03-06T12:00Z' })).toBe('may-not-fly');
  });
});
