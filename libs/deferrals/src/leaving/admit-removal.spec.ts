import { describe, expect, it } from 'vitest';
import type { LeftItem } from '../acts.js';
import {
  context,
  deferredAs,
  goneOver,
  identifiedAs,
  offer,
  refusalOf,
  signed,
  writtenUp,
} from '../invented.fixture.js';
import { defer } from '../deferring/defer.js';
import { signProcedure } from '../deferring/sign-procedure.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { proceed } from '../replay.js';
import { leaveOnAircraft } from './leave.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const by = signed('tech', at);
const servo: LeftItem = { id: 's', kind: 'equipment-removed', where: 'servo 1', tag: 'S-1', undo: 'fit a servo' };
const leaves = [{ kind: 'equipment-removed' as const, where: 'servo 1', undo: 'fit a servo' }];
const permitting = { procedures: [{ id: 'M1', kind: 'M' as const, text: 'Remove the servo.', leaves }] };

describe('removing an item that is inoperative', () => {
  it('is refused unless the (M) procedure of its row says so', () => {
    const life = deferredAs({}, '2026-01-26T10:00Z');
    const remove = () => leaveOnAircraft(life, { id: 'l', by, items: [servo] }, given);
    expect(refusalOf(remove, 'removal-not-permitted').message).toContain('22-10-01 row 1');
    const allowed = deferredAs(permitting, '2026-01-26T10:00Z');
    const done = { id: 'm', by, work: '22-10-01/1/M1', leaves: [servo] };
    expect(proceed(allowed, signProcedure(allowed, done, given)).left).toEqual([servo]);
    const other = { ...done, leaves: [servo, { ...servo, id: 's2', where: 'servo 2' }] };
    expect(refusalOf(() => signProcedure(allowed, other, given)).code).toBe('removal-not-permitted');
  });

  it('is not got round by removing it before the deferral', () => {
    const open = identifiedAs(writtenUp('2026-01-26T10:00Z'));
    const removed = proceed(open, leaveOnAircraft(open, { id: 'l', by, items: [servo] }, given));
    const deferring = () =>
      defer(
        removed,
        { id: 'd', by, basis: { kind: 'mel-row', row: '1' } },
        context(at, { offered: offer({ id: '1' }) }),
      );
    expect(refusalOf(deferring).code).toBe('removal-not-permitted');
  });

  it('is part of open work, and put back before the work is released with the defect left open', () => {
    const life = deferredAs({}, '2026-01-26T10:00Z');
    const work = { id: 'w', by, workDone: 'servo out', reference: 'AMM', complete: false };
    const open = proceed(life, rectify(life, work, given));
    const out = goneOver(proceed(open, leaveOnAircraft(open, { id: 'l', by, items: [servo] }, given)), by, at);
    const stays = { id: 'r', by, outcome: 'stays-open' as const, staysOpen: ['the servo'] };
    expect(refusalOf(() => release(out, stays, given)).code).toBe('removal-not-permitted');
  });
});
