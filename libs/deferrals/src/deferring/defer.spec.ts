import { describe, expect, it } from 'vitest';
import type { StatedStart } from '#intervals';
import type { DocumentBasis } from '../basis.js';
import { context, deferredAs, identifiedAs, offer, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { replay } from '../replay.js';
import { deadlineOf } from '../signed-limit.js';
import { defer, type Defer } from './defer.js';

const RECORDED = '2026-01-26T10:00Z';
const at = '2026-01-26T11:00Z';
const life = identifiedAs(writtenUp(RECORDED));
const command = (over: Partial<Defer> = {}): Defer => ({
  id: 'a3',
  by: signed('tech', at),
  basis: { kind: 'mel-row', row: '1' },
  ...over,
});

const dent: DocumentBasis = {
  kind: 'approved-data',
  reference: 'SRM 53-10-01 rev 12',
  issuedBy: 'the design organisation',
  limit: 'depth at most 1.2 mm',
  conditions: [],
};

describe('deferring a write-up', () => {
  it.each([
    { category: 'B' as const, lastDay: '2026-01-29', source: 'I-01, PL-25 Rev 24 p. 7, SEEN-Q' },
    { category: 'C' as const, lastDay: '2026-02-05', source: 'I-02, PL-25 Rev 24 p. 7, SEEN-Q' },
    { category: 'D' as const, lastDay: '2026-05-26', source: '120 days, DERIVED' },
  ])('gives category $category until $lastDay from the day in the log ($source)', ({ category, lastDay }) => {
    expect(deadlineOf(deferredAs({ category }, RECORDED).limits).lastDay).toBe(lastDay);
  });

  it('counts from the day in the log however late it is entered or signed (story 1, DERIVED)', () => {
    const paris = { base: 'Europe/Paris' };
    const signedLate = deferredAs({ category: 'B' }, '2026-10-24T23:40+02:00', {
      at: '2026-10-25T02:20+01:00',
      settings: paris,
      recordedAt: '2026-10-25T02:20+01:00',
    });
    expect(deadlineOf(signedLate.limits)).toMatchObject({ lastDay: '2026-10-27', endsAt: '2026-10-27T23:00:00Z' });
  });

  it('stores the window with its time-zone data, the row as it was, and who signed', () => {
    const [act] = defer(life, command(), context(at));
    expect(act?.limits[0]?.clock).toMatchObject({
      firstDay: '2026-01-27',
      lastDay: '2026-02-05',
      endsAt: '2026-02-06T00:00:00Z',
      base: 'UTC',
      tzdb: '2026a',
    });
    expect(act?.basis).toMatchObject({ document: 'Invented MEL', revision: '3', row: '1', category: 'C' });
    expect(act?.by.authorisation.number).toBe('AUTH-tech');
  });

  it('counts use from the deferral, or from its log time where that is earlier (CS-MMEL, category A; SEEN-2)', () => {
    const hours = { category: 'A' as const, interval: '72 hours' };
    const now = deferredAs(hours, RECORDED, { at });
    expect(now.limits[0]?.clock).toMatchObject({ startsAt: '2026-01-26T11:00:00Z', endsAt: '2026-01-29T11:00:00Z' });
    const onPaper = deferredAs(hours, RECORDED, { at, recordedAt: '2026-01-26T10:30Z' });
    expect(onPaper.limits[0]?.clock).toMatchObject({ startsAt: '2026-01-26T10:30:00Z' });
    const canada = deferredAs(hours, RECORDED, { at, settings: { preset: 'tcca-2022' } });
    expect(canada.limits[0]?.clock).toMatchObject({ startsAt: '2026-01-26T10:00:00Z', countsFrom: 'next-flight' });
  });

  it('counts from the instant that a document states, whatever the policy says', () => {
    const basis = { ...dent, interval: '125 flight-hours, time-limited dispatch', startsAt: '2026-01-25T18:00Z' };
    const [act] = defer(life, command({ basis }), context(at));
    expect(act?.limits[0]?.clock).toMatchObject({
      startsAt: '2026-01-25T18:00:00Z',
      countsFrom: 'stated',
      recordedAt: '2026-01-26T10:00:00Z',
    });
  });

  it('counts a row from an earlier start that a document states, and lends no time by a later one', () => {
    const hours = { category: 'A' as const, interval: '50 flight-hours' };
    const signing = (start: StatedStart) => {
      const stated = { start, document: 'fault report 7' };
      return defer(
        life,
        command({ basis: { kind: 'mel-row', row: '1', stated } }),
        context(at, { offered: offer(hours) }),
      );
    };
    expect(signing({ at: '2026-01-25T18:00Z' })[0]?.limits[0]?.clock).toMatchObject({
      startsAt: '2026-01-25T18:00:00Z',
      countsFrom: 'stated',
    });
    expect(signing({ counter: 600, reading: 720, readAt: at })[0]?.limits[0]?.clock).toMatchObject({
      usedBefore: 120,
    });
    for (const start of [{ at: '2026-01-26T11:01Z' }, { counter: 0, reading: 0, readAt: '2026-01-26T11:01Z' }]) {
      expect(refusalOf(() => signing(start)).code).toBe('start-stated-later');
    }
  });

  it('keeps which engine an interval is about, and what must be done inside it', () => {
    const interval = '125 engine-hours, M1 within 10 engine-hours, time-limited dispatch';
    const { limits } = deferredAs({ category: 'A', interval }, RECORDED, { at });
    expect(limits[0]?.clock).toMatchObject({
      interval,
      engine: '1',
      timeLimited: true,
      within: [{ until: 'M1', limits: [{ amount: 10, unit: 'engine-hours' }] }],
    });
  });

  it('computes nothing with older time-zone data than deadlines are stored with', () => {
    const old = context(at, { settings: { tzdb: '2025c', newestTzdb: '2026a' } });
    expect(refusalOf(() => defer(life, command(), old)).code).toBe('zone-data-older');
  });

  it('refuses without a basis', () => {
    expect(refusalOf(() => defer(life, command({ basis: null }), context(at))).code).toBe('no-basis');
    expect(refusalOf(() => defer(life, command(), context(at, { offered: null }))).code).toBe('no-basis');
    expect(refusalOf(() => defer(life, command({ basis: { kind: 'mel-row', row: '9' } }), context(at))).code).toBe(
      'no-basis',
    );
    for (const missing of ['reference', 'issuedBy', 'limit']) {
      expect(refusalOf(() => defer(life, command({ basis: { ...dent, [missing]: ' ' } }), context(at))).code).toBe(
        'no-basis',
      );
    }
  });

  it('refuses before anybody said which item failed', () => {
    expect(refusalOf(() => defer(writtenUp(RECORDED), command(), context(at))).code).toBe('item-not-identified');
  });

  it('refuses a row of another entry', () => {
    const other = identifiedAs(writtenUp(RECORDED), ['1'], '22-11-01');
    expect(refusalOf(() => defer(other, command(), context(at))).code).toBe('row-not-of-this-entry');
  });

  it('gives no relief by analogy: a row for unit 2 does not relieve unit 1 (V-47)', () => {
    const refusal = refusalOf(
      () => defer(life, command(), context(at, { offered: offer({ covers: ['2'] }) })),
      'row-not-for-this-unit',
    );
    expect(refusal.facts).toMatchObject({ unit: '1', covers: ['2'] });
  });

  it('asks the row to cover every unit that may be the failed one, and takes the stricter interval of them', () => {
    const either = identifiedAs(writtenUp(RECORDED), ['1', '2']);
    expect(refusalOf(() => defer(either, command(), context(at, { offered: offer({ covers: ['2'] }) }))).code).toBe(
      'row-not-for-this-unit',
    );
    const offered = offer({ category: 'A', intervalByUnit: { '1': '2 flight-days', '2': '3 flight-days' } });
    const [act] = defer(either, command(), context(at, { offered }));
    expect(act?.limits.map(({ clock }) => clock?.interval)).toEqual(['2 flight-days', '3 flight-days']);
  });

  it('refuses category A without an interval of its own', () => {
    expect(refusalOf(() => defer(life, command(), context(at, { offered: offer({ category: 'A' }) }))).code).toBe(
      'interval-cannot-be-computed',
    );
  });

  it('is possible on a dent within limits, which needs no entry and sets no day', () => {
    const [act] = defer(writtenUp(RECORDED), command({ basis: dent }), context(at));
    expect(act?.basis).toEqual(dent);
    expect(deadlineOf(act?.limits ?? [])).toMatchObject({ lastDay: null, endsAt: null, counted: [] });
  });

  it("takes the document's own interval and last instant, whichever is first", () => {
    const until = '2026-02-01T00:00Z';
    const basis = { ...dent, interval: '10 calendar-days', until };
    const [act] = defer(life, command({ basis }), context(at));
    expect(deadlineOf(act?.limits ?? []).endsAt).toBe(until);
    expect(
      refusalOf(() => defer(life, command({ basis: { ...basis, until: '2026-01-26T10:30Z' } }), context(at))).code,
    ).toBe('interval-over');
  });

  it('refuses a second answer to the same write-up', () => {
    const deferred = deferredAs({}, RECORDED);
    const again = '2026-01-27T11:00Z';
    expect(refusalOf(() => defer(deferred, command({ by: signed('tech', again) }), context(again))).code).toBe(
      'write-up-already-answered',
    );
  });

  it('refuses once the interval is over, to the minute', () => {
    const last = '2026-02-05T23:59Z';
    const over = '2026-02-06T00:00Z';
    expect(defer(life, command({ by: signed('tech', last) }), context(last))).toHaveLength(1);
    expect(refusalOf(() => defer(life, command({ by: signed('tech', over) }), context(over))).code).toBe(
      'interval-over',
    );
  });

  it('asks for the concurrence of another person where the operator wants one', () => {
    const asked = { settings: { concurrenceNeeded: true } };
    expect(refusalOf(() => defer(life, command(), context(at, asked))).code).toBe('concurrence-missing');
    expect(refusalOf(() => defer(life, command({ concurrence: signed('tech', at) }), context(at, asked))).code).toBe(
      'same-person-concurring',
    );
    expect(
      refusalOf(() =>
        defer(
          life,
          command({ concurrence: signed('control', at, { scope: { privileges: ['defer'] } }) }),
          context(at),
        ),
      ).code,
    ).toBe('authorisation-does-not-cover');
    expect(defer(life, command({ concurrence: signed('control', at) }), context(at, asked))).toHaveLength(1);
  });

  it('refuses a signer who may not defer', () => {
    const by = signed('mechanic', at, { scope: { privileges: ['sign-procedure'] } });
    expect(refusalOf(() => defer(life, command({ by }), context(at))).code).toBe('authorisation-does-not-cover');
  });

  it('refuses a stored limit that counts from another time than the log', () => {
    const [act] = defer(life, command(), context(at));
    const later = identifiedAs(writtenUp('2026-01-27T10:00Z'));
    const [restarted] = defer(
      later,
      command({ by: signed('tech', '2026-01-27T11:00Z') }),
      context('2026-01-27T11:00Z'),
    );
    if (act === undefined || restarted === undefined) throw new Error('two deferrals were expected');
    expect(refusalOf(() => replay([...life.acts, { ...act, limits: restarted.limits }])).code).toBe(
      'clock-restarted',
    );
  });
});
