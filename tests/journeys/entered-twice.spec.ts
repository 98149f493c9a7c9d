/** Two enter the same at the same moment: one of them does, and the other is told so. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { SignatureScene } from './signatures-scene.js';

let scene: SignatureScene;
let office: ApiClient;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => '2026-01-15T12:00:00.000Z', ['ulla', 'odrin']);
  office = scene.person('ulla');
});

afterAll(() => scene.server.stop());

async function refusedOf(path: string, body: object): Promise<number[]> {
  const key = () => crypto.randomUUID();
  const sent = Array.from({ length: 6 }, () => office.send('POST', path, { body, key: key() }));
  const statuses = (await Promise.all(sent)).map(({ status }) => status);
  expect(statuses.filter((status) => status === 201)).toHaveLength(1);
  return statuses.filter((status) => status !== 201 && status !== 409 && status !== 422);
}

it('a hold, an aircraft, a station, an approval', async () => {
  const { people } = await office.get<Shapes['Members']>('/api/people');
  const hold = { kind: 'person', subject: people[0]?.id, reason: 'A claim is open.' };
  expect(await refusedOf('/api/record/holds', hold)).toEqual([]);
  expect(await refusedOf('/api/stations', { code: 'QZZ', name: 'Zell', zone: 'UTC' })).toEqual([]);
  expect(await refusedOf('/api/organisations', { name: 'Zell Line', approval: 'QX-145-77' })).toEqual([]);
  expect(await refusedOf('/api/aircraft', { registration: 'Q-ZZA', type: 'Kellwing' })).toEqual([]);
});
