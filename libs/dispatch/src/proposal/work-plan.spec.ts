import { describe, expect, it } from 'vitest';
import type { Procedure } from '#mel';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { propose } from './propose.js';
import { workPlan } from './work-plan.js';

const M = (id: string, minutes?: number): Procedure => ({
  id,
  kind: 'M',
  text: `Do ${id}.`,
  ...(minutes === undefined ? {} : { minutes }),
});
const placard = { text: 'INOP', position: 'panel' };
const mel = melOf(
  entry('a', [
    {
      procedures: [{ id: 'O1', kind: 'O', text: 'Brief it.', minutes: 30 }, M('M1', 90)],
      placard,
      provisos: [{ fact: 'work.done', operator: 'equal', value: true, params: { work: 'b/1/M1' } }],
    },
  ]),
  entry('b', [{ procedures: [M('M1', 45)] }]),
  entry('c', [{ procedures: [M('M1')] }]),
);

async function planned(entries: string[], at = '2026-03-10T06:00Z') {
  const situation = situationOf(
    entries.map((one) => ({ entry: one, row: null, signed: false })),
    { at },
  );
  return workPlan(mel, situation, (await propose(mel, situation)).verdict);
}

describe('a plan of the outstanding work', () => {
  it('has everything after what it waits for, and different roles side by side', async () => {
    const { steps } = await planned(['a', 'b']);
    expect(steps.map(({ work, needs, startsAfter, endsAfter }) => [work, needs, startsAfter, endsAfter])).toEqual([
      ['b/1/M1', [], 0, 45],
      ['a/1/M1', [1], 45, 135],
      ['a/1/placard', [1, 2], 135, 135],
      ['a/1/O1', [1, 2, 3], 135, 165],
      ['a/1/signature', [1, 2, 3], 135, 135],
      ['b/1/signature', [1], 135, 135],
    ]);
  });

  it('says when the flight could leave, and how late that is', async () => {
    expect(await planned(['a', 'b'])).toMatchObject({
      minutes: 165,
      plannedOffBlockAt: '2026-03-10T08:00:00Z',
      earliestOffBlockAt: '2026-03-10T08:45:00Z',
      lateMinutes: 45,
    });
    expect(await planned(['b'])).toMatchObject({ earliestOffBlockAt: '2026-03-10T08:00:00Z', lateMinutes: 0 });
  });

  it('invents no figure where the MEL gives none', async () => {
    expect(await planned(['c'])).toMatchObject({ minutes: null, earliestOffBlockAt: null, lateMinutes: null });
  });
});
