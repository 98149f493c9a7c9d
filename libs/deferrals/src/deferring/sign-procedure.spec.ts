import type { Procedure } from '#mel';
import { describe, expect, it } from 'vitest';
import type { LeftItem } from '../acts.js';
import { context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { signProcedure, type SignProcedure } from './sign-procedure.js';
import { transfer } from './transfer.js';

const at = '2026-01-27T10:00Z';
const deactivate: Procedure = {
  id: 'M1',
  kind: 'M',
  text: 'Deactivate the servo.',
  leaves: [
    { kind: 'breaker', where: 'P11-C4', undo: 'push in' },
    { kind: 'lock-pin', where: 'servo 1', undo: 'remove the pin' },
  ],
};
const life = deferredAs({ procedures: [deactivate] }, '2026-01-26T10:00Z');
const item = (id: string, kind: LeftItem['kind'], where: string): LeftItem => ({
  id,
  kind,
  where,
  tag: id,
  undo: 'undo',
});
const leaves = [item('b1', 'breaker', 'P11-C4'), item('p1', 'lock-pin', 'servo 1')];
const command = (over: Partial<SignProcedure> = {}): SignProcedure => ({
  id: 'm1',
  by: signed('tech', at),
  work: '22-10-01/1/M1',
  leaves,
  ...over,
});

describe('signing a procedure of the row', () => {
  it('keeps when it was done, for which flight, until when, and what it leaves', () => {
    const done = proceed(
      life,
      signProcedure(life, command({ forFlight: 'F1', validUntil: '2026-01-28T00:00Z' }), context(at)),
    );
    expect(done.procedures[0]).toMatchObject({ doneAt: at, forFlight: 'F1', validUntil: '2026-01-28T00:00Z' });
    expect(done.left).toEqual(leaves);
  });

  it('is refused when it names not everything that the procedure leaves', () => {
    const refusal = refusalOf(
      () => signProcedure(life, command({ leaves: leaves.slice(1) }), context(at)),
      'procedure-leaves-more',
    );
    expect(refusal.facts).toMatchObject({ missing: ['breaker at P11-C4'] });
    expect(refusalOf(() => signProcedure(life, command({ leaves: [] }), context(at))).code).toBe(
      'procedure-leaves-more',
    );
  });

  it('needs no second collar when it is repeated with everything still in place', () => {
    const once = proceed(life, signProcedure(life, command(), context(at)));
    expect(signProcedure(once, command({ id: 'm2', leaves: [] }), context(at))).toHaveLength(1);
  });

  it('is refused for a procedure of another row, without a deferral, and when it would be done in the future', () => {
    expect(refusalOf(() => signProcedure(life, command({ work: '22-10-01/2/M1' }), context(at))).code).toBe(
      'procedure-not-of-this-row',
    );
    expect(refusalOf(() => signProcedure(writtenUp('2026-01-26T10:00Z'), command(), context(at))).code).toBe(
      'not-deferred',
    );
    expect(refusalOf(() => signProcedure(life, command({ doneAt: '2026-01-27T10:01Z' }), context(at))).code).toBe(
      'recorded-in-the-future',
    );
  });
});

describe('swapping the failed part to another position', () => {
  const swap = {
    id: 't1',
    by: signed('tech', at),
    fromUnit: '1',
    toUnit: '2',
    parts: [],
    reason: 'to keep autopilot 1',
    moved: [],
    others: [],
    installed: ['1', '2'],
  };
  const moved = proceed(life, transfer(life, swap, context(at)));

  it('moves the unit and keeps the clock, the basis and what is left on the aircraft', () => {
    expect(moved.item?.units).toEqual(['2']);
    expect([moved.limits, moved.deferral, moved.left, moved.recordedAt]).toEqual([
      life.limits,
      life.deferral,
      life.left,
      life.recordedAt,
    ]);
  });

  it('moves what is left for it too, and says of each where it is now', () => {
    const left = proceed(life, signProcedure(life, command(), context(at)));
    const stays = refusalOf(() => transfer(left, swap, context(at)), 'swap-leaves-behind');
    expect(stays.facts['things']).toEqual(['breaker at P11-C4 (b1)', 'lock pin at servo 1 (p1)']);
    const places = left.left.map(({ id }) => ({ item: id, where: `right side, ${id}` }));
    const after = proceed(left, transfer(left, { ...swap, moved: places }, context(at)));
    expect(after.left.map(({ id, where }) => ({ item: id, where }))).toEqual(places);
    expect([after.item?.units, after.limits]).toEqual([['2'], left.limits]);
  });

  it('is refused to a unit that is open under deferral itself', () => {
    const other = { ...life, defect: 'D2', item: { entry: '22-10-01', subEntry: 'all', units: ['2'] } };
    expect(refusalOf(() => transfer(life, { ...swap, others: [other] }, context(at))).code).toBe(
      'unit-deferred-already',
    );
  });

  it('is refused among the units of which one failed: which of them it is now would only be guessed', () => {
    const oneOfTwo = { ...life, item: { entry: '22-10-01', subEntry: 'all', units: ['1', '2'] } };
    expect(refusalOf(() => transfer(oneOfTwo, swap, context(at))).code).toBe('swap-among-failed');
    expect(refusalOf(() => transfer(life, { ...swap, toUnit: '1' }, context(at))).code).toBe('swap-among-failed');
  });

  it('is refused where a limit counts the engine: what that one has used says nothing of the other', () => {
    const counted = deferredAs({ category: 'A', interval: '125 engine-hours' }, '2026-01-26T10:00Z');
    expect(refusalOf(() => transfer(counted, swap, context(at))).code).toBe('counted-by-engine');
  });

  it('is refused from a unit that is not failed and to one that is not installed', () => {
    expect(refusalOf(() => transfer(moved, { ...swap, id: 't2' }, context(at))).code).toBe('unit-not-of-this-defect');
    expect(refusalOf(() => transfer(life, { ...swap, toUnit: '3' }, context(at))).code).toBe('unit-not-installed');
    expect(refusalOf(() => transfer(writtenUp('2026-01-26T10:00Z'), swap, context(at))).code).toBe(
      'item-not-identified',
    );
  });
});

describe('signing a procedure of a row that the deferral brings along', () => {
  const brings = [{ entry: '24-21-21', title: 'Generator', row: '2', procedures: [{ ...deactivate, id: 'M1' }] }];
  const bringing = deferredAs({}, '2026-01-26T10:00Z', { brings });

  it('is admitted under the defect, which is the only write-up there is', () => {
    const acts = signProcedure(bringing, command({ work: '24-21-21/2/M1' }), context(at));
    expect(proceed(bringing, acts).left.map(({ id }) => id)).toEqual(['b1', 'p1']);
  });

  it('is refused for a row that is not brought along', () => {
    const other = () => signProcedure(bringing, command({ work: '24-21-21/1/M1' }), context(at));
    expect(refusalOf(other).code).toBe('procedure-not-of-this-row');
  });

  it('is not back-filled for a departure that is past unless the signer says why', () => {
    const late = { doneAt: '2026-01-26T11:00Z', leftMeanwhileAt: '2026-01-26T12:00Z' };
    const refused = refusalOf(() => signProcedure(life, command(late), context(at)), 'work-entered-after-departure');
    expect(refused.facts).toMatchObject({ leftAt: late.leftMeanwhileAt });
    expect(refusalOf(() => signProcedure(life, command({ ...late, lateReason: ' ' }), context(at))).code).toBe(
      'work-entered-after-departure',
    );
    const [done] = signProcedure(life, command({ ...late, lateReason: 'No signal at the stand.' }), context(at));
    expect(done).toMatchObject({ doneAt: late.doneAt, lateReason: 'No signal at the stand.' });
  });
});
