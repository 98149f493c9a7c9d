/** Periods of keeping pass: noted, told to those who keep the record, held, and erased where the operator settled so. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { placesOf } from '../support/places-of.js';
import { withClient } from '../support/with-client.js';
import { PATIENT, RemindersScene } from './reminders.scene.js';

const scene = new RemindersScene();
const BOX = 'records@ops.example';
const ids: Record<string, string> = {};
let passed = '';

beforeAll(async () => {
  await scene.open();
  const { administrator: keeper } = scene;
  for (const { id, name } of (await keeper.get<Shapes['Members']>('/api/people')).people) {
    ids[name.split(' ')[0]?.toLowerCase() ?? ''] = id;
  }
  await scene.add('email', BOX, {}, keeper);
  await scene.add('email', 'engines@ops.example');
  await scene.add('webhook', scene.endpoint.url, { of: 'operator' }, keeper);
  await scene.technician.post('/api/defects', {
    aircraft: scene.airline.aircraft['Q-ABA'],
    origin: 'technician',
    description: 'Seal torn.',
    recordedAt: scene.now(),
  });
  for (const name of ['sorra', 'yorvin']) await keeper.post(`/api/people/${ids[name]}/leaving`, { reason: 'Moves.' });
  // The server has looked by itself, twice a day: what passes from now on is noted by this test.
  while ((await jobsDone('keep')) === 0) await new Promise((go) => setTimeout(go, 50));
  await later('2029-02-01T10:00:00.000Z');
  scene.mail.arrived.length = 0;
}, 180_000);

afterAll(() => scene.close());

/** Those who left do not sign in again. */
async function later(at: string): Promise<void> {
  await scene.goTo(at).catch(() => undefined);
  scene.administrator = await scene.server.signIn('ullo');
}

function jobsDone(name: string): Promise<number> {
  return withClient(scene.server.database.adminUrl, async (client) => {
    const { rows } = await client.query(`select 1 from pgboss.job where name = $1 and state = 'completed'`, [name]);
    return rows.length;
  });
}

const keep = () => scene.server.keep(scene.airline.operator);
const kept = () => scene.administrator.get<Shapes['Retention']>('/api/record/retention');
const erasure = (name: string) => scene.administrator.refused('GET', `/api/people/${ids[name]}/erasure-statement`);

async function entries(what: string): Promise<{ who: string | null; payload: Record<string, unknown> }[]> {
  return withClient(scene.server.database.adminUrl, async (client) => {
    const { rows } = await client.query<{ entry: string }>(
      `select convert_from(canonical, 'UTF8') as entry from record_entry where what = $1 order by seq`,
      [what],
    );
    return rows.map(({ entry }) => JSON.parse(entry) as { who: string | null; payload: Record<string, unknown> });
  });
}

const mailed = () => scene.mail.arrived.filter(({ to }) => to.includes(BOX)).map(({ mail }) => mail.text ?? '');

async function hold(kind: string, subject: string, by: ApiClient = scene.administrator): Promise<Shapes['Holds']> {
  return (await by.post<Shapes['Holds']>('/api/record/holds', { kind, subject, reason: 'A claim is open.' })).body;
}

async function erasesLeavers(value: boolean): Promise<void> {
  const { etag } = await scene.administrator.send<Shapes['SettingsView']>('GET', '/api/settings');
  const body = { changes: [{ key: 'eraseLeavers', value, reason: 'Data protection, agreed' }] };
  await scene.administrator.send('PUT', '/api/settings', { body, ifMatch: etag });
}

describe('what has passed its period', () => {
  it('is noted once, in the record and on the page, and nothing is erased', async () => {
    expect((await kept()).people.map(({ name, notedAt }) => ({ name, notedAt }))).toEqual([
      { name: 'Sorra Vey', notedAt: null },
      { name: 'Yorvin Tesk', notedAt: null },
    ]);
    passed = scene.now();
    const first = await keep();
    expect(first).toMatchObject({ erased: 0 });
    expect(first.noted).toBeGreaterThanOrEqual(2);
    expect(await keep()).toEqual({ noted: 0, erased: 0 });
    const [entry, ...more] = await entries('keeping.passed');
    expect(more).toEqual([]);
    expect(entry).toMatchObject({ who: null, payload: { people: [expect.any(String), expect.any(String)] } });
    const { people, erasesLeavers: erases } = await kept();
    expect(erases).toBe(false);
    expect(people.every(({ notedAt }) => notedAt !== null && notedAt >= passed)).toBe(true);
    expect(await placesOf(scene.server.database.adminUrl, ['Sorra'])).toContain('public.person.name');
  });

  it('is told to those who keep the record and to the endpoint, in numbers, and to nobody else', async () => {
    await vi.waitFor(() => expect(mailed()).toHaveLength(1), PATIENT);
    const [text] = mailed();
    expect(text).toMatch(/Newly past the period of keeping: .*2 people who left\. Nothing was erased/s);
    expect(text).not.toMatch(/Sorra|Yorvin/);
    expect(scene.mail.arrived.filter(({ to }) => !to.includes(BOX))).toEqual([]);
    await vi.waitFor(() => expect(scene.endpoint.arrived.length).toBeGreaterThan(0), PATIENT);
    const event = JSON.parse(scene.endpoint.arrived[0]?.body ?? '{}') as object;
    expect(event).toMatchObject({ type: 'proviso.keeping.passed', data: { people: 2, erased: 0 } });
    const { reminders } = await scene.view(scene.administrator);
    expect(reminders[0]).toMatchObject({ defect: null, title: 'Periods of keeping', state: 'sent' });
  });
});

