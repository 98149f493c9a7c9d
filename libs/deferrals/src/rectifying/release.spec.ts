import { describe, expect, it } from 'vitest';
import type { Act, LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, refusalOf, signed, writtenUp, goneOver } from '../invented.fixture.js';
import { leaveOnAircraft } from '../leaving/leave.js';
import { undoLeft } from '../leaving/undo.js';
import type { Signature } from '../people.js';
import { proceed } from '../replay.js';
import { stateOf } from '../standing.js';
import { inspect } from './inspect.js';
import { recordTest } from './record-test.js';
import { rectify, type Rectify } from './rectify.js';
import { release, type Release } from './release.js';
import { restore } from './restore.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const tech = signed('tech', at);
const deferred = deferredAs({}, '2026-01-26T10:00Z');

let count = 0;
const id = (): string => `act-${(count += 1)}`;

const work = (life: DefectLife, over: Partial<Rectify> = {}): DefectLife => {
  const done = { id: id(), by: tech, workDone: 'computer replaced', reference: 'AMM 22-10 rev 4', complete: true };
  return proceed(life, rectify(life, { ...done, ...over }, given));
};
const outAsItStands = (life: DefectLife, over: Partial<Release> = {}) =>
  release(life, { id: id(), by: tech, outcome: 'closed', ...over }, given);
/** Gone over first, where there is work. */
const out = (life: DefectLife, over: Partial<Release> = {}): Act[] => {
  const seen = life.work === null ? life : goneOver(life, tech, at);
  return [...seen.acts.slice(life.acts.length), ...outAsItStands(seen, over)];
};
const test = (life: DefectLife, result: 'good' | 'not-good'): DefectLife =>
  proceed(life, recordTest(life, { id: id(), by: tech, test: 'AP test', result }, given));
const look = (life: DefectLife, by: Signature): DefectLife =>
  proceed(life, inspect(life, { id: id(), by, findings: 'no findings' }, given));

describe('releasing work to service', () => {
  it('closes the defect, with who released it', () => {
    const closed = proceed(deferred, [...work(deferred).acts.slice(-1), ...out(work(deferred))]);
    expect(closed.closed).toMatchObject({ how: 'rectified and released', at, by: { person: 'tech' } });
    expect(stateOf(closed)).toBe('closed');
  });

  it('is refused without work, and while the work is not complete', () => {
    expect(refusalOf(() => out(deferred)).code).toBe('no-open-work');
    expect(refusalOf(() => out(work(deferred, { complete: false }))).code).toBe('work-not-complete');
  });

  it('leaves the defect as it was when it says what stays open', () => {
    const half = work(deferred, { complete: false });
    expect(refusalOf(() => out(half, { outcome: 'stays-open' })).code).toBe('stays-open-not-said');
    const said = proceed(half, out(half, { outcome: 'stays-open', staysOpen: ['servo still to be replaced'] }));
    expect([stateOf(said), said.work, said.deferral]).toEqual(['open under deferral', null, deferred.deferral]);
    const unanswered = work(writtenUp('2026-01-26T10:00Z'));
    const open = proceed(unanswered, out(unanswered, { outcome: 'stays-open', staysOpen: ['all of it'] }));
    expect(stateOf(open)).toBe('unanswered');
  });

  it('is refused when a test was asked for and none is good since the last work', () => {
    const asked = work(deferred, { testAsked: true });
    expect(refusalOf(() => out(asked)).code).toBe('test-not-good');
    expect(refusalOf(() => out(test(asked, 'not-good'))).code).toBe('test-not-good');
    expect(out(test(test(asked, 'not-good'), 'good')).at(-1)?.kind).toBe('released');
    expect(refusalOf(() => out(work(test(asked, 'good')))).code).toBe('test-not-good');
    expect(refusalOf(() => out(test(work(deferred), 'not-good'))).code).toBe('test-not-good');
  });

  it('is refused while anything of the deferral is left on the aircraft, and names each thing', () => {
    const item = (name: string, kind: LeftItem['kind'], where: string): LeftItem => ({
      id: name,
      kind,
      where,
      tag: name,
      undo: 'undo it',
    });
    const items = [item('c22', 'breaker', 'P11-C4'), item('pin7', 'lock-pin', 'servo 1')];
    const left = proceed(deferred, leaveOnAircraft(deferred, { id: id(), by: tech, items }, given));
    const refusal = refusalOf(() => out(work(left)), 'still-left-on-the-aircraft');
    expect(refusal.facts).toEqual({
      defect: 'D1',
      things: ['breaker at P11-C4 (c22)', 'lock pin at servo 1 (pin7)'],
    });
    expect(refusalOf(() => restore(work(left), { id: id(), by: tech, reference: 'AMM' }, given)).code).toBe(
      'still-left-on-the-aircraft',
    );
  });

  it('is refused until somebody signs that all is back to normal, when anything was altered', () => {
    const breaker: LeftItem = { id: 'b', kind: 'breaker', where: 'P11-C4', tag: '22', undo: 'push in' };
    const left = proceed(deferred, leaveOnAircraft(deferred, { id: id(), by: tech, items: [breaker] }, given));
    const undone = work(proceed(left, undoLeft(left, { id: id(), by: tech, items: ['b'] }, given)));
    expect(refusalOf(() => out(undone)).code).toBe('not-restored');
    const asked = { id: id(), by: tech, reference: 'AMM 22-10 rev 4' };
    const normal = proceed(undone, restore(undone, asked, given));
    expect(out(normal).at(-1)?.kind).toBe('released');
    expect(refusalOf(() => out(work(normal))).code).toBe('not-restored');
    const again = proceed(normal, leaveOnAircraft(normal, { id: id(), by: tech, items: [breaker] }, given));
    const undoneAgain = proceed(again, undoLeft(again, { id: id(), by: tech, items: ['b'] }, given));
    expect(refusalOf(() => out(undoneAgain)).code).toBe('not-restored');
    expect(refusalOf(() => restore(deferred, { ...asked, id: id() }, given)).code).toBe('no-open-work');
  });
});

