/** A defect that comes back: found, shown side by side, decided by maintenance control. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let aircraft = '';
const people: Record<string, ApiClient> = {};
const as = (name: string): ApiClient => people[name] as ApiClient;
const written: string[] = [];

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  for (const name of ['odrin', 'brask']) people[name] = await server.signIn(name);
  const fleet = await as('brask').get<Shapes['Fleet']>('/api/fleet');
  aircraft = fleet.aircraft.find(({ openItems }) => openItems === 0)?.id ?? '';
});

afterAll(() => server.stop());

async function writeUp(description: string, faultMessage: string): Promise<string> {
  const body = { aircraft, origin: 'crew', description, faultMessage, recordedAt: clock };
  const { defect } = (await as('odrin').post<Shapes['ActDone']>('/api/defects', body)).body;
  written.push(defect.id);
  return defect.id;
}

const view = (defect: string): Promise<Shapes['RecurrenceView']> =>
  as('brask').get(`/api/defects/${defect}/recurrence`);

it('counts what was answered by no fault found, and not what was raised in error', async () => {
  const first = await writeUp('Cabin fan stops.', 'FAN 1 FAULT');
  expect(await view(first)).toMatchObject({ times: 1, repetitive: false });
  const checks = { words: 'Fan run for ten minutes.', reference: 'K-AMM 21-21-11 task 3' };
  await as('odrin').sign(first, 'no-fault-found', { act: 'no-fault-found' }, checks);
  clock = '2026-01-15T04:00:00.000Z';
  const error = await writeUp('Cabin fan stops.', 'fan 1 fault');
  expect(await view(error)).toMatchObject({ times: 2, repetitive: false });
  await as('odrin').sign(error, 'raised-in-error', { act: 'raised-in-error' }, { words: 'Written twice.' });
});

it('is repetitive with the third, and shows each beside what was done then', async () => {
  clock = '2026-01-15T05:00:00.000Z';
  const second = await writeUp('Cabin fan stops again.', 'FAN 1 FAULT');
  expect((await view(second)).times).toBe(2);
  clock = '2026-01-15T06:00:00.000Z';
  const third = await writeUp('Cabin fan stops a third time.', 'FAN 1 FAULT');
  const seen = await view(third);
  expect(seen).toMatchObject({ times: 3, repetitive: true });
  expect(seen.writeUps.map(({ defect }) => defect)).toEqual([third, written[0], second]);
  expect(seen.writeUps[1]).toMatchObject({ state: 'no fault found', alikeBy: ['message'] });
  expect(seen.writeUps[1]?.work[0]).toContain('Fan run for ten minutes');
});

it('is decided by maintenance control alone, signed, with what is done about it', async () => {
  const [, , , third] = written;
  const path = `/api/defects/${third}/recurrence`;
  const sending = async (name: string) => {
    const { statement } = await as(name).get<Shapes['Statement']>(`${path}/statement?answer=yes`);
    return {
      repetitive: true,
      reason: 'Fan motor is changed tonight.',
      sign: { secret: as(name).secret, statement },
    };
  };
  const ifMatch = await as('brask').seen(third ?? '');
  const refused = await as('odrin').refused('POST', path, { body: await sending('odrin'), ifMatch });
  expect(refused.code).toBe('role-missing');
  const stale = await as('brask').refused('POST', path, { body: await sending('brask'), ifMatch: '"99"' });
  expect(stale).toMatchObject({ code: 'changed-meanwhile', status: 412 });
  await as('brask').post(path, await sending('brask'), { ifMatch });
  expect((await view(third ?? '')).decided).toMatchObject([
    { repetitive: true, reason: 'Fan motor is changed tonight.', by: 'Brask Ondelly' },
  ]);
});