describe('where the operator settled that the program erases leavers', () => {
  it('nobody is erased who is held, or has an entry in an open item, or in what is held', async () => {
    await erasesLeavers(true);
    expect((await hold('person', ids['sorra'] ?? '')).holds).toMatchObject([{ name: 'Sorra Vey', by: 'Ullo Fenn' }]);
    expect(await keep()).toEqual({ noted: 0, erased: 0 });
    expect(await erasure('sorra')).toMatchObject({ code: 'under-hold', detail: 'Held: the person.' });
    expect(await erasure('yorvin')).toMatchObject({
      code: 'item-open',
      detail: 'Open, with an entry of the person: Q-ABA/1.',
    });
    const aircraft = scene.airline.aircraft['Q-ABA'] ?? '';
    await hold('aircraft', aircraft);
    expect(await erasure('yorvin')).toMatchObject({ code: 'under-hold', detail: 'Held: Q-ABA.' });
    expect((await kept()).people.map(({ name, held }) => ({ name, held }))).toContainEqual({
      name: 'Sorra Vey',
      held: true,
    });
    const again = { body: { kind: 'aircraft', subject: aircraft, reason: 'Twice.' } };
    expect(await scene.administrator.refused('POST', '/api/record/holds', again)).toMatchObject({
      code: 'under-hold',
    });
    const naming = { kind: 'person', subject: ids['yorvin'] ?? '', reason: 'Yorvin is in a claim.' };
    expect(await scene.administrator.refused('POST', '/api/record/holds', { body: naming })).toMatchObject({
      code: 'invalid-input',
      errors: [{ pointer: '/reason' }],
    });
    const nobody = { body: { kind: 'defect', subject: aircraft, reason: 'None.' } };
    expect(await scene.administrator.refused('POST', '/api/record/holds', nobody)).toMatchObject({
      code: 'not-found',
    });
  });

  it('somebody whom nothing binds any longer is erased, listed and told of, and the record fits', async () => {
    const held = (await kept()).holds.find(({ kind }) => kind === 'person');
    const release = `/api/record/holds/${held?.id}/release`;
    expect(await scene.administrator.refused('POST', release, { body: { reason: 'Vey is paid.' } })).toMatchObject({
      code: 'invalid-input',
    });
    await scene.administrator.post(release, { reason: 'The claim is settled.' });
    expect(await scene.administrator.refused('POST', release, { body: { reason: 'Again.' } })).toMatchObject({
      code: 'not-found',
    });
    expect(await keep()).toEqual({ noted: 0, erased: 1 });
    expect(await placesOf(scene.server.database.adminUrl, ['Sorra', 'Vey', 'engines@ops.example'])).toEqual([]);
    expect((await entries('person.erased')).map(({ who }) => who)).toEqual([null]);
    const listed = await withClient(scene.server.database.adminUrl, (client) =>
      client.query<{ person_id: string; erased_by: null }>('select person_id, erased_by from erasure'),
    );
    expect(listed.rows).toEqual([{ person_id: ids['sorra'], erased_by: null }]);
    await vi.waitFor(() => expect(mailed()).toHaveLength(2), PATIENT);
    expect(mailed()[1]).toContain('The personal data of 1 person were erased.');
    expect((await kept()).people.map(({ name }) => name)).toEqual(['Yorvin Tesk']);
    expect(await keep()).toEqual({ noted: 0, erased: 0 });
    expect((await entries('hold.placed')).length + (await entries('hold.released')).length).toBe(3);
    expect((await verifyRecord(scene.server.ownerUrl)).map(({ misfit }) => misfit)).toEqual([null]);
  });

  it('nobody is erased in the look that notes them, so that there is time to have them held', async () => {
    const [organisation] = (await scene.administrator.get<Shapes['Members']>('/api/people')).organisations;
    const account = { name: 'Perrin Oskelund', organisation: organisation?.id, roles: ['engineer'] };
    const made = await scene.administrator.post<Shapes['AccountMade']>('/api/people', {
      ...account,
      signInName: 'perrin',
    });
    await scene.administrator.post(`/api/people/${made.body.person.id}/leaving`, { reason: 'Moves.' });
    await later('2034-02-01T10:00:00.000Z');
    expect(await keep()).toMatchObject({ erased: 0 });
    expect(await keep()).toEqual({ noted: 0, erased: 1 });
  });
});
