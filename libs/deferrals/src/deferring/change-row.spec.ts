/** The second autopilot (story 2, rows P-01 and P-02 of T1, DERIVED): a pair's row, and what is good when one is fixed. */
import { describe, expect, it } from 'vitest';
import type { DefectLife } from '../defect-life.js';
import {
  context,
  deferredAs,
  identifiedAs,
  offer,
  refusalOf,
  signed,
  writtenUp,
  goneOver,
} from '../invented.fixture.js';
import { proceed } from '../replay.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { deadlineOf } from '../signed-limit.js';
import { changeRow, type ChangeRow } from './change-row.js';
import { defer } from './defer.js';

const ONE = { id: '1', category: 'C', numberRequired: 1 } as const;
const PAIR = { id: '2', category: 'B', numberRequired: 0 } as const;

const command = (row: string, at: string, over: Partial<ChangeRow> = {}): ChangeRow => ({
  id: `changed-${at}`,
  by: signed('control', at, { role: 'maintenance-control' }),
  basis: { kind: 'mel-row', row },
  reason: 'the other unit',
  ...over,
});

const unit1 = deferredAs(ONE, '2026-03-02T09:00Z');
const unit2Written = identifiedAs(writtenUp('2026-03-05T14:00Z', { defect: 'D2' }), ['2']);

function deferPair(pairDayZero: 'last-record' | 'first-record', at = '2026-03-05T15:00Z'): DefectLife {
  const asked = { id: 'D2-deferred', by: signed('tech', at), basis: { kind: 'mel-row', row: '2' } } as const;
  const given = context(at, { offered: offer(PAIR), others: [unit1], settings: { pairDayZero } });
  return proceed(unit2Written, defer(unit2Written, asked, given));
}

function fixed(life: DefectLife, at: string): DefectLife {
  const by = signed('tech', at);
  const done = { id: `${life.defect}-work`, by, workDone: 'replaced', reference: 'AMM 22-10 rev 4', complete: true };
  const worked = goneOver(proceed(life, rectify(life, done, context(at))), by, at);
  return proceed(worked, release(worked, { id: `${life.defect}-out`, by, outcome: 'closed' }, context(at)));
}

const lastDay = (life: DefectLife): string | null => deadlineOf(life.limits).lastDay;

describe("a pair's row", () => {
  it('counts from the second record by default: good to 8 Mar, the first unit keeps its 12 Mar', () => {
    expect(lastDay(deferPair('last-record'))).toBe('2026-03-08');
    expect(lastDay(unit1)).toBe('2026-03-12');
  });

  it('counts from the first record by setting: over on 5 Mar', () => {
    expect(lastDay(deferPair('first-record'))).toBe('2026-03-05');
  });

  it('gives the first unit 12 Mar back, and not more, once the second is fixed and control signs', () => {
    const changed = proceed(
      unit1,
      changeRow(
        unit1,
        command('2', '2026-03-05T15:00Z'),
        context('2026-03-05T15:00Z', { offered: offer(PAIR), others: [unit2Written] }),
      ),
    );
    expect(lastDay(changed)).toBe('2026-03-08');
    const others = [fixed(deferPair('last-record'), '2026-03-08T20:00Z')];
    const at = '2026-03-08T21:00Z';
    const back = changeRow(
      changed,
      command('1', at, { causeClosed: 'D2' }),
      context(at, { offered: offer(ONE), others }),
    );
    expect(lastDay(proceed(changed, back))).toBe('2026-03-12');
  });

  it('gives the second unit 15 Mar from its own record once the first is fixed and control signs', () => {
    const at = '2026-03-08T21:00Z';
    const given = context(at, { offered: offer(ONE), others: [fixed(unit1, '2026-03-08T20:00Z')] });
    const pair = deferPair('last-record');
    const changed = changeRow(pair, command('1', at, { causeClosed: 'D1' }), given);
    expect(lastDay(proceed(pair, changed))).toBe('2026-03-15');
    const unexplained = changeRow(pair, command('1', at), given);
    expect(lastDay(proceed(pair, unexplained))).toBe('2026-03-08');
  });

  it('moves nothing back while the cause is open, or when it is another item or another aircraft', () => {
    const at = '2026-03-08T21:00Z';
    const pair = deferPair('last-record');
    const closed = fixed(unit1, '2026-03-08T20:00Z');
    const asked = command('1', at, { causeClosed: 'D1' });
    const given = (others: DefectLife[]) => context(at, { offered: offer(ONE), others });
    expect(refusalOf(() => changeRow(pair, asked, given([unit1]))).code).toBe('cause-not-closed');
    expect(refusalOf(() => changeRow(pair, asked, given([]))).code).toBe('cause-not-closed');
    expect(refusalOf(() => changeRow(pair, { ...asked, causeClosed: 'D9' }, given([closed]))).code).toBe(
      'cause-not-closed',
    );
    const elsewhere = { ...closed, aircraft: { ...closed.aircraft, registration: 'Q-ABB' } };
    expect(refusalOf(() => changeRow(pair, asked, given([elsewhere]))).code).toBe('cause-not-closed');
    const third = { ...unit1, defect: 'D3' };
    expect(refusalOf(() => changeRow(pair, asked, given([closed, third]))).code).toBe('cause-not-closed');
  });

  it('moves nothing back on the signature of a technician', () => {
    const at = '2026-03-08T21:00Z';
    const given = context(at, { offered: offer(ONE), others: [fixed(unit1, '2026-03-08T20:00Z')] });
    const asked = command('1', at, { causeClosed: 'D1', by: signed('tech', at) });
    expect(refusalOf(() => changeRow(deferPair('last-record'), asked, given)).code).toBe('control-must-sign');
  });
});

