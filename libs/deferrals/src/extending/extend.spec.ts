/** Rows and I-13, I-14 of the published check values; the mark stands beside each. */
import { describe, expect, it } from 'vitest';
import type { ExtensionRequest } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { changeRow } from '../deferring/change-row.js';
import {
  actor,
  context,
  deferredAs,
  identifiedAs,
  offer,
  refusalOf,
  signed,
  writtenUp,
} from '../invented.fixture.js';
import { proceed, replay } from '../replay.js';
import { deadlineOf } from '../signed-limit.js';
import { mayDispatch } from '../flying/may-dispatch.js';
import { defer } from '../deferring/defer.js';
import { rectify } from '../rectifying/rectify.js';
import { extendInterval, type Extend } from './extend.js';
import { offerExtension } from './extension-offer.js';

const RECORDED = '2026-01-26T10:00Z';

const request = (requestedAt: string, over: Partial<ExtensionRequest> = {}): ExtensionRequest => ({
  by: actor('engineer', { role: 'engineer' }),
  requestedAt,
  reason: 'the part is held in customs',
  outsideOperatorsControl: true,
  whyNotFixed: 'no part at any station',
  plan: 'part arrives 8 Feb, fitted the same night',
  ...over,
});

const command = (at: string, over: Partial<Extend> = {}): Extend => ({
  id: `extended-${at}`,
  by: signed('quality', at),
  request: request('2026-01-27T09:00Z'),
  ...over,
});

const lastDay = (life: DefectLife): string | null => deadlineOf(life.limits).lastDay;

function extended(
  life: DefectLife,
  at: string,
  preset: 'easa' | 'faa' | 'tcca-2006' | 'tcca-2022' = 'easa',
): DefectLife {
  return proceed(life, extendInterval(life, command(at), context(at, { settings: { preset } })));
}

