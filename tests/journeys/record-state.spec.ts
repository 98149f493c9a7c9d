/** How the record stands, as its page asks: how old the last backup and head are, and whether all of it fits. */
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { headKeyIn, makeBackup, startHeadExport, type HeadExport } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';
import { scratchFolder } from './cli-scratch.js';

/** After everything that the loading of the demo enters by the clock of this machine. */
let clock = '2027-01-15T12:00:00.000Z';
const now = () => clock;
const { folder } = scratchFolder();
let database: FreshDatabase;
let exporter: HeadExport;
let server: RunningServer;
let quality: ApiClient;

beforeAll(async () => {
  database = await freshDatabase();
  const key = headKeyIn(join(folder, 'key.pem'));
  exporter = await startHeadExport(database.ownerUrl, {
    key,
    folder: join(folder, 'heads'),
    everyMs: 3_600_000,
    now,
  });
  server = await runningServer({ now, demo: true, database, heads: exporter });
  quality = await server.signIn('wenna');
});

afterAll(async () => {
  await server.stop();
  await exporter.stop();
  await database.drop();
});

const state = () => quality.get<Shapes['RecordState']>('/api/record/state');
const verified = () => quality.get<Shapes['RecordVerified']>('/api/record/verification');

it('what was never made counts as old', async () => {
  const { backup, signsHeads } = await state();
  expect(backup).toMatchObject({ made: null, hours: null, old: true });
  expect(signsHeads).toBe(true);
});

it('calls a signed head old from the hour said on, and a backup while something stands in none for a day (E-13)', async () => {
  clock = '2027-01-15T13:00:00.000Z';
  await makeBackup(database.ownerUrl, join(folder, 'one.backup'), clock);
  await exporter.signNow();
  const made = clock;
  clock = '2027-01-18T13:00:00.000Z';
  quality = await server.signIn('wenna');
  const saved = { made, hours: 72, unsavedSince: null, unsavedHours: null, atMostHours: 24, old: false };
  expect((await state()).backup).toEqual(saved);
  const technician = await server.signIn('odrin');
  const { aircraft } = await technician.get<Shapes['Fleet']>('/api/fleet');
  const written = { origin: 'crew', description: 'Reading light out.', recordedAt: clock };
  await technician.post('/api/defects', { aircraft: aircraft[0]?.id, ...written });
  const unsavedSince = clock;
  clock = '2027-01-19T12:59:59.999Z';
  quality = await server.signIn('wenna');
  expect((await state()).backup).toEqual({ ...saved, hours: 95, unsavedSince, unsavedHours: 23 });
  clock = '2027-01-19T13:00:00.000Z';
  const { backup, signedHead, size } = await state();
  expect(backup).toEqual({ ...saved, hours: 96, unsavedSince, unsavedHours: 24, old: true });
  expect(signedHead).toMatchObject({ made, hours: 96, oldestHours: 26, old: true });
  expect(signedHead.size).toBeGreaterThan(0);
  expect(size).toBeGreaterThanOrEqual(signedHead.size ?? 0);
});

it('reads the whole record through for quality and administrators, and for nobody else', async () => {
  const { entries, misfit, root } = await verified();
  expect(misfit).toBeNull();
  expect(entries).toBeGreaterThan(10);
  expect(root).toMatch(/^[0-9a-f]{64}$/);
  const technician = await server.signIn('odrin');
  expect(await technician.refused('GET', '/api/record/verification')).toMatchObject({ code: 'role-missing' });
  expect(await technician.get('/api/record/state')).toMatchObject({ size: entries });
});

it('another operator is told of its own record alone', async () => {
  const other = await server.signIn('kesh');
  const theirs = await other.get<Shapes['RecordVerified']>('/api/record/verification');
  const ours = await verified();
  expect(theirs.root).not.toBe(ours.root);
  expect(theirs.entries).toBeLessThan(ours.entries);
});

it('an entry that was altered above every guard is named', async () => {
  await withClient(database.adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    await client.query(
      `update record_sealed set leaf = sha256('altered') where number = 3 and operator_id = (
         select id from operator where code = 'QOF')`,
    );
  });
  expect((await verified()).misfit).toMatchObject({ number: 3, sentence: expect.any(String) as string });
});