describe('the independent inspection', () => {
  const asked = work(deferred, { inspectionAsked: true });

  it('is by another person than any who did the work (E-16, DERIVED)', () => {
    expect(refusalOf(() => out(asked)).code).toBe('inspection-not-done');
    expect(refusalOf(() => look(asked, tech)).code).toBe('same-person-inspecting');
    const two = work(asked, { by: signed('second', at) });
    expect(refusalOf(() => look(two, tech)).code).toBe('same-person-inspecting');
    expect(refusalOf(() => look(two, signed('second', at))).code).toBe('same-person-inspecting');
    expect(out(look(asked, signed('second', at))).at(-1)?.kind).toBe('released');
  });

  it('follows the last work', () => {
    expect(refusalOf(() => out(work(look(asked, signed('second', at))))).code).toBe('inspection-not-done');
  });

  it('is needed as well when the defect stays open after the work', () => {
    expect(refusalOf(() => out(asked, { outcome: 'stays-open', staysOpen: ['the servo'] })).code).toBe(
      'inspection-not-done',
    );
  });

  it('needs the privilege to inspect', () => {
    const by = signed('second', at, { scope: { privileges: ['release'] } });
    expect(refusalOf(() => look(asked, by)).code).toBe('authorisation-does-not-cover');
    expect(refusalOf(() => look(deferred, signed('second', at))).code).toBe('no-open-work');
  });
});

describe('who may release', () => {
  const mechanic = (over: object = {}) => signed('mechanic', at, { scope: { licenceCategories: ['A'], ...over } });

  it('is a holder whose authorisation covers it at that moment', () => {
    const done = work(deferred);
    expect(
      refusalOf(() => out(done, { by: signed('tech', at, { scope: { privileges: ['sign-procedure'] } }) })).code,
    ).toBe('authorisation-does-not-cover');
    expect(
      refusalOf(() => out(done, { by: signed('tech', at, { scope: { revokedAt: '2026-01-27T09:59Z' } }) })).code,
    ).toBe('authorisation-not-valid-then');
  });

  it('with category A only for work that the signer performed (66.A.20)', () => {
    const refusal = refusalOf(() => out(work(deferred), { by: mechanic() }), 'only-own-work');
    expect(refusal.message).toContain('Person tech did');
    const own = work(deferred, { by: mechanic() });
    expect(out(own, { by: mechanic() }).at(-1)?.kind).toBe('released');
    expect(refusalOf(() => out(work(own), { by: mechanic() })).code).toBe('only-own-work');
  });

  it('with B2 for a minor task only for own work, otherwise for that of others', () => {
    const b2 = signed('avionics', at, { scope: { licenceCategories: ['B2'] } });
    expect(out(work(deferred), { by: b2 }).at(-1)?.kind).toBe('released');
    expect(refusalOf(() => out(work(deferred), { by: b2, asMinorTask: true })).code).toBe('only-own-work');
  });
});

describe('rectifying', () => {
  it('opens work that is on the aircraft until it is released', () => {
    expect(stateOf(work(deferred, { complete: false }))).toBe('being rectified');
    expect(stateOf(work(deferred))).toBe('rectified, not released');
    expect(work(work(deferred)).work).toMatchObject({ openedAt: at });
  });

  it('is refused without saying what was done and by which manual', () => {
    expect(refusalOf(() => work(deferred, { workDone: '' })).code).toBe('text-missing');
    expect(refusalOf(() => work(deferred, { reference: '' })).code).toBe('text-missing');
    expect(refusalOf(() => test(deferred, 'good')).code).toBe('no-open-work');
  });
});
