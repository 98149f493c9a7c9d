/** A row changed before its four flights were used up keeps them (story 4 under S4's default, DERIVED). */
import { describe, expect, it } from 'vitest';
import { rectificationWindow } from '#intervals';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';
import type { OpenDefect } from '../situation.js';

const mel = melOf(
  entry('49-10', [{ category: 'C' }, { category: 'A', interval: '4 flights' }], ['1', '2']),
  entry('30-01', [{}]),
);
const fourFlights = rectificationWindow({
  category: 'A',
  interval: '4 flights',
  recordedAt: '2026-03-09T12:00Z',
  base: 'UTC',
  tzdb: '2026a',
});
const apu = (flights: number | undefined, more: Partial<OpenDefect> = {}, pair = false) => ({
  entry: '49-10',
  row: '1',
  used: flights === undefined ? {} : { flights },
  formerLimits: [{ clock: fourFlights, pair }],
  ...more,
});
const answer = async (...defects: Parameters<typeof situationOf>[0]) => judge(mel, situationOf(defects));

describe('a limit of a row signed before', () => {
  it.each([
    [3, 'may-fly'],
    [4, 'may-not-fly'],
    [undefined, 'not-settled'],
  ])('with %s flights used: %s', async (flights, verdict) => {
    expect((await answer(apu(flights))).verdict).toBe(verdict);
  });

  it('says whose limit it is', async () => {
    const { reasons } = await answer(apu(4));
    expect(reasons.join()).toContain('4 of 4 flights are used up. A row signed before set this limit.');
  });

  it('of a pair goes when nothing else of the entry is down and another row is proposed, and not before that', async () => {
    const proposed = { insteadOf: '2', row: '1', signed: false };
    expect((await answer(apu(4, {}, true))).verdict).toBe('may-not-fly');
    const { items } = await answer(apu(4, proposed, true));
    const ids = items.flatMap(({ conditions }) => conditions.map(({ id }) => id));
    expect(ids).not.toContain('49-10/1/earlier limit 1');
    const both = await answer(apu(4, proposed, true), { entry: '49-10', units: ['2'], row: '1' });
    expect(both.items.flatMap(({ conditions }) => conditions.map(({ id }) => id))).toContain(
      '49-10/1/earlier limit 1',
    );
  });
});
