import { describe, expect, it } from 'vitest';
import { actor, AIRCRAFT, context, deferredAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { replay } from '../replay.js';
import { handOver } from './hand-over.js';
import { identify } from './identify.js';
import { reEnter } from './re-enter.js';
import { writeUp, type WriteUp } from './write-up.js';

const command = (over: Partial<WriteUp> = {}): WriteUp => ({
  id: 'a1',
  defect: 'D1',
  by: actor('crew'),
  aircraft: AIRCRAFT,
  origin: 'crew',
  description: 'Brake 2 drags.',
  ...over,
});

describe('writing a defect in the log', () => {
  it('keeps three times: when it occurred, when it was in the log, when it was entered', () => {
    const [act] = writeUp(
      null,
      command({
        occurredAt: '2026-10-24T21:10:00Z',
        recordedAt: '2026-10-24T23:40+02:00',
        lateReason: 'no signal at the stand',
        sheet: '118',
      }),
      context('2026-10-25T02:20+01:00'),
    );
    expect(act).toMatchObject({
      occurredAt: '2026-10-24T21:10:00Z',
      recordedAt: '2026-10-24T23:40+02:00',
      enteredAt: '2026-10-25T02:20+01:00',
      sheet: '118',
      lateReason: 'no signal at the stand',
    });
  });

  it('refuses a late entry without a reason, and says how late it is', () => {
    const late = command({ recordedAt: '2026-10-24T23:40+02:00' });
    const refusal = refusalOf(
      () => writeUp(null, late, context('2026-10-25T02:20+01:00')),
      'late-entry-needs-reason',
    );
    expect(refusal.facts).toMatchObject({ minutesLate: 220 });
    expect(refusal.next).toContain('The day of discovery stays the day in the log');
    expect(
      refusalOf(() => writeUp(null, { ...late, lateReason: '  ' }, context('2026-10-25T02:20+01:00'))).code,
    ).toBe('late-entry-needs-reason');
  });

  it('takes an entry within the setting without a reason', () => {
    const at = { recordedAt: '2026-01-26T10:00Z' };
    expect(writeUp(null, command(at), context('2026-01-26T11:00Z'))).toHaveLength(1);
    expect(refusalOf(() => writeUp(null, command(at), context('2026-01-26T11:01Z'))).code).toBe(
      'late-entry-needs-reason',
    );
  });

  it('refuses a log time in the future of the entry', () => {
    expect(
      refusalOf(() => writeUp(null, command({ recordedAt: '2026-01-26T10:00+01:00' }), context('2026-01-26T08:59Z')))
        .code,
    ).toBe('recorded-in-the-future');
    expect(
      writeUp(null, command({ recordedAt: '2026-01-26T10:00+01:00' }), context('2026-01-26T09:00Z')),
    ).toHaveLength(1);
  });

  it('refuses what occurred after it was in the log', () => {
    expect(
      refusalOf(() =>
        writeUp(
          null,
          command({ occurredAt: '2026-01-26T09:01Z', recordedAt: '2026-01-26T09:00Z' }),
          context('2026-01-26T09:30Z'),
        ),
      ).code,
    ).toBe('occurred-after-recorded');
  });

  it.each(['2026-02-30T10:00Z', '2026-01-26T10:00', 'yesterday', '2026-01-26T25:00Z', ''])(
    'refuses "%s", which is no instant',
    (recordedAt) => {
      const refusal = refusalOf(
        () => writeUp(null, command({ recordedAt }), context('2026-01-26T10:00Z')),
        'not-an-instant',
      );
      expect(refusal.facts).toMatchObject({ value: recordedAt });
    },
  );

  it('refuses a write-up that says nothing, and one by nobody', () => {
    expect(refusalOf(() => writeUp(null, command({ description: ' ' }), context('2026-01-26T10:00Z'))).code).toBe(
      'text-missing',
    );
    expect(refusalOf(() => writeUp(null, command({ by: actor('') }), context('2026-01-26T10:00Z'))).code).toBe(
      'text-missing',
    );
  });

  it('refuses to write up the same defect twice, in a decision and in a history', () => {
    const life = writtenUp('2026-01-26T10:00Z');
    expect(refusalOf(() => writeUp(life, command(), context('2026-01-27T10:00Z'))).code).toBe('already-written-up');
    const again = writeUp(null, command(), context('2026-01-27T10:00Z'));
    expect(refusalOf(() => replay([...life.acts, ...again])).code).toBe('already-written-up');
  });

  it('refuses a signature whose authorisation does not let its holder write up', () => {
    const by = signed('tech', '2026-01-26T10:00Z', { scope: { privileges: ['release'] } });
    expect(refusalOf(() => writeUp(null, command({ by }), context('2026-01-26T10:00Z'))).code).toBe(
      'authorisation-does-not-cover',
    );
  });
});

describe('identifying the failed item', () => {
  const at = '2026-01-26T11:00Z';
  const item = { entry: '22-10-01', subEntry: 'all', units: ['1'] };
  const say = { id: 'a2', by: actor('tech'), item, installed: ['1', '2'] };

  it('refuses a unit that is not installed, and an entry without a unit', () => {
    const life = writtenUp('2026-01-26T10:00Z');
    expect(refusalOf(() => identify(life, { ...say, item: { ...item, units: ['1', '3'] } }, context(at))).code).toBe(
      'unit-not-installed',
    );
    expect(refusalOf(() => identify(life, { ...say, item: { ...item, units: [] } }, context(at))).code).toBe(
      'no-unit-named',
    );
  });

  it('lets another item take its place before, and only narrows it down after the deferral', () => {
    const life = deferredAs({}, '2026-01-26T10:00Z');
    expect(refusalOf(() => identify(life, { ...say, item: { ...item, units: ['2'] } }, context(at))).code).toBe(
      'item-under-deferral',
    );
    expect(refusalOf(() => identify(life, { ...say, item: { ...item, entry: '22-11-01' } }, context(at))).code).toBe(
      'item-under-deferral',
    );
    expect(identify(life, say, context(at))).toHaveLength(1);
    expect(
      identify(writtenUp('2026-01-26T10:00Z'), { ...say, item: { ...item, units: ['2'] } }, context(at)),
    ).toHaveLength(1);
  });
});

describe('what moves no clock', () => {
  it('keeps the limits through re-entry on a new sheet and through hand-over (D-08, SEEN)', () => {
    const life = deferredAs({}, '2026-01-26T10:00Z');
    const later = replay([
      ...life.acts,
      ...reEnter(
        life,
        { id: 'a8', by: actor('tech'), sheet: '131', reason: 'new book' },
        context('2026-01-30T10:00Z'),
      ),
      ...handOver(life, { id: 'a9', by: actor('tech'), to: 'night shift', note: '' }, context('2026-01-31T10:00Z')),
    ]);
    expect(later.limits).toEqual(life.limits);
    expect(later).toMatchObject({ sheet: '131', heldBy: 'night shift', recordedAt: '2026-01-26T10:00Z' });
    expect(
      refusalOf(() =>
        reEnter(life, { id: 'a8', by: actor('tech'), sheet: '', reason: 'x' }, context('2026-01-30T10:00Z')),
      ).code,
    ).toBe('text-missing');
    expect(
      refusalOf(() =>
        handOver(life, { id: 'a8', by: actor('tech'), to: ' ', note: '' }, context('2026-01-30T10:00Z')),
      ).code,
    ).toBe('text-missing');
  });
});
