/** How the record stands, as its page asks: how old the last backup and head are, and whether all of it fits. */
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { headKeyIn, makeBackup, startHeadExport, type HeadExport } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';
import { scratchFolder } from './cli-scratch.js';

let clock = '2026-01-15T12:00:00.000Z';
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
  expect(backup).toEqual({ made: null, hours: null, oldestHours: 26, old: true });
  expect(signsHeads).toBe(true);
});

it('tells when the last backup and the last head were made, and calls them old from the hour said on', async () => {
  await makeBackup(database.ownerUrl, join(folder, 'one.backup'), clock);
  await exporter.signNow();
  const made = clock;
  clock = '2026-01-16T13:59:59.999Z';
  quality = await server.signIn('wenna');
  expect((await state()).backup).toEqual({ made, hours: 25, oldestHours: 26, old: false });
  clock = '2026-01-16T14:00:00.000Z';
  const { backup, signedHead, size } = await state();
  expect(backup).toEqual({ made, hours: 26, oldestHours: 26, old: true });
  expect(signedHead).toMatchObject({ made, hours: 26, old: true });
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
