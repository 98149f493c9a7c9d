/** An operator asks for a second person before a deferral is signed (operator setting; common practice, no source). */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { compareRecord } from '../../apps/server/src/index.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { SignatureScene } from './signatures-scene.js';

let clock = '2026-01-15T12:00:00.000Z';
let scene: SignatureScene;
let control: ApiClient;
let gate: ApiClient;
let defect: string;
const ITEM = { item: { entry: '33-42-11', units: ['L'] }, row: '1' };
const QUERY = { entry: '33-42-11', row: '1' };

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'brask', 'tamsel', 'wenna']);
  control = scene.person('brask');
  gate = scene.person('odrin');
  defect = await scene.written();
  const quality = scene.person('wenna');
  const { etag } = await quality.send('GET', '/api/settings');
  const changes = [{ key: 'concurrenceNeeded', value: true, reason: 'Control procedure 2.1.' }];
  await quality.put('/api/settings', { changes }, { ifMatch: etag });
});

afterAll(() => scene.server.stop());

const defer = () => gate.signRefused(defect, 'deferral', { act: 'defer', ...QUERY }, ITEM);
const view = () => gate.get<Shapes['DefectView']>(`/api/defects/${defect}`);
const concur = (person: ApiClient, query: Record<string, string> = QUERY, body: object = ITEM) =>
  person.sign(defect, 'concurrence', { act: 'concur', ...query }, body);

it('without it the deferral is refused, and whom to ask is said', async () => {
  expect(await defer()).toMatchObject({ code: 'concurrence-missing', next: expect.stringContaining('control') });
  expect((await view()).concurrence).toEqual({ needed: true, given: [] });
});

it('somebody whose authorisation does not cover it cannot concur', async () => {
  const refused = await scene.person('tamsel').signRefused(defect, 'concurrence', { act: 'concur', ...QUERY }, ITEM);
  expect(refused).toMatchObject({ code: 'authorisation-does-not-cover', status: 403 });
});

it('one for another row counts for nothing', async () => {
  await concur(control, { entry: '33-42-11', row: '2' }, { ...ITEM, row: '2' });
  expect(await defer()).toMatchObject({ code: 'concurrence-missing' });
});

it('control concurs with a signature of its own, and the item is as it was', async () => {
  const before = await view();
  await concur(control);
  const { concurrence, defect: line } = await view();
  expect(line).toEqual(before.defect);
  expect(concurrence.given[0]).toMatchObject({
    basis: 'MEL 33-42-11 row 1',
    by: 'Brask Ondelly',
    role: 'maintenance-control',
    method: 'password',
  });
  const [own] = (await control.get<Shapes['Signatures']>('/api/signatures')).signatures;
  expect(own).toMatchObject({ statement: expect.stringMatching(/^I concur that defect Q-KEA/), verifies: true });
});

it('one to other units of the same row counts for nothing, and what differs is named', async () => {
  const other = { ...ITEM, item: { entry: '33-42-11', units: ['R'] } };
  expect(await gate.signRefused(defect, 'deferral', { act: 'defer', ...QUERY }, other)).toMatchObject({
    code: 'concurrence-to-something-else',
    detail: expect.stringContaining('units: ["L"], not ["R"]'),
  });
});

it('one to a document is one to the limit that it was shown with', async () => {
  const query = { document: 'approved data SRM 53-1' };
  const document = { kind: 'approved-data', reference: 'SRM 53-1', issuedBy: 'Invented maker', limit: 'Dent, 2 mm' };
  await concur(control, query, { document });
  const typedOtherwise = { document: { ...document, limit: 'Dent, 20 mm', interval: '10 calendar-days' } };
  const refused = await gate.signRefused(defect, 'deferral', { act: 'defer', ...query }, typedOtherwise);
  expect(refused).toMatchObject({ code: 'concurrence-to-something-else', status: 409 });
  expect(refused.detail).toContain('limit: "Dent, 2 mm", not "Dent, 20 mm"');
  expect(refused.detail).toContain('interval: null, not "10 calendar-days"');
  expect((await view()).defect.state).toBe('unanswered');
});

it('once the item has changed, it is given anew', async () => {
  await gate.post(
    `/api/defects/${defect}/identification`,
    { entry: '33-42-11', units: ['R'] },
    { ifMatch: await gate.seen(defect) },
  );
  expect((await view()).concurrence.given).toEqual([]);
  expect(await defer()).toMatchObject({ code: 'concurrence-missing' });
});

it('the deferral takes the signature into its act, and the record tells both', async () => {
  clock = '2026-01-15T12:05:00.000Z';
  await concur(control);
  const done = await gate.sign(defect, 'deferral', { act: 'defer', ...QUERY }, ITEM);
  expect(done.defect.row).toBe('1');
  const { aircraft } = done.defect;
  const wait = async (): Promise<Shapes['RecordEntries']> => {
    const read = await gate.get<Shapes['RecordEntries']>(`/api/record?aircraft=${aircraft}`);
    return read.entries.some(({ number }) => number === null) ? wait() : read;
  };
  const { entries } = await wait();
  expect(entries.map(({ what }) => what)).toContain('deferral.concurred');
  const deferred = entries.at(-1)?.payload as { act: { concurrence: { statement: string; name?: string } } };
  expect(deferred.act.concurrence.statement).toMatch(/^I concur/);
  expect(JSON.stringify(entries.map(({ payload }) => payload))).not.toContain('Ondelly');
  const [operator] = (await scene.server.store.operatorsServed()).filter(({ code }) => code === 'QOF');
  if (!operator) throw new Error('There is no operator QOF.');
  expect((await compareRecord(scene.server.store, operator)).differences).toEqual([]);
});

it('a change of row asks for it as the deferral does, and takes it', async () => {
  const asked = { act: 'change-row', row: '2' };
  const body = { row: '2', reason: 'The other row fits the flights of tomorrow.' };
  expect(await gate.signRefused(defect, 'row', asked, body)).toMatchObject({ code: 'concurrence-missing' });
  await concur(control, { entry: '33-42-11', row: '2' }, { ...ITEM, row: '2' });
  const done = await gate.sign(defect, 'row', asked, body);
  expect(done.defect.row).toBe('2');
});

it('one to a start that a document states is found again, whatever order its members are kept in', async () => {
  const dent = await scene.written();
  const right = { entry: '33-42-11', units: ['R'] };
  await gate.post(`/api/defects/${dent}/identification`, right, { ifMatch: await gate.seen(dent) });
  const query = { document: 'approved data SRM 53-2' };
  const document = { kind: 'approved-data', reference: 'SRM 53-2', issuedBy: 'Invented maker', limit: 'Dent, 2 mm' };
  const start = { counter: 6000, reading: 6000, readAt: '2026-01-15T11:00:00Z', document: 'Log 7' };
  const body = { document: { ...document, interval: '50 flight-hours' }, start };
  await control.sign(dent, 'concurrence', { act: 'concur', ...query }, body);
  const done = await gate.sign(dent, 'deferral', { act: 'defer', ...query }, body);
  expect(done.defect.basis).toBe('approved data SRM 53-2');
});
