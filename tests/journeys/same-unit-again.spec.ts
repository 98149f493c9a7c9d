/** One unit written up twice, and its part swapped to the other side: one defect, one clock. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let tech: ApiClient;
let first: Shapes['DefectLine'];

const itemOf = ({ entry, units }: Shapes['DefectLine']) => ({ entry, units });
const at = (id: string): Promise<Shapes['DefectView']> => tech.get(`/api/defects/${id}`);

async function again(recordedAt: string): Promise<string> {
  const said = { aircraft: first.aircraft, origin: 'crew', description: 'It fails again.', recordedAt };
  const late = { lateReason: 'no signal', sheet: 'QOF-9001', item: itemOf(first) };
  return (await tech.post<Shapes['ActDone']>('/api/defects', { ...said, ...late })).body.defect.id;
}

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  clock = '2026-01-15T03:10:00.000Z';
  tech = await server.signIn('odrin');
  const { defects } = await tech.get<Shapes['DefectList']>('/api/defects');
  const found = defects.find(
    ({ row, units, state }) => row !== null && units.length === 1 && state.startsWith('open'),
  );
  if (!found) throw new Error('Nothing is open under deferral for one unit.');
  first = found;
});

afterAll(() => server.stop());

it('is refused a deferral of its own, and the open item is named', async () => {
  const second = await again(clock);
  const item = itemOf(first);
  const query = { act: 'defer', entry: first.entry ?? '', row: first.row ?? '' };
  const refusal = await tech.signRefused(second, 'deferral', query, { item, row: first.row });
  expect(refusal).toMatchObject({ code: 'unit-deferred-already', status: 409 });
  expect(`${refusal.detail} ${String(refusal['next'])}`).toContain(first.number);
});

it('goes on as another entry of it, whose clock stays', async () => {
  const second = await again(clock);
  const before = (await at(first.id)).defect;
  const done = await tech.sign(second, 'joining', { act: 'join' }, { other: first.id, reason: 'same unit' });
  expect(done.defect.state).toBe('closed');
  const after = await at(first.id);
  expect(after.defect.deadline?.endsAt).toBe(before.deadline?.endsAt);
  expect([after.defect.recordedAt, after.defect.sheet]).toEqual([before.recordedAt, 'QOF-9001']);
  expect(after.history.at(-1)?.act).toBe('re-entered');
});
