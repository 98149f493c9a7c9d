/**
 * A mistyped write-up is corrected by a signed act of its own (published requirements E-09, E-11): what was written stays,
 * what the correction moves is said before it is signed, and no clock is ever given more time by it.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let tech: ApiClient;
let deferred: Shapes['DefectLine'];

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  clock = '2026-01-15T03:10:00.000Z';
  tech = await server.signIn('odrin');
  const { defects } = await tech.get<Shapes['DefectList']>('/api/defects');
  const found = defects.find(({ deadline, state }) => deadline?.lastDay != null && state.startsWith('open'));
  if (!found) throw new Error('Nothing is open with a last day.');
  deferred = found;
});

afterAll(() => server.stop());

const view = (id: string): Promise<Shapes['DefectView']> => tech.get(`/api/defects/${id}`);
const asked = (field: string, now: string) => ({ act: 'correct', field, now });
const correct = (id: string, field: string, now: string, reason = 'misread') =>
  tech.sign(id, 'correction', asked(field, now), { field, now, reason });
const refused = (id: string, field: string, now: string, reason = 'misread') =>
  tech.signRefused(id, 'correction', asked(field, now), { field, now, reason });
const daysBefore = (at: string, days: number): string => new Date(Date.parse(at) - days * 86_400_000).toISOString();

describe('words', () => {
  it.each([
    ['description', 'Reading light at seat 12A flickers.'],
    ['sheet', 'QOF-7777'],
    ['system', '33'],
    ['faultMessage', 'LIGHT 12A'],
  ] as const)('%s reads otherwise, and what was written stays with who corrected it', async (field, now) => {
    const before = await view(deferred.id);
    const done = await correct(deferred.id, field, now);
    expect(done.signed?.statement).toContain('No limit moves.');
    const after = await view(deferred.id);
    expect(after.defect[field]).toBe(now);
    expect(after.defect.deadline).toEqual(before.defect.deadline);
    const [written] = after.history;
    expect(written?.words).toBe(before.history[0]?.words);
    expect(written?.corrections.at(-1)).toMatchObject({ was: before.defect[field], now, at: clock });
    expect(after.history.at(-1)).toMatchObject({ act: 'corrected', statement: done.signed?.statement });
  });

  it('is refused for another statement than the one shown, and then nothing is corrected', async () => {
    const { etag } = await tech.send('GET', `/api/defects/${deferred.id}`);
    const { statement } = await tech.get<Shapes['Statement']>(
      `/api/defects/${deferred.id}/statement?act=correct&field=sheet&now=QOF-1`,
    );
    const body = { field: 'sheet', now: 'QOF-2', reason: 'misread', sign: { secret: tech.secret, statement } };
    const sending = { body, ifMatch: etag ?? '' };
    const problem = await tech.refused('POST', `/api/defects/${deferred.id}/correction`, sending);
    expect(problem).toMatchObject({ code: 'statement-not-shown' });
    expect((await view(deferred.id)).defect.sheet).toBe('QOF-7777');
  });

  it.each([
    ['system', 'thirty'],
    ['sheet', 'Q'.repeat(41)],
    ['recordedAt', 'yesterday'],
    ['occurredAt', '2026-02-30T10:00:00Z'],
  ])('%s that reads %s is refused where it stands', async (field, now) => {
    const query = new URLSearchParams(asked(field, now)).toString();
    const problem = await tech.refused('GET', `/api/defects/${deferred.id}/statement?${query}`);
    expect(problem).toMatchObject({ status: 422, errors: [{ pointer: '/now' }] });
  });
});

describe('the time in the log', () => {
  it('made earlier moves the last day by as much, and the statement says so before it is signed', async () => {
    const before = (await view(deferred.id)).defect;
    const earlier = daysBefore(before.recordedAt, 1);
    const done = await correct(deferred.id, 'recordedAt', earlier, 'the sheet says the day before');
    expect(done.signed?.statement).toMatch(/The last day moves from \d+ \w+ \d+ to \d+ \w+ \d+\./);
    const after = (await view(deferred.id)).defect;
    expect(after.recordedAt).toBe(earlier);
    const { history } = await view(deferred.id);
    const now = history[0]?.corrections.at(-1)?.now ?? 'nothing';
    expect(now).toMatch(/ UTC \(.+ \w+\/\w+\)$/);
    expect(history.at(-1)?.words).toContain(`the time in the log "${now}" in place of`);
    const day = before.deadline?.lastDay ?? '';
    expect(after.deadline?.lastDay).toBe(daysBefore(`${day}T00:00:00.000Z`, 1).slice(0, 10));
  });

  it('is never made later: the clock is not restarted', async () => {
    const { recordedAt, deadline } = (await view(deferred.id)).defect;
    const problem = await refused(deferred.id, 'recordedAt', daysBefore(recordedAt, -1));
    expect(problem).toMatchObject({ code: 'correction-moves-the-day' });
    expect((await view(deferred.id)).defect.deadline).toEqual(deadline);
  });
});

it('the time it happened is corrected, but not to one after the log', async () => {
  const { recordedAt } = (await view(deferred.id)).defect;
  await correct(deferred.id, 'occurredAt', daysBefore(recordedAt, 1));
  const problem = await refused(deferred.id, 'occurredAt', daysBefore(recordedAt, -1));
  expect(problem).toMatchObject({ code: 'occurred-after-recorded' });
});

it('somebody who may not write up corrects nothing', async () => {
  const dispatcher = await server.signIn('jorik');
  const query = asked('sheet', 'QOF-3');
  const problem = await dispatcher.signRefused(deferred.id, 'correction', query, {
    field: 'sheet',
    now: 'QOF-3',
    reason: 'misread',
  });
  expect(problem.status).toBeGreaterThanOrEqual(400);
  expect((await view(deferred.id)).defect.sheet).toBe('QOF-7777');
});

it('the tables still say what the record says', async () => {
  const { code, stdout } = await run(['record', 'compare', '--database', server.ownerUrl]);
  expect({ code, stdout }).toMatchObject({ code: 0 });
});
