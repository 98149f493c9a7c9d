import { describe, expect, it } from 'vitest';
import type { LeftItem } from '../acts.js';
import { raiseInError } from '../answering/raise-in-error.js';
import { context, deferredAs, signed, writtenUp } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { rectify } from '../rectifying/rectify.js';
import { proceed } from '../replay.js';
import { aircraftGates, type RegisterEntry } from './aircraft-gates.js';

const RECORDED = '2026-01-26T10:00Z';
const by = signed('tech', RECORDED);
const given = context(RECORDED);
const pin: LeftItem = { id: 'pin', kind: 'lock-pin', where: 'gear 2', tag: '7', undo: 'remove' };
const deferred = deferredAs({}, RECORDED);
const withPin = proceed(deferred, leaveOnAircraft(deferred, { id: 'l', by, items: [pin] }, given));
const entry = (owner: RegisterEntry['owner'], over: Partial<RegisterEntry> = {}): RegisterEntry => ({
  ...pin,
  owner,
  undone: false,
  ...over,
});
const orphans = (register: RegisterEntry[], lives = [withPin], at = RECORDED): string[] =>
  aircraftGates(lives, register, [], at).orphans;

describe('what keeps the whole aircraft on the ground', () => {
  it('is nothing when every write-up is answered, released and owned', () => {
    const register = [entry({ kind: 'defect', defect: 'D1' })];
    expect(aircraftGates([withPin], register, [], RECORDED)).toEqual({ unanswered: [], openWork: [], orphans: [] });
  });

  it('is a write-up that nobody answered', () => {
    const long = writtenUp(RECORDED, { description: 'x'.repeat(200) });
    expect(aircraftGates([long, deferred], [], [], RECORDED).unanswered).toEqual([`D1: ${'x'.repeat(80)}...`]);
    const closed = proceed(long, raiseInError(long, { id: 'e', by, reason: 'wrong aircraft' }, given));
    expect(aircraftGates([closed], [], [], RECORDED).unanswered).toEqual([]);
  });

  it('is work since the last release, on a defect or apart from any', () => {
    const work = { id: 'w', by, workDone: 'opened', reference: 'AMM', complete: true };
    const open = proceed(deferred, rectify(deferred, work, given));
    const orders = [
      { id: 'WO-1', description: 'wheel change', released: false },
      { id: 'WO-2', description: 'wash', released: true },
    ];
    expect(aircraftGates([open], [], orders, RECORDED)).toEqual({
      unanswered: [],
      openWork: ['D1: Autopilot 1 disconnects by itself.', 'WO-1: wheel change'],
      orphans: [],
    });
  });

  it('is anything left on it that nobody owns', () => {
    const orphan = ['lock pin at gear 2 (7)'];
    expect(orphans([entry(null)])).toEqual(orphan);
    expect(orphans([entry({ kind: 'defect', defect: 'D9' })])).toEqual(orphan);
    expect(orphans([entry({ kind: 'defect', defect: 'D1' })], [deferred])).toEqual(orphan);
    expect(orphans([entry({ kind: 'modification', reference: ' ', until: null })])).toEqual(orphan);
    expect(orphans([entry({ kind: 'modification', reference: 'MOD 44', until: null })])).toEqual([]);
    expect(orphans([entry(null, { undone: true })])).toEqual([]);
  });

  it('is anything under a document from the instant at which it is over', () => {
    const permit = [entry({ kind: 'permit', reference: 'PF-12', until: '2026-01-28T00:00Z' })];
    expect(orphans(permit, [deferred], '2026-01-27T23:59Z')).toEqual([]);
    expect(orphans(permit, [deferred], '2026-01-28T00:00Z')).toEqual(['lock pin at gear 2 (7)']);
  });

  it('is a tool that is not returned, whoever it was issued for', () => {
    const tool: LeftItem = { ...pin, id: 'tool', kind: 'tool', tag: 'T-12' };
    const issued = proceed(deferred, leaveOnAircraft(deferred, { id: 'l', by, items: [tool] }, given));
    const expected = { unanswered: [], openWork: ['not returned: tool at gear 2 (T-12)'], orphans: [] };
    const register = [{ ...tool, owner: { kind: 'defect' as const, defect: 'D1' }, undone: false }];
    expect(aircraftGates([issued], [], [], RECORDED)).toEqual(expected);
    expect(aircraftGates([issued], register, [], RECORDED)).toEqual(expected);
  });

  it('is what a closed defect would still have on the aircraft, named once', () => {
    const closing = { how: 'raised in error' as const, at: RECORDED, by };
    const impossible = { ...withPin, closed: closing };
    expect(orphans([entry({ kind: 'defect', defect: 'D1' })], [impossible])).toEqual(['lock pin at gear 2 (7)']);
    expect(orphans([], [impossible])).toEqual(['lock pin at gear 2 (7)']);
  });
});
