import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  migrate,
  openStore,
  reachableDataFolder,
  startEmbedded,
  startSealer,
  verifyRecord,
  type EmbeddedPostgres,
} from '#store';
import { bundled } from '../support/bundled.js';
import { killRounds, type Writing } from '../support/kill-rounds.js';
import { Program } from '../support/program.js';
import { withClient } from '../support/with-client.js';
import { anOperator, type AnOperator } from './an-operator.js';

const rounds = 20;
const writers = 8;
let dataFolder: string;
let program: string;
let operator: AnOperator;

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'proviso-kill9-'));
  chmodSync(folder, 0o711);
  dataFolder = reachableDataFolder(folder);
  program = await bundled('tests/store/writer.program.ts');
  const { ownerUrl, url, adminUrl } = await startEmbedded({ dataFolder });
  await migrate(ownerUrl);
  const store = await openStore(url);
  const { href } = Object.assign(new URL(adminUrl), { pathname: new URL(ownerUrl).pathname });
  operator = await anOperator({ ownerUrl, appUrl: url, adminUrl: href, drop: () => Promise.resolve() }, store, 'KA');
  await store.close();
});

afterAll(() => rmSync(dataFolder, { recursive: true, force: true }));

async function start({ url, ownerUrl }: EmbeddedPostgres): Promise<Writing> {
  const { id, person, aircraft } = operator;
  const writing = new Program(process.execPath, [program, url, ownerUrl, id, person, aircraft, String(writers)]);
  await writing.ready();
  return {
    get acknowledged() {
      return writing.lines.filter((line) => line !== 'ready');
    },
    kill: async () => void (await writing.kill()),
  };
}

async function check({ ownerUrl, adminUrl }: EmbeddedPostgres, acknowledged: readonly string[], round: string) {
  const url = Object.assign(new URL(adminUrl), { pathname: '/proviso' }).href;
  const { missing, version, held, fsync } = await withClient(url, async (client) => ({
    missing: (
      await client.query(
        'select told.id from unnest($1::uuid[]) as told (id) where not exists (select from record_entry e where e.id = told.id)',
        [acknowledged],
      )
    ).rows as unknown[],
    version: (await client.query('select version from aircraft')).rows[0] as { version: number },
    held: (
      await client.query(
        `select coalesce(max((convert_from(canonical, 'UTF8')::jsonb->'payload'->>'version')::int), 1) as version from record_entry`,
      )
    ).rows[0] as { version: number },
    fsync: (await client.query('show fsync')).rows[0] as { fsync: string },
  }));
  expect(fsync).toEqual({ fsync: 'on' });
  expect(missing, `acknowledged and missing after ${round}`).toEqual([]);
  expect(version, `the aircraft and the record say the same after ${round}`).toEqual(held);
  const sealer = await startSealer(ownerUrl, { everyMs: 1 });
  let [finding] = await verifyRecord(ownerUrl);
  while (finding && finding.waiting > 0) [finding] = await verifyRecord(ownerUrl);
  await sealer.stop();
  expect(finding?.misfit, round).toBeNull();
  expect(finding?.entries, round).toBeGreaterThanOrEqual(acknowledged.length);
}

it('whoever is killed, and whenever, no acknowledged entry is missing and the record holds', async () => {
  const told = await killRounds({ dataFolder, rounds, seed: Date.now() % 1_000_000, start, check });
  expect(told, told.join('\n')).toHaveLength(rounds);
});