describe('changing the row', () => {
  it('never moves a limit later: a longer row keeps the earlier end, a shorter one brings its own', () => {
    const at = '2026-01-27T10:00Z';
    const short = deferredAs({ category: 'B' }, '2026-01-26T10:00Z');
    const longer = changeRow(short, command('1', at), context(at, { offered: offer({ category: 'D' }) }));
    expect(lastDay(proceed(short, longer))).toBe('2026-01-29');
    const long = deferredAs({ category: 'C' }, '2026-01-26T10:00Z');
    const shorter = changeRow(long, command('1', at), context(at, { offered: offer({ category: 'B' }) }));
    expect(lastDay(proceed(long, shorter))).toBe('2026-01-29');
  });

  it('keeps the log time and the time of the deferral', () => {
    const at = '2026-01-27T10:00Z';
    const life = deferredAs({}, '2026-01-26T10:00Z');
    const changed = proceed(life, changeRow(life, command('1', at), context(at)));
    expect(changed).toMatchObject({
      recordedAt: life.recordedAt,
      deferral: { deferredAt: life.deferral?.deferredAt },
    });
  });

  it('does not escape an expired row', () => {
    const at = '2026-01-30T00:00Z';
    const life = deferredAs({ category: 'B' }, '2026-01-26T10:00Z');
    expect(
      refusalOf(() => changeRow(life, command('1', at), context(at, { offered: offer({ category: 'C' }) }))).code,
    ).toBe('interval-over');
  });

  it('does not escape a used-up row; by setting it does, from the first day and never later (story 4, DERIVED)', () => {
    const at = '2026-05-15T18:00Z';
    const life = deferredAs({ id: '2', category: 'A', interval: '4 flights' }, '2026-05-14T06:10Z');
    const given = (used: { flights?: number }, own = {}) => context(at, { offered: offer(ONE), used, settings: own });
    expect(refusalOf(() => changeRow(life, command('1', at), given({ flights: 4 }))).code).toBe('interval-used-up');
    expect(refusalOf(() => changeRow(life, command('1', at), given({}))).code).toBe('use-not-known');
    const three = proceed(life, changeRow(life, command('1', at), given({ flights: 3 })));
    expect(deadlineOf(three.limits)).toMatchObject({
      lastDay: '2026-05-24',
      counted: [{ amount: 4, unit: 'flights' }],
    });
    const allowed = changeRow(life, command('1', at), given({ flights: 4 }, { changeOfRow: 'own-window' }));
    expect(deadlineOf(proceed(life, allowed).limits)).toMatchObject({ lastDay: '2026-05-24', counted: [] });
  });

  it('is refused without a deferral, without a reason, for another unit, or without concurrence where it is asked', () => {
    const at = '2026-01-27T10:00Z';
    const life = deferredAs({}, '2026-01-26T10:00Z');
    expect(refusalOf(() => changeRow(writtenUp('2026-01-26T10:00Z'), command('1', at), context(at))).code).toBe(
      'not-deferred',
    );
    expect(refusalOf(() => changeRow(life, command('1', at, { reason: '' }), context(at))).code).toBe('text-missing');
    expect(
      refusalOf(() => changeRow(life, command('1', at), context(at, { offered: offer({ covers: ['2'] }) }))).code,
    ).toBe('row-not-for-this-unit');
    expect(
      refusalOf(() => changeRow(life, command('1', at), context(at, { settings: { concurrenceNeeded: true } }))).code,
    ).toBe('concurrence-missing');
  });
});
