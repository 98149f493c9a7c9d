import { Instant, LocalDate, ZoneId } from '@js-joda/core';
import '@js-joda/timezone';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extend, mayDepart, rectificationWindow, whatIsLeft, type Extension, type ExtensionInput } from './index.js';

const c = rectificationWindow({ category: 'C', recordedAt: '2026-01-26T10:00', base: 'UTC', tzdb: '2025c' });
const asked: ExtensionInput = {
  preset: 'easa',
  window: c,
  grantedAt: '2026-02-03T09:00Z',
  alreadyExtended: 0,
  procedureHeld: true,
};

function granted(given: Partial<ExtensionInput> = {}): Extension {
  const answer = extend({ ...asked, ...given });
  if ('refused' in answer) throw new Error(answer.because);
  return answer;
}

const refused = (given: Partial<ExtensionInput>): string | null => {
  const answer = extend({ ...asked, ...given });
  return 'refused' in answer ? answer.refused : null;
};

describe('a granted extension', () => {
  it('counts from the old deadline whenever it is granted, in the base', () => {
    const zones = fc.constantFrom('UTC', 'Europe/Paris', 'America/Havana', 'Australia/Lord_Howe', 'Africa/Cairo');
    const moment = fc.integer({ min: Date.UTC(2024, 0, 1), max: Date.UTC(2026, 5, 1) });
    fc.assert(
      fc.property(
        zones,
        moment,
        fc.integer({ min: 1, max: 120 }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (base, at, days, when) => {
          const recordedAt = new Date(at).toISOString();
          const window = rectificationWindow({
            category: 'D',
            interval: `${days} calendar-days`,
            recordedAt,
            base,
            tzdb: '2025c',
          });
          const grantedAt = new Date(at + when * (Date.parse(window.endsAt) - at)).toISOString();
          const zone = ZoneId.of(base);
          const discovery = Instant.ofEpochMilli(at).atZone(zone).toLocalDate();
          const lastDay = discovery.plusDays(2 * days);
          expect(granted({ window, grantedAt })).toMatchObject({ days, lastDay: lastDay.toString() });
          const ends = LocalDate.parse(lastDay.toString()).plusDays(1).atStartOfDay(zone).toInstant().toEpochMilli();
          expect(Date.parse(granted({ window, grantedAt }).endsAt)).toBe(ends);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('moves the end for flights and for what is left, and nothing else', () => {
    const { window } = granted();
    expect(window).toMatchObject({ firstDay: c.firstDay, startsAt: c.startsAt, days: 10, lastDay: '2026-02-15' });
    expect(mayDepart(c, { offBlockAt: '2026-02-15T23:59Z' }).answer).toBe('fails');
    expect(mayDepart(window, { offBlockAt: '2026-02-15T23:59Z' }).answer).toBe('holds');
    expect(mayDepart(window, { offBlockAt: '2026-02-16T00:00Z' }).answer).toBe('fails');
    expect(whatIsLeft(window, '2026-02-15T12:00Z').limits[0]).toMatchObject({ left: 1, used: 19 });
    expect(window.lengthHours).toBe(480);
  });

  it('may be shorter than the longest', () => {
    expect(granted({ days: 4 }).lastDay).toBe('2026-02-09');
  });

  it('explains itself', () => {
    expect(granted().explanation).toBe(
      'extended on 3 Feb 2026 09:00 UTC by 10 days from the old last day, 5 Feb 2026, ends 15 Feb 2026 23:59:59 UTC.',
    );
  });

  it('counts a further one, where a preset allows it, by the interval itself and not by what was added', () => {
    const first = granted({ preset: 'tcca-2006' });
    const second = granted({
      preset: 'tcca-2006',
      window: first.window,
      alreadyExtended: 1,
      grantedAt: '2026-02-14T09:00Z',
    });
    expect(second).toMatchObject({ days: 10, lastDay: '2026-02-25' });
  });
});

describe('the notice of an extension', () => {
  it('skips weekends and the holidays given, in the base', () => {
    const due = (grantedAt: string, holidays: string[] = []) =>
      granted({ preset: 'tcca-2006', grantedAt, holidays }).noticeDueOn;
    expect(due('2026-01-29T15:00Z')).toBe('2026-01-30');
    expect(due('2026-01-30T15:00Z')).toBe('2026-02-02');
    expect(due('2026-01-31T15:00Z')).toBe('2026-02-02');
    expect(due('2026-01-30T15:00Z', ['2026-02-02'])).toBe('2026-02-03');
    const west = rectificationWindow({
      category: 'C',
      recordedAt: '2026-01-26T10:00',
      base: 'America/Toronto',
      tzdb: '2025c',
    });
    expect(granted({ preset: 'tcca-2006', window: west, grantedAt: '2026-01-31T03:00Z' })).toMatchObject({
      noticeDueOn: '2026-02-02',
      noticeDueAt: '2026-02-03T05:00:00Z',
    });
  });

  it('is 24 hours on the clock over a clock change, and the same reading a month later', () => {
    const window = rectificationWindow({
      category: 'C',
      recordedAt: '2026-03-20T10:00',
      base: 'Europe/Paris',
      tzdb: '2025c',
    });
    const grantedAt = '2026-03-28T20:00Z';
    expect(granted({ preset: 'faa', window, grantedAt }).noticeDueAt).toBe('2026-03-29T20:00:00Z');
    expect(granted({ preset: 'easa', window, grantedAt }).noticeDueAt).toBe('2026-04-28T19:00:00Z');
  });

  it('is not owed where the authority agreed beforehand', () => {
    expect(granted({ preset: 'tcca-2022', authorityAgreement: 'letter 7' })).toMatchObject({
      noticeDueAt: null,
      noticeDueOn: null,
    });
  });
});

describe('an extension that is refused', () => {
  it('is granted in the last second, and no more at the end', () => {
    expect(refused({ grantedAt: '2026-02-05T23:59:59Z' })).toBe(null);
    expect(refused({ grantedAt: '2026-02-06T00:00:00Z' })).toBe('after-expiry');
  });

  it('was granted before the defect was recorded', () => {
    expect(refused({ grantedAt: '2026-01-26T09:59Z' })).toBe('before-record');
  });

  it('is longer than the interval', () => {
    expect(refused({ days: 11 })).toBe('longer-than-interval');
    expect(refused({ days: 10 })).toBe(null);
  });

  it('gives a sentence and the paragraph', () => {
    expect(extend({ ...asked, preset: 'faa', alreadyExtended: 1 })).toEqual({
      refused: 'already-extended',
      because: 'The deferral was extended 1 of 1 times allowed.',
      paragraph: 'FAA Order 8900.1 Vol 4 Ch 4, 4-689B; operations specification D095',
    });
  });

  it('has an agreement of blanks only', () => {
    expect(refused({ preset: 'tcca-2022', authorityAgreement: '  ' })).toBe('needs-authority-agreement');
  });
});

it('input that cannot be is refused with a sentence', () => {
  expect(() => extend({ ...asked, grantedAt: '2026-02-03T09:00' })).toThrow('neither Z nor an offset');
  expect(() => extend({ ...asked, days: 0 })).toThrow('adds nothing');
  expect(() => extend({ ...asked, days: 1.5 })).toThrow('extension.days');
  expect(() => extend({ ...asked, alreadyExtended: -1 })).toThrow('extension.alreadyExtended');
  expect(() => extend({ ...asked, alreadyExtended: undefined as unknown as number })).toThrow('is not known');
});
