import { describe, expect, it } from 'vitest';
import type { Act, LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, refused, signed, writtenUp } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { proceed } from '../replay.js';
import { rectify } from '../rectifying/rectify.js';
import { findNoFault } from './find-no-fault.js';
import { raiseInError } from './raise-in-error.js';
import { resetAndWatch } from './reset-and-watch.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const by = signed('tech', at);
const life = writtenUp('2026-01-26T10:00Z');
const answers: { how: string; answer: (life: DefectLife, who?: typeof by) => Act[] }[] = [
  {
    how: 'no fault found',
    answer: (one, who = by) =>
      findNoFault(one, { id: 'x', by: who, checks: 'AP test', reference: 'AMM 22-10' }, given),
  },
  {
    how: 'raised in error',
    answer: (one, who = by) =>
      raiseInError(one, { id: 'x', by: who, reason: 'written on the wrong aircraft' }, given),
  },
  {
    how: 'reset and watched',
    answer: (one, who = by) =>
      resetAndWatch(
        one,
        { id: 'x', by: who, reference: 'AMM 22-10', test: 'AP test', result: 'good', watch: 'AP 1 in descent' },
        given,
      ),
  },
];

describe.each(answers)('the answer "$how"', ({ how, answer }) => {
  it('closes a write-up with a signature', () => {
    expect(proceed(life, answer(life)).closed).toMatchObject({ how, at, by: { person: 'tech' } });
    const crew = signed('crew', at, { scope: { privileges: ['write-up'] } });
    refused('authorisation-does-not-cover', () => answer(life, crew));
  });

  it('is no way out of a deferral', () => {
    refused('write-up-already-answered', () => answer(deferredAs({}, '2026-01-26T10:00Z')));
  });

  it('is refused while work is open, or anything is left on the aircraft', () => {
    const done = { id: 'w', by, workDone: 'opened', reference: 'AMM', complete: false };
    refused('open-work', () => answer(proceed(life, rectify(life, done, given))));
    const panel: LeftItem = { id: 'p', kind: 'panel-open', where: '192BL', tag: 'T4', undo: 'close' };
    const left = proceed(life, leaveOnAircraft(life, { id: 'l', by, items: [panel] }, given));
    expect(refused('still-left-on-the-aircraft', () => answer(left)).message).toContain('panel-open at 192BL (T4)');
  });

  it('ends the life: nothing follows it', () => {
    refused('already-closed', () =>
      answer(
        proceed(
          life,
          answer(life).map((act) => ({ ...act, id: 'first' })),
        ),
      ),
    );
  });
});

describe('the words of an answer', () => {
  it('are asked for, and the test after a reset must be good', () => {
    refused('text-missing', () => findNoFault(life, { id: 'x', by, checks: '', reference: 'AMM' }, given));
    refused('text-missing', () => findNoFault(life, { id: 'x', by, checks: 'test', reference: '' }, given));
    refused('text-missing', () => raiseInError(life, { id: 'x', by, reason: ' ' }, given));
    const reset = { id: 'x', by, reference: 'AMM', test: 'AP test', result: 'not-good' as const, watch: '' };
    refused('reset-test-not-good', () => resetAndWatch(life, reset, given));
    refused('text-missing', () => resetAndWatch(life, { ...reset, test: '' }, given));
    refused('text-missing', () => resetAndWatch(life, { ...reset, reference: '' }, given));
  });
});
