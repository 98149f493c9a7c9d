import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corrected, LeftItem } from '../acts.js';
import { context, deferredAs, refused, signed, writtenUp } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import { proceed, replay } from '../replay.js';
import { deadlineOf } from '../signed-limit.js';
import { correct, type Correct } from './correct.js';

const RECORDED = '2026-01-26T10:00Z';
const at = '2026-01-27T10:00Z';
const given = context(at);
const life = deferredAs({ category: 'C' }, RECORDED);
const command = (over: Partial<Correct> = {}): Correct => ({
  id: 'c1',
  by: signed('tech', at),
  act: 'D1-written-up',
  field: 'description',
  was: 'Autopilot 1 disconnects by itself.',
  now: 'Autopilot 1 disconnects in descent.',
  reason: 'misread',
  ...over,
});

describe('correcting what was written', () => {
  it('changes what is read now, and keeps the original act as it was', () => {
    const corrected = proceed(life, correct(life, command(), given));
    expect(corrected.description).toBe('Autopilot 1 disconnects in descent.');
    expect(corrected.acts[0]).toEqual(life.acts[0]);
    expect(corrected.acts).toHaveLength(life.acts.length + 1);
  });

  it('is refused when it points at nothing, or at what reads otherwise', () => {
    refused('correction-of-nothing', () => correct(life, command({ act: 'no-such-act' }), given));
    refused('correction-of-nothing', () => correct(life, command({ act: 'deferred' }), given));
    refused('correction-of-nothing', () => correct(life, command({ was: 'something else' }), given));
    refused('correction-of-nothing', () => correct(life, command({ item: 'b1' }), given));
  });

  it('is refused without a reason, without a new text, and without a signature that may write up', () => {
    refused('text-missing', () => correct(life, command({ reason: '' }), given));
    refused('text-missing', () => correct(life, command({ now: ' ' }), given));
    const by = signed('tech', at, { scope: { privileges: ['release'] } });
    refused('authorisation-does-not-cover', () => correct(life, command({ by }), given));
  });
});

describe('correcting the log time', () => {
  const time = (now: string, over: Partial<Correct> = {}) =>
    command({ field: 'recordedAt', was: RECORDED, now, ...over });

  it('makes the limit nearer when it was earlier', () => {
    const corrected = proceed(life, correct(life, time('2026-01-25T23:00Z'), given));
    expect(corrected.recordedAt).toBe('2026-01-25T23:00Z');
    expect(deadlineOf(corrected.limits).lastDay).toBe('2026-02-04');
  });

  it('never moves the day forward, by whatever time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 * 24 * 40 }), (minutes) => {
        const later = new Date(Date.parse(RECORDED) + minutes * 60_000).toISOString();
        refused('correction-moves-the-day', () => correct(life, time(later), given));
      }),
    );
  });

  it('cannot lie before it occurred', () => {
    const told = writtenUp(RECORDED, { occurredAt: '2026-01-26T09:00Z' });
    refused('occurred-after-recorded', () => correct(told, time('2026-01-26T08:59Z'), given));
  });

  it('is refused in a stored history that keeps or loses the limits', () => {
    const [act] = correct(life, time('2026-01-25T23:00Z'), given);
    const stored = (limits: Corrected['limits']) => () => replay([...life.acts, { ...(act as Corrected), limits }]);
    refused('clock-restarted', stored([...life.limits]));
    refused('correction-moves-the-day', stored([]));
    refused('correction-moves-the-day', stored(null));
  });
});

describe('correcting what is left on the aircraft', () => {
  const breaker: LeftItem = { id: 'b1', kind: 'breaker', where: 'P11-C4', tag: '22', undo: 'push in' };
  const left = proceed(life, leaveOnAircraft(life, { id: 'l1', by: signed('tech', at), items: [breaker] }, given));
  const tag = (over: Partial<Correct> = {}) =>
    command({ act: 'l1', field: 'tag', item: 'b1', was: '22', now: '27', secondLook: signed('second', at), ...over });

  it('puts the tag right after a second person looked', () => {
    const corrected = proceed(left, correct(left, tag(), given));
    expect(corrected.left).toEqual([{ ...breaker, tag: '27' }]);
  });

  it('is refused without a second look, with one by the same person, or by one who may not inspect', () => {
    const { secondLook: _, ...alone } = tag();
    refused('second-look-missing', () => correct(left, alone, given));
    refused('same-person-looking', () => correct(left, tag({ secondLook: signed('tech', at) }), given));
    const nobody = signed('second', at, { scope: { privileges: ['defer'] } });
    refused('authorisation-does-not-cover', () => correct(left, tag({ secondLook: nobody }), given));
  });

  it('is refused for a thing that is no longer left, or was left by another act', () => {
    const undone = proceed(left, undoLeft(left, { id: 'u', by: signed('tech', at), items: ['b1'] }, given));
    refused('correction-of-nothing', () => correct(undone, tag(), given));
    refused('correction-of-nothing', () => correct(left, tag({ act: 'deferred' }), given));
  });
});
