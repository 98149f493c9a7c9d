/** The notice of an extension (X-06, SEEN-Q: due 24 hours after the grant, and late after that). */
import { describe, expect, it } from 'vitest';
import { noticeState } from './notice-state.js';

const owed = {
  noticeDueAt: '2026-02-06T23:30:00.000Z',
  sentAt: null as string | null,
  sentReference: null as string | null,
  acknowledgedAt: null as string | null,
  acknowledgedReference: null as string | null,
};
const stateAt = (now: string, over: Partial<typeof owed> | { noticeDueAt: null } = {}) =>
  noticeState({ ...owed, ...over }, now, 'UTC');

describe('the notice of an extension', () => {
  it('is due up to its time and overdue after it, by its word', () => {
    expect(stateAt('2026-02-06T23:30:00.000Z')).toEqual({
      state: 'due',
      words: 'due by 6 Feb 2026 23:30 UTC',
      late: false,
    });
    const { state, words, late } = stateAt('2026-02-06T23:30:00.001Z');
    expect([state, late, words.startsWith('OVERDUE')]).toEqual(['overdue', true, true]);
  });

  it('was sent in time or late, whenever that is looked at', () => {
    const sent = (sentAt: string) => stateAt('2026-03-01T00:00:00.000Z', { sentAt, sentReference: 'letter 41' });
    expect(sent('2026-02-06T23:30:00.000Z')).toMatchObject({ state: 'sent', late: false });
    expect(sent('2026-02-07T09:00:00.000Z')).toMatchObject({ state: 'sent', late: true });
    expect(sent('2026-02-07T09:00:00.000Z').words).toContain('LATE');
  });

  it('is owed to nobody where the rules name no time, and may be sent all the same', () => {
    expect(stateAt('2026-03-01T00:00:00.000Z', { noticeDueAt: null })).toMatchObject({ state: 'none', late: false });
    const sentAt = '2026-03-01T00:00:00.000Z';
    expect(noticeState({ ...owed, noticeDueAt: null, sentAt }, sentAt, 'UTC').state).toBe('sent');
  });

  it('reads in the time of the base beside UTC, also where the day is another one', () => {
    const words = noticeState(owed, '2026-02-06T10:00:00.000Z', 'Europe/Athens').words;
    expect(words).toBe('due by 6 Feb 2026 23:30 UTC (7 Feb 2026 01:30 Europe/Athens)');
  });
});
