/** Two enter the same at the same moment: one of them does, and the other is told so. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { SignatureScene } from './signatures-scene.js';

let scene: SignatureScene;
let office: ApiClient;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => '2026-01-15T12:00:00.000Z', ['ulla', 'odrin', 'wenna']);
  office = scene.person('ulla');
});

afterAll(() => scene.server.stop());

/** What is answered beside a yes to one of them, and a refusal to the others. */
async function refusedOf(path: string, body: object, by = office): Promise<number[]> {
  const key = () => crypto.randomUUID();
  const sent = Array.from({ length: 6 }, () => by.send('POST', path, { body, key: key() }));
  const statuses = (await Promise.all(sent)).map(({ status }) => status);
  expect(statuses.filter((status) => status < 300)).toHaveLength(1);
  return statuses.filter((status) => status >= 300 && status !== 409 && status !== 422);
}

it('a hold, an aircraft, a station, an approval', async () => {
  const { people } = await office.get<Shapes['Members']>('/api/people');
  const hold = { kind: 'person', subject: people[0]?.id, reason: 'A claim is open.' };
  expect(await refusedOf('/api/record/holds', hold)).toEqual([]);
  expect(await refusedOf('/api/stations', { code: 'QZZ', name: 'Zell', zone: 'UTC' })).toEqual([]);
  expect(await refusedOf('/api/organisations', { name: 'Zell Line', approval: 'QX-145-77' })).toEqual([]);
  expect(await refusedOf('/api/aircraft', { registration: 'Q-ZZA', type: 'Kellwing' })).toEqual([]);
});

it('a sign-in name, an authorisation, a revision of a manual', async () => {
  const quality = scene.person('wenna');
  const account = { name: 'Zella Onn', signInName: 'zella', roles: ['technician'] };
  expect(await refusedOf('/api/people', account)).toEqual([]);
  const { people, organisations, aircraftTypes } = await office.get<Shapes['Members']>('/api/people');
  const at = `/api/people/${people.find(({ name }) => name === 'Zella Onn')?.id}`;
  const scope = {
    number: 'QZ-77',
    organisation: organisations[0]?.id ?? '',
    aircraftTypes: aircraftTypes.join(','),
    licenceCategories: 'B1',
    privileges: 'write-up',
    validFrom: '2026-01-15T12:00:00.000Z',
  };
  const query = new URLSearchParams(scope).toString();
  const { statement } = await quality.get<Shapes['Statement']>(`${at}/authorisation-statement?${query}`);
  const sign = { secret: quality.secret, statement };
  expect(await refusedOf(`${at}/authorisations`, { ...scope, sign }, quality)).toEqual([]);
  const revision = { manual: 'K-AMM', task: '99-99', revision: '2', issuedOn: '2026-01-10' };
  expect(await refusedOf('/api/manual-revisions', revision, quality)).toEqual([]);
});
