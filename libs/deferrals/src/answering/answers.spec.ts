import { describe, expect, it } from 'vitest';
import type { Act, LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
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
    expect(refusalOf(() => answer(life, crew)).code).toBe('authorisation-does-not-cover');
  });

  it('is no way out of a deferral', () => {
    expect(refusalOf(() => answer(deferredAs({}, '2026-01-26T10:00Z'))).code).toBe('write-up-already-answered');
  });

  it('is refused while work is open, or anything is left on the aircraft', () => {
    const done = { id: 'w', by, workDone: 'opened', reference: 'AMM', complete: false };
    expect(refusalOf(() => answer(proceed(life, rectify(life, done, given)))).code).toBe('open-work');
    const panel: LeftItem = { id: 'p', kind: 'panel-open', where: '192BL', tag: 'T4', undo: 'close' };
    const left = proceed(life, leaveOnAircraft(life, { id: 'l', by, items: [panel] }, given));
    expect(refusalOf(() => answer(left), 'still-left-on-the-aircraft').message).toContain('panel open at 192BL (T4)');
  });

  it('ends the life: nothing follows it', () => {
    expect(
      refusalOf(() =>
        answer(
          proceed(
            life,
            answer(life).map((act) => ({ ...act, id: 'first' })),
          ),
        ),
      ).code,
    ).toBe('already-closed');
  });
});

describe('the words of an answer', () => {
  it('are asked for, and the test after a reset must be good', () => {
    expect(refusalOf(() => findNoFault(life, { id: 'x', by, checks: '', reference: 'AMM' }, given)).code).toBe(
      'text-missing',
    );
    expect(refusalOf(() => findNoFault(life, { id: 'x', by, checks: 'test', reference: '' }, given)).code).toBe(
      'text-missing',
    );
    expect(refusalOf(() => raiseInError(life, { id: 'x', by, reason: ' ' }, given)).code).toBe('text-missing');
    const reset = { id: 'x', by, reference: 'AMM', test: 'AP test', result: 'not-good' as const, watch: '' };
    expect(refusalOf(() => resetAndWatch(life, reset, given)).code).toBe('reset-test-not-good');
    expect(refusalOf(() => resetAndWatch(life, { ...reset, test: '' }, given)).code).toBe('text-missing');
    expect(refusalOf(() => resetAndWatch(life, { ...reset, reference: '' }, given)).code).toBe('text-missing');
  });
});
