/** What is closed is refused as closed, whatever else would refuse it too. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const now = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let tech: ApiClient;
let aircraft: string;

const written = async (unit: string): Promise<string> => {
  const item = { entry: '33-42-11', units: [unit] };
  const said = { aircraft, origin: 'technician', description: `Landing light ${unit} out.`, recordedAt: now, item };
  return (await tech.post<Shapes['ActDone']>('/api/defects', said)).body.defect.id;
};

beforeAll(async () => {
  server = await runningServer({ now: () => now, demo: true });
  tech = await server.signIn('odrin');
  const fleet = await tech.get<Shapes['Fleet']>('/api/fleet');
  aircraft = fleet.aircraft.find(({ registration }) => registration === 'Q-KEA')?.id ?? '';
});

afterAll(() => server.stop());

it('a closed write-up is not refused by what its row would say beside the others', async () => {
  await tech.sign(await written('L'), 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  const right = await written('R');
  const beside = await tech.signRefused(right, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  expect(beside.code).toBe('row-not-available');
  await tech.sign(right, 'raised-in-error', { act: 'raised-in-error' }, { words: 'It is lit.' });
  const closed = await tech.signRefused(right, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  expect(closed).toMatchObject({ code: 'already-closed', status: 409 });
});