describe('extending a rectification interval', () => {
  it('adds the own interval to the old deadline, once (I-13 SEEN-Q, I-14 DERIVED, X-02 SEEN)', () => {
    expect(lastDay(extended(deferredAs({ category: 'C' }, RECORDED), '2026-02-05T23:30Z', 'faa'))).toBe('2026-02-15');
    expect(lastDay(extended(deferredAs({ category: 'B' }, RECORDED), '2026-01-28T10:00Z'))).toBe('2026-02-01');
    expect(lastDay(extended(deferredAs({ category: 'D' }, RECORDED), '2026-05-20T10:00Z'))).toBe('2026-09-23');
  });

  it('names when the authority must have been told (X-06, SEEN-Q)', () => {
    const [act] = extendInterval(
      deferredAs({ category: 'C' }, RECORDED),
      command('2026-02-05T23:30Z'),
      context('2026-02-05T23:30Z', { settings: { preset: 'faa' } }),
    );
    expect(act).toMatchObject({ noticeDueAt: '2026-02-06T23:30:00Z', procedure: 'OM-A 8.6.1' });
  });

  it('is refused to the operator for category A, whatever row came after it (X-03, SEEN-Q)', () => {
    const at = '2026-01-27T10:00Z';
    const life = deferredAs({ category: 'A', interval: '3 calendar-days' }, RECORDED);
    expect(refusalOf(() => extendInterval(life, command(at), context(at))).code).toBe('category-a-not-extendable');
    const by = signed('control', at);
    const changed = changeRow(
      life,
      { id: 'changed', by, basis: { kind: 'mel-row', row: '1' }, reason: 'other relief' },
      context(at, { offered: offer({ category: 'C' }) }),
    );
    expect(refusalOf(() => extendInterval(proceed(life, changed), command(at), context(at))).code).toBe(
      'category-a-not-extendable',
    );
  });

  it('is refused for category D under the FAA preset (X-01, SEEN-Q)', () => {
    const life = deferredAs({ category: 'D' }, RECORDED);
    expect(refusalOf(() => extended(life, '2026-05-20T10:00Z', 'faa')).code).toBe('category-not-extendable');
  });

  it('is refused a second time (X-04, SEEN), but where the rules set no number (X-10, DERIVED)', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    const at = '2026-02-14T10:00Z';
    expect(refusalOf(() => extended(extended(life, '2026-02-05T10:00Z'), at)).code).toBe('second-extension');
    expect(refusalOf(() => extended(extended(life, '2026-02-05T10:00Z', 'faa'), at, 'faa')).code).toBe(
      'second-extension',
    );
    const twice = extended(extended(life, '2026-02-05T10:00Z', 'tcca-2006'), at, 'tcca-2006');
    expect(twice.extensions).toHaveLength(2);
    expect(lastDay(twice)).toBe('2026-02-25');
  });

  it('is granted before the end and not at it (story 6, DERIVED; X-08, DERIVED)', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    expect(lastDay(extended(life, '2026-02-05T23:59Z'))).toBe('2026-02-15');
    expect(refusalOf(() => extended(life, '2026-02-06T00:00Z')).code).toBe('extension-after-expiry');
    expect(refusalOf(() => extended(life, '2026-02-06T00:10Z')).code).toBe('extension-after-expiry');
  });

  it('counts the time of entry for a grant, so that it cannot be signed back before the end', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    const late = '2026-02-06T00:10Z';
    const backdated = command(late, { by: signed('quality', '2026-02-05T23:30Z') });
    expect(refusalOf(() => extendInterval(life, backdated, context(late))).code).toBe('extension-after-expiry');
  });

  it('is granted by another named person than the one who asked', () => {
    const at = '2026-02-01T10:00Z';
    const life = deferredAs({ category: 'C' }, RECORDED);
    expect(refusalOf(() => extendInterval(life, command(at, { by: signed('engineer', at) }), context(at))).code).toBe(
      'same-person-granting',
    );
    const by = signed('quality', at, { scope: { privileges: ['defer'] } });
    expect(refusalOf(() => extendInterval(life, command(at, { by }), context(at))).code).toBe(
      'authorisation-does-not-cover',
    );
  });

  it('needs reasons outside the control of the operator, why it was not fixed, and a plan', () => {
    const at = '2026-02-01T10:00Z';
    const life = deferredAs({ category: 'C' }, RECORDED);
    const ask = (over: Partial<ExtensionRequest>) => () =>
      extendInterval(life, command(at, { request: request('2026-01-27T09:00Z', over) }), context(at));
    expect(refusalOf(ask({ outsideOperatorsControl: false })).code).toBe('extension-reason-within-control');
    expect(refusalOf(ask({ reason: ' ' })).code).toBe('text-missing');
    expect(refusalOf(ask({ whyNotFixed: '' })).code).toBe('text-missing');
    expect(refusalOf(ask({ plan: '' })).code).toBe('text-missing');
    expect(refusalOf(ask({ requestedAt: '2026-02-01T10:01Z' })).code).toBe('extension-asked-after-grant');
  });

  it('needs an approved procedure, and under TCCA 2022 the agreement of the authority', () => {
    const at = '2026-02-01T10:00Z';
    const life = deferredAs({ category: 'C' }, RECORDED);
    expect(
      refusalOf(() => extendInterval(life, command(at), context(at, { settings: { extensionProcedure: null } })))
        .code,
    ).toBe('no-extension-procedure');
    expect(refusalOf(() => extended(life, at, 'tcca-2022')).code).toBe('extension-needs-agreement');
    const agreed = command(at, { agreement: 'TC-2026-17' });
    expect(extendInterval(life, agreed, context(at, { settings: { preset: 'tcca-2022' } }))).toHaveLength(1);
  });

  it('is offered as it would be granted, and grants nothing', () => {
    const at = '2026-02-05T23:30Z';
    const life = deferredAs({ category: 'C' }, RECORDED);
    const offer = offerExtension(life, { grantedAt: at }, context(at, { settings: { preset: 'faa' } }).settings);
    const [act] = extendInterval(life, command(at), context(at, { settings: { preset: 'faa' } }));
    expect(act).toMatchObject(offer);
    expect(offer).toMatchObject({ procedure: 'OM-A 8.6.1', timesAllowed: 1, noticeDueAt: '2026-02-06T23:30:00Z' });
    expect(lastDay(life)).toBe('2026-02-05');
  });

  it('is at most the interval of the own list (X-05, rule SEEN)', () => {
    const at = '2026-01-30T10:00Z';
    const life = deferredAs({ category: 'C', interval: '5 calendar-days' }, RECORDED);
    expect(lastDay(extended(life, at))).toBe('2026-02-05');
    expect(refusalOf(() => extendInterval(life, command(at, { days: 6 }), context(at))).code).toBe(
      'extension-too-long',
    );
    expect(lastDay(proceed(life, extendInterval(life, command(at, { days: 2 }), context(at))))).toBe('2026-02-02');
  });

  it('is refused for a basis that is no row of the MEL, and for a defect that is not deferred', () => {
    const at = '2026-01-27T10:00Z';
    const life = writtenUp(RECORDED);
    expect(refusalOf(() => extendInterval(life, command(at), context(at))).code).toBe('not-deferred');
    const basis = {
      kind: 'cdl' as const,
      reference: 'CDL 52-1',
      issuedBy: 'the operator',
      limit: 'one door seal',
      conditions: [],
      interval: '10 calendar-days',
    };
    const by = signed('tech', RECORDED);
    const deferred = proceed(life, defer(life, { id: 'd', by, basis }, context(RECORDED)));
    expect(refusalOf(() => extendInterval(deferred, command(at), context(at))).code).toBe('basis-not-extendable');
  });

  it('keeps a stricter row that was signed before: each moves by its own interval', () => {
    const at = '2026-01-27T10:00Z';
    const life = deferredAs({ category: 'B' }, RECORDED);
    const change = { id: 'c', by: signed('control', at), basis: { kind: 'mel-row', row: '1' }, reason: 'x' } as const;
    const changed = proceed(life, changeRow(life, change, context(at, { offered: offer({ category: 'C' }) })));
    expect(lastDay(extended(changed, '2026-01-28T10:00Z'))).toBe('2026-02-01');
  });

  it('is refused in a stored history too: after the end, a second time, for category A, by the same person', () => {
    const life = deferredAs({ category: 'C' }, RECORDED);
    const once = extended(life, '2026-02-05T10:00Z');
    const act = once.extensions[0];
    if (act === undefined) throw new Error('an extension was expected');
    const late = { ...act, by: signed('quality', '2026-02-06T00:10Z'), enteredAt: '2026-02-06T00:10Z' };
    expect(refusalOf(() => replay([...life.acts, late])).code).toBe('extension-after-expiry');
    expect(refusalOf(() => replay([...once.acts, { ...late, id: 'again' }])).code).toBe('second-extension');
    expect(refusalOf(() => replay([...identifiedAs(writtenUp(RECORDED)).acts, act])).code).toBe('not-deferred');
    const categoryA = deferredAs({ category: 'A', interval: '20 calendar-days' }, RECORDED);
    expect(refusalOf(() => replay([...categoryA.acts, act])).code).toBe('category-a-not-extendable');
    const sameBy = { ...act, request: { ...act.request, by: actor('quality') } };
    expect(refusalOf(() => replay([...life.acts, sameBy])).code).toBe('same-person-granting');
    const longer = { ...act, limits: [...deferredAs({ category: 'C' }, '2026-01-27T10:00Z').limits] };
    expect(refusalOf(() => replay([...life.acts, longer])).code).toBe('clock-restarted');
  });

  it('lets the aircraft fly to the new last day and not after it', () => {
    const life = extended(deferredAs({ category: 'C' }, RECORDED), '2026-02-05T23:30Z');
    const leaving = (offBlockAt: string) => mayDispatch(life, { id: 'F1', offBlockAt }).may;
    expect([leaving('2026-02-06T00:00Z'), leaving('2026-02-15T23:59Z'), leaving('2026-02-16T00:00Z')]).toEqual([
      true,
      true,
      false,
    ]);
  });
});

it('what is rectified waits for its release and not for more time; what is only begun may be extended', () => {
  const at = '2026-01-28T10:00Z';
  const life = deferredAs({ category: 'C' }, RECORDED);
  const work = (complete: boolean) =>
    proceed(
      life,
      rectify(life, { id: 'w', by: signed('tech', at), workDone: 'Work.', reference: 'AMM', complete }, context(at)),
    );
  const ask = (asked: DefectLife) => extendInterval(asked, command(at), context(at));
  expect(refusalOf(() => ask(work(true))).code).toBe('rectified-not-released');
  expect(ask(work(false))).toHaveLength(1);
});
