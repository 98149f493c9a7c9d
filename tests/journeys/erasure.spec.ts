/** Somebody left, the time of keeping has passed, and nothing on this server names the person any longer. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { placesOf } from '../support/places-of.js';
import { withClient } from '../support/with-client.js';
import { anotherTechnician, TAVIKS } from './another-technician.js';
import { SignatureScene, WORK } from './signatures-scene.js';

const REASON = 'Asked for, and nothing binds it any longer.';
let clock = '2026-01-15T12:00:00.000Z';
let scene: SignatureScene;
let quality: ApiClient;
let signature: Shapes['SignatureView'];
let defect: string;
const ids: Record<string, string> = {};

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'ilva', 'ulla', 'wenna']);
  await anotherTechnician(scene.server);
  const { people } = await scene.person('ulla').get<Shapes['Members']>('/api/people');
  for (const { id, name } of people) ids[name.split(' ')[0]?.toLowerCase() ?? ''] = id;
  defect = await scene.written();
  const tavik = await scene.server.signIn('tavik');
  await tavik.sign(defect, 'rectification', { act: 'rectify' }, WORK);
  const { signatures } = await tavik.get<Shapes['Signatures']>('/api/signatures');
  signature = signatures[0] as Shapes['SignatureView'];
  quality = scene.person('wenna');
});

afterAll(() => scene.server.stop());

const leaves = (name: string) => scene.person('ulla').post(`/api/people/${ids[name]}/leaving`, { reason: 'Moves.' });

async function sign(name: string) {
  const { statement } = await quality.get<Shapes['Statement']>(`/api/people/${ids[name]}/erasure-statement`);
  return { secret: quality.secret, statement };
}

const asked = (name: string) => quality.refused('GET', `/api/people/${ids[name]}/erasure-statement`);

async function verified(): Promise<{ misfits: unknown[]; entries: number }> {
  const findings = await verifyRecord(scene.server.ownerUrl);
  const waiting = findings.reduce((sum, one) => sum + one.waiting, 0);
  if (waiting > 0) return new Promise((go) => setTimeout(go, 50)).then(verified);
  return {
    misfits: findings.map(({ misfit }) => misfit).filter((one) => one !== null),
    entries: findings.reduce((sum, one) => sum + one.entries, 0),
  };
}

describe('it is refused, and what to do next is said,', () => {
  it('while the person works here', async () => {
    expect(await asked('tavik')).toMatchObject({ code: 'still-works', status: 409 });
  });

  it('while the person works for another operator on this server', async () => {
    await leaves('ilva');
    clock = '2026-01-15T12:01:00.000Z';
    expect(await asked('ilva')).toMatchObject({ code: 'still-works' });
  });

  it('while an item with an entry of the person is open', async () => {
    await leaves('tavik');
    clock = '2026-01-15T12:02:00.000Z';
    expect(await asked('tavik')).toMatchObject({
      code: 'item-open',
      status: 409,
      detail: expect.stringMatching(/^Open, with an entry of the person: Q-KEA\/\d+\.$/) as string,
    });
    const verified = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    await scene.person('odrin').sign(defect, 'release', { act: 'release' }, { verified });
  });

  it('while what the person signed has to be kept, with the time until: of its last item, too', async () => {
    expect(await asked('tavik')).toMatchObject({
      code: 'retention-binds',
      until: '2029-01-15T12:02:00.000Z',
      next: expect.stringContaining('Come back after') as string,
    });
  });

  it('to everybody but quality and administrators, and for oneself', async () => {
    clock = '2029-01-15T12:02:00.000Z';
    quality = await scene.server.signIn('wenna');
    const technician = await scene.server.signIn('odrin');
    const address = `/api/people/${ids['tavik']}/erasure`;
    const body = { reason: REASON, sign: await sign('tavik') };
    expect(await technician.refused('POST', address, { body })).toMatchObject({ code: 'role-missing' });
    const own = await quality.refused('POST', `/api/people/${ids['wenna']}/erasure`, { body });
    expect(own).toMatchObject({ code: 'not-for-oneself' });
    const elsewhere = await scene.server.signIn('kesh');
    expect(await elsewhere.refused('POST', address, { body })).toMatchObject({ code: 'not-found' });
  });

  it('with a reason that names the person, or a statement that was not shown', async () => {
    const address = `/api/people/${ids['tavik']}/erasure`;
    const given = await sign('tavik');
    const named = { reason: 'Tavik asked for it.', sign: given };
    expect(await quality.refused('POST', address, { body: named })).toMatchObject({ code: 'invalid-input' });
    const other = { reason: REASON, sign: { ...given, statement: 'I erase.' } };
    expect(await quality.refused('POST', address, { body: other })).toMatchObject({ code: 'statement-not-shown' });
  });
});

describe('what is past its period', () => {
  const listed = () => quality.get<Shapes['Retention']>('/api/record/retention');

  it('is listed once its last day is over and not before, and nothing is deleted', async () => {
    const { months, says, people, defects, logs } = await listed();
    expect({ months, says }).toEqual({
      months: { log: 36, work: 36 },
      says: expect.stringContaining('deletes nothing') as string,
    });
    const kept = { since: '2026-01-15T12:01:00.000Z', keptUntil: '2029-01-15T12:01:00.000Z' };
    expect(people.filter(({ id }) => id === ids['tavik'])).toMatchObject([{ name: 'Tavik Sorremond', ...kept }]);
    expect(people.some(({ id }) => id === ids['odrin'])).toBe(false);
    for (const { keptUntil } of [...defects, ...logs]) expect(keptUntil <= clock).toBe(true);
    expect(logs.length).toBeGreaterThan(0);
    const entries = await verified();
    expect(await listed()).toMatchObject({ people });
    expect(await verified()).toEqual(entries);
    clock = '2029-01-15T12:00:59.999Z';
    expect((await listed()).people.some(({ id }) => id === ids['tavik'])).toBe(false);
    clock = '2029-01-15T12:02:00.000Z';
  });

  it('is shown to quality and administrators alone', async () => {
    const technician = await scene.server.signIn('odrin');
    expect(await technician.refused('GET', '/api/record/retention')).toMatchObject({ code: 'role-missing' });
  });
});

describe('once it is signed', () => {
  it('nothing of the person is left in any table, and the record fits as before', async () => {
    expect(await placesOf(scene.server.database.adminUrl, TAVIKS)).toEqual(
      expect.arrayContaining(['public.person.name']),
    );
    const before = await verified();
    expect(before.misfits).toEqual([]);
    const body = { reason: REASON, sign: await sign('tavik') };
    const done = await quality.post<Shapes['PersonErased']>(`/api/people/${ids['tavik']}/erasure`, body);
    expect(done.body.written).toMatchObject({ places: [] });
    expect(done.body.list).toMatchObject({ written: false, says: expect.stringContaining('--heads') as string });
    expect(done.body.person).toMatchObject({
      name: expect.stringMatching(/^\(name erased\) [0-9a-f]{16}$/) as string,
      licence: null,
    });
    expect(await placesOf(scene.server.database.adminUrl, TAVIKS)).toEqual([]);
    expect(await verified()).toEqual({ misfits: [], entries: before.entries + 1 });
  });

  it('the signature still verifies, and is shown under the reference', async () => {
    const view = await quality.get<Shapes['SignatureView']>(`/api/signatures/${signature.id}`);
    expect(view).toMatchObject({ verifies: true, signedAt: signature.signedAt });
    expect(view.by).toMatch(/^\(name erased\) [0-9a-f]{16}$/);
  });

  it('the record says that it was done and by whom, and the person cannot sign in', async () => {
    const newest = await withClient(scene.server.database.adminUrl, async (client) => {
      const { rows } = await client.query<{ canonical: string; who: string }>(
        `select convert_from(canonical, 'UTF8') as canonical, who from record_entry where what = 'person.erased'`,
      );
      return rows;
    });
    expect(newest).toHaveLength(1);
    expect(newest[0]?.who).toMatch(/^[0-9a-f]{64}$/);
    expect(newest[0]?.canonical).toContain(REASON);
    await expect(scene.server.signIn('tavik')).rejects.toThrow('401');
  });

  it('refuses to be done twice', async () => {
    const body = { reason: REASON, sign: await sign('tavik') };
    const again = await quality.refused('POST', `/api/people/${ids['tavik']}/erasure`, { body });
    expect(again).toMatchObject({ code: 'not-found' });
  });
});

describe('what people wrote in their own words', () => {
  it('is found by whole words, with the page of each, and told as what cannot be taken out', async () => {
    const technician = await scene.server.signIn('odrin');
    const { aircraft } = await technician.get<Shapes['Fleet']>('/api/fleet');
    const plane = aircraft.find(({ registration }) => registration === 'Q-KEA');
    const write = async (description: string) => {
      const body = { aircraft: plane?.id, origin: 'technician', description, recordedAt: clock };
      return (await technician.post<Shapes['ActDone']>('/api/defects', body)).body.defect;
    };
    const named = [await write('Seal torn.\nMERRONDEL saw it.'), await write('Told by (ilva) at the gate.')];
    const others = [await write('A silva basket, merrondels inside.'), await write('Merron del found it.')];
    const found = await quality.get<Shapes['WrittenNames']>(`/api/people/${ids['ilva']}/written-names`);
    expect(found.places.toSorted((a, b) => (a.name < b.name ? -1 : 1))).toEqual(
      named.map(({ id, number }) => ({ name: number, page: `/defects/${id}`, texts: 1 })),
    );
    expect(others).toHaveLength(2);
    expect(found).toMatchObject({
      more: false,
      says: expect.stringContaining('cannot take these words away') as string,
    });
    const nowhere = await quality.get<Shapes['WrittenNames']>(`/api/people/${ids['odrin']}/written-names`);
    expect(nowhere).toMatchObject({ places: [], says: expect.stringContaining('in none') as string });
    const address = `/api/people/${ids['ilva']}/written-names`;
    expect(await technician.refused('GET', address)).toMatchObject({ code: 'role-missing' });
    const gone = await quality.refused('GET', `/api/people/${ids['tavik']}/written-names`);
    expect(gone).toMatchObject({ code: 'not-found', detail: expect.stringContaining('erased before') as string });
  });
});
