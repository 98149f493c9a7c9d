import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';
import type { OpenDefect, Situation } from '../situation.js';
import type { ConditionAnswer } from '../verdict.js';

const mel = melOf(
  entry('30-01', [
    { category: 'B' },
    { category: 'A', interval: '4 flights or 30 calendar-days' },
    { category: 'C', interval: '2 calendar-days' },
  ]),
  entry(
    '30-02',
    [
      { category: 'B', numberRequired: 0 },
      { category: 'B', numberRequired: 1 },
    ],
    ['1', '2'],
  ),
  entry('30-03', [{ consideredInoperative: [{ entry: '30-01' }] }]),
);

async function intervalsOf(
  defects: (Partial<OpenDefect> & { entry: string })[],
  change: Partial<Situation> = {},
): Promise<ConditionAnswer[]> {
  const { items } = await judge(mel, situationOf(defects, change));
  return items.flatMap(({ conditions }) => conditions.filter(({ kind }) => kind === 'interval'));
}
const one = async (defect: Omit<Partial<OpenDefect>, 'entry'>, change: Partial<Situation> = {}) =>
  (await intervalsOf([{ entry: '30-01', ...defect }], change))[0]!;
const arrivalInside = { settings: { ...situationOf([]).settings, expiryInFlight: 'arrival-inside' as const } };

describe('the interval of an open item', () => {
  it('counts from the day of the record, and ends with its last day', async () => {
    expect((await one({ recordedAt: '2026-03-07T23:59Z' })).now).toBe('T');
    const over = await one({ recordedAt: '2026-03-06T00:01Z' });
    expect([over.now, over.after, over.because]).toEqual(['F', 'F', expect.stringContaining('9 Mar 2026')]);
  });

  it('is shorter where the MEL says so', async () => {
    expect((await one({ row: '3', recordedAt: '2026-03-08T12:00Z' })).now).toBe('T');
    expect((await one({ row: '3', recordedAt: '2026-03-07T12:00Z' })).now).toBe('F');
  });

  it('counts what was used, and says what is not known', async () => {
    expect((await one({ row: '2', used: { flights: 3 } })).now).toBe('T');
    expect((await one({ row: '2', used: { flights: 4 } })).because).toContain('4 of 4 flights are used up');
    expect((await one({ row: '2' })).now).toBe('U');
    expect((await one({ row: '2', used: { flights: 0 }, recordedAt: '2026-02-01T12:00Z' })).now).toBe('F');
  });

  it('ends where the stored deadline says, whatever would be computed now', async () => {
    const stored = (deadline: OpenDefect['deadline'], change = {}) =>
      one({ recordedAt: '2026-03-01T12:00Z', deadline: deadline! }, change);
    expect((await stored({ lastDay: '2026-03-10' })).now).toBe('T');
    expect((await stored({ lastDay: '2026-03-09' })).now).toBe('F');
    expect((await stored({ endsAt: '2026-03-10T08:01Z' })).now).toBe('T');
    expect((await stored({ endsAt: '2026-03-10T08:00Z' })).now).toBe('F');
    expect((await stored({ endsAt: '2026-03-10T09:00Z' }, arrivalInside)).now).toBe('F');
    expect((await one({ row: '2', deadline: { endsAt: '2026-03-20T00:00Z' }, used: { flights: 4 } })).now).toBe('F');
    expect((await one({ row: '2', deadline: { endsAt: '2026-03-20T00:00Z' } })).now).toBe('U');
  });

  it('may run out in flight, unless the operator settled otherwise', async () => {
    const late = { ...situationOf([]).flight!, offBlockAt: '2026-03-10T23:00Z', onBlockAt: '2026-03-11T01:00Z' };
    const record = { recordedAt: '2026-03-07T12:00Z' };
    expect((await one(record, { flight: late })).now).toBe('T');
    expect((await one(record, { flight: late, ...arrivalInside })).now).toBe('F');
    const { onBlockAt: _, ...unplanned } = late;
    expect((await one(record, { flight: unplanned, ...arrivalInside })).now).toBe('U');
  });

  it('of a pair counts from the second record, or from the first where it is settled so', async () => {
    const pair = [
      { entry: '30-02', units: ['1'], recordedAt: '2026-03-05T12:00Z' },
      { entry: '30-02', units: ['2'], recordedAt: '2026-03-08T12:00Z' },
    ];
    expect((await intervalsOf(pair)).map(({ now }) => now)).toEqual(['T', 'T']);
    const settings = { ...situationOf([]).settings, pairCountsFrom: 'first-record' as const };
    expect((await intervalsOf(pair, { settings })).map(({ now }) => now)).toEqual(['F', 'F']);
    // A row for one unit counts from its own record, whatever other unit failed since.
    const own = pair.map((defect) => ({ ...defect, row: '2' }));
    expect((await intervalsOf(own)).map(({ now }) => now)).toEqual(['F', 'T']);
  });

  it('is no matter of a unit that is only considered inoperative', async () => {
    const answers = await intervalsOf([{ entry: '30-03' }]);
    expect(answers.map(({ id }) => id)).toEqual(['30-03/1/interval']);
  });
});
