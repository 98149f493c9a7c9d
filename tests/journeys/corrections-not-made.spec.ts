/**
 * A correction that waits keeps the aircraft on the ground; so it can be left unmade by a signature, and ends where what it
 * pointed at is no more (145.A.48; common practice, no source for the ending).
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let tech: ApiClient;
let inspector: ApiClient;
let item: string;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  tech = await server.signIn('odrin');
  inspector = await server.signIn('wick');
  const { aircraft } = await tech.get<Shapes['Fleet']>('/api/fleet');
  const on = aircraft.find(({ registration }) => registration === 'Q-KEA') ?? aircraft[0];
  const failed = { entry: '33-42-11', units: ['L'] };
  const written = await tech.post<Shapes['ActDone']>('/api/defects', {
    aircraft: on?.id,
    origin: 'technician',
    description: 'Logo light out.',
    recordedAt: clock,
    item: failed,
  });
  item = written.body.defect.id;
  await tech.sign(item, 'deferral', { act: 'defer', entry: '33-42-11', row: '1' }, { item: failed, row: '1' });
});

afterAll(() => server.stop());

const view = (): Promise<Shapes['DefectView']> => tech.get(`/api/defects/${item}`);
const gates = async (): Promise<string> => {
  const { aircraft } = (await view()).defect;
  return JSON.stringify((await tech.get<Shapes['Verdict']>(`/api/aircraft/${aircraft}/answer`)).gates);
};

async function ask(now: string): Promise<string> {
  const { history } = await view();
  const of = history.find(({ act }) => act === 'deferred')?.id ?? '';
  const said = { of, field: 'unit', now };
  await tech.sign(item, 'correction', { act: 'correct', ...said }, { ...said, reason: 'Looked from in front.' });
  return (await view()).waiting[0]?.id ?? '';
}

const stays = (by: ApiClient, asked: string, reason = 'It is the left one.') =>
  by.sign(item, 'as-written', { act: 'stays-as-written', asked }, { asked, reason });

it('the second person finds the first words right, and the aircraft waits for it no longer', async () => {
  const asked = await ask('R');
  expect(await gates()).toContain('a correction waits for a second look');
  const done = await stays(inspector, asked);
  expect(done.signed?.statement).toMatch(/I looked myself, independently .*the unit reads "L" and not "R"/);
  const { defect, waiting, history } = await view();
  expect([defect.units, waiting]).toEqual([['L'], []]);
  expect(history.at(-1)?.words).toBe('Stays as written, the unit, not "R" in place of "L": It is the left one.');
  expect(await gates()).not.toContain('second look');
});

it('whoever asked takes it back; another who may not inspect does not', async () => {
  const asked = await ask('R');
  const body = { asked, reason: 'x' };
  const control = await server.signIn('brask');
  const refused = await control.signRefused(item, 'as-written', { act: 'stays-as-written', asked }, body);
  expect(refused).toMatchObject({ code: 'authorisation-does-not-cover' });
  const done = await stays(tech, asked, 'Mistaken.');
  expect(done.signed?.statement).toMatch(/^I asked for a correction .* and take it back/);
  expect((await view()).waiting).toEqual([]);
  const gone = new URLSearchParams({ act: 'stays-as-written', asked }).toString();
  expect(await tech.refused('GET', `/api/defects/${item}/statement?${gone}`)).toMatchObject({
    code: 'correction-not-asked',
  });
});

it('one that waits for the unit ends when the part is swapped, and the swap says so', async () => {
  await ask('R');
  const { left } = await view();
  const moved = left.map(({ id: thing, where }) => ({ item: thing, where }));
  const said = { fromUnit: 'L', toUnit: 'R', reason: 'To compare.', moved };
  await tech.sign(item, 'swap', { act: 'swap-unit' }, said);
  const { defect, waiting, history } = await view();
  expect([defect.units, waiting]).toEqual([['R'], []]);
  expect(history.at(-1)?.words).toContain('the correction asked for is not made, the unit "R" in place of "L"');
  expect(await gates()).not.toContain('second look');
});

it('the swapped part stays down where it is when the act is corrected, and its unit is not put back', async () => {
  const of = (await view()).history.find(({ act }) => act === 'deferred')?.id ?? '';
  const query = new URLSearchParams({ act: 'correct', of, field: 'unit', now: 'R' }).toString();
  expect(await tech.refused('GET', `/api/defects/${item}/statement?${query}`)).toMatchObject({
    code: 'unit-moved-since',
  });
});

it('the tables still say what the record says', async () => {
  const { code, stdout } = await run(['record', 'compare', '--database', server.ownerUrl]);
  expect({ code, stdout }).toMatchObject({ code: 0 });
});
