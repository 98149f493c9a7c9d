import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corrected, LeftItem } from '../acts.js';
import { changeRow } from '../deferring/change-row.js';
import { context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import { proceed, replay } from '../replay.js';
import { deadlineOf } from '../signed-limit.js';
import { correctionMoves } from './correction-moves.js';
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
    expect(refusalOf(() => correct(life, command({ act: 'no-such-act' }), given)).code).toBe('correction-of-nothing');
    expect(refusalOf(() => correct(life, command({ act: 'deferred' }), given)).code).toBe('correction-of-nothing');
    expect(refusalOf(() => correct(life, command({ was: 'something else' }), given)).code).toBe(
      'correction-of-nothing',
    );
    expect(refusalOf(() => correct(life, command({ item: 'b1' }), given)).code).toBe('correction-of-nothing');
  });

  it('is refused without a reason, without a new text, and without a signature that may write up', () => {
    expect(refusalOf(() => correct(life, command({ reason: '' }), given)).code).toBe('text-missing');
    expect(refusalOf(() => correct(life, command({ now: ' ' }), given)).code).toBe('text-missing');
    const by = signed('tech', at, { scope: { privileges: ['release'] } });
    expect(refusalOf(() => correct(life, command({ by }), given)).code).toBe('authorisation-does-not-cover');
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
        expect(refusalOf(() => correct(life, time(later), given)).code).toBe('correction-moves-the-day');
      }),
    );
  });

  it('cannot lie before it occurred', () => {
    const told = writtenUp(RECORDED, { occurredAt: '2026-01-26T09:00Z' });
    expect(refusalOf(() => correct(told, time('2026-01-26T08:59Z'), given)).code).toBe('occurred-after-recorded');
  });

  it('of the occurrence is corrected too, but not to one after the log', () => {
    const occurred = (now: string) => command({ field: 'occurredAt', was: null, now });
    expect(proceed(life, correct(life, occurred('2026-01-26T09:30Z'), given)).occurredAt).toBe('2026-01-26T09:30Z');
    expect(refusalOf(() => correct(life, occurred('2026-01-26T10:01Z'), given)).code).toBe('occurred-after-recorded');
  });

  it('tells what it moves before it is signed, and that a granted extension falls away', () => {
    const { settings } = given;
    const moved = correctionMoves(life, '2026-01-25T23:00Z', settings);
    expect([moved?.before.lastDay, moved?.after.lastDay]).toEqual(['2026-02-05', '2026-02-04']);
    expect(moved).toMatchObject({ counted: false, extended: false });
    expect(correctionMoves(writtenUp(RECORDED), '2026-01-25T23:00Z', settings)).toBeNull();
    const flights = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    expect(correctionMoves(flights, '2026-01-25T23:00Z', settings)?.counted).toBe(true);
  });

  it('is refused in a stored history that keeps or loses the limits', () => {
    const [act] = correct(life, time('2026-01-25T23:00Z'), given);
    const stored = (limits: Corrected['limits']) => () => replay([...life.acts, { ...(act as Corrected), limits }]);
    expect(refusalOf(stored([...life.limits])).code).toBe('clock-restarted');
    expect(refusalOf(stored([])).code).toBe('correction-moves-the-day');
    const flights = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    const offered = { basis: { kind: 'mel-row' as const, row: '1' }, reason: 'other relief' };
    const change = changeRow(
      flights,
      { id: 'r', by: signed('tech', at), ...offered },
      context(at, { used: { flights: 0 } }),
    );
    const both = proceed(flights, change);
    const [recount] = correct(both, time('2026-01-25T23:00Z'), given);
    const lost = { ...(recount as Corrected), limits: recount?.limits?.slice(1) ?? null };
    expect(refusalOf(() => replay([...both.acts, lost])).code).toBe('correction-moves-the-day');
    expect(refusalOf(stored(null)).code).toBe('correction-moves-the-day');
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
    expect(refusalOf(() => correct(left, alone, given)).code).toBe('second-look-missing');
    expect(refusalOf(() => correct(left, tag({ secondLook: signed('tech', at) }), given)).code).toBe(
      'same-person-looking',
    );
    const nobody = signed('second', at, { scope: { privileges: ['defer'] } });
    expect(refusalOf(() => correct(left, tag({ secondLook: nobody }), given)).code).toBe(
      'authorisation-does-not-cover',
    );
  });

  it('is refused for a thing that is no longer left, or was left by another act', () => {
    const undone = proceed(left, undoLeft(left, { id: 'u', by: signed('tech', at), items: ['b1'] }, given));
    expect(refusalOf(() => correct(undone, tag(), given)).code).toBe('correction-of-nothing');
    expect(refusalOf(() => correct(left, tag({ act: 'deferred' }), given)).code).toBe('correction-of-nothing');
  });
});
