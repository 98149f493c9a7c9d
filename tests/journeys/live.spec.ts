/** Pages hear that something was done, by the numbers of the record: in order, nothing twice, nothing missed. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { EventReader } from '../support/event-reader.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:00:00.000Z';
let server: RunningServer;
let odrin: ApiClient;
let aircraft: Shapes['Fleet']['aircraft'];
const readers: EventReader[] = [];

async function follow(client: ApiClient, seen?: number): Promise<EventReader> {
  const headers: Record<string, string> = seen === undefined ? {} : { 'last-event-id': String(seen) };
  const reader = new EventReader(await client.page('/api/events', headers));
  readers.push(reader);
  return reader;
}

const writeUp = async (client: ApiClient, of: string): Promise<void> => {
  const told = { aircraft: of, origin: 'technician', description: 'A lamp is dark.', recordedAt: clock };
  await client.post('/api/defects', told);
};

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  odrin = await server.signIn('odrin');
  ({ aircraft } = await odrin.get<Shapes['Fleet']>('/api/fleet'));
});

afterAll(async () => {
  for (const reader of readers) await reader.close();
  await server.stop();
});

it('tells which aircraft and what, once it is sealed, with the number to come back with', async () => {
  const reader = await follow(await server.signIn('brask'));
  const from = await reader.next();
  expect(from.type).toBe('from');
  await writeUp(odrin, aircraft[0]?.id ?? '');
  const change = await reader.next();
  expect(change).toMatchObject({ type: 'change', data: { aircraft: aircraft[0]?.id, what: 'defect.written-up' } });
  expect(change.id).toBe(Number(from.id) + 1);
});

it('whoever comes back with the last number misses nothing and hears nothing twice', async () => {
  const before = await follow(odrin);
  const { id: seen } = await before.next();
  await before.close();
  await Promise.all(aircraft.slice(0, 5).map(({ id }) => writeUp(odrin, id)));
  const after = await follow(odrin, seen);
  expect(await after.next()).toMatchObject({ type: 'from', id: seen });
  const told = await after.take(5);
  expect(told.map(({ id }) => id)).toEqual([1, 2, 3, 4, 5].map((more) => seen + more));
  expect(new Set(told.map(({ data }) => data['aircraft']))).toEqual(
    new Set(aircraft.slice(0, 5).map(({ id }) => id)),
  );
});

it('whoever comes back with a number that was never given is told to read everything again', async () => {
  expect(await (await follow(odrin, 999_999)).next()).toMatchObject({ type: 'behind' });
});

it('tells nothing of another operator', async () => {
  const visitor = await server.signIn('kesh');
  const reader = await follow(visitor);
  const own = await reader.next();
  await writeUp(odrin, aircraft[1]?.id ?? '');
  const {
    aircraft: [plane],
  } = await visitor.get<Shapes['Fleet']>('/api/fleet');
  await writeUp(visitor, plane?.id ?? '');
  expect(await reader.next()).toMatchObject({ id: own.id + 1, data: { aircraft: plane?.id } });
});

it('is for nobody who is not signed in, and refuses a number that is none', async () => {
  expect(await server.visitor().refused('GET', '/api/events')).toMatchObject({ status: 401, code: 'not-signed-in' });
  const headers = { 'last-event-id': "1' or '1" };
  expect(await odrin.refused('GET', '/api/events', { headers })).toMatchObject({
    status: 422,
    code: 'invalid-input',
  });
});

it('is followed ten times at most by one session', async () => {
  const client = await server.signIn('hebba');
  for (let n = 0; n < 10; n += 1) await (await follow(client)).next();
  expect(await client.refused('GET', '/api/events')).toMatchObject({ status: 429, code: 'too-many-requests' });
});

it('ends for whoever has signed out', async () => {
  const client = await server.signIn('hebba');
  const reader = await follow(client);
  await reader.next();
  await client.send('DELETE', '/api/session');
  expect(await reader.ends()).toBe(true);
});
