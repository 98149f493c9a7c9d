/**
 * Eight people write up defects while the server, or the database, or both are killed as by a power switch, again and
 * again. What they were told is the truth: after each restart every defect that was acknowledged is there, once, and the
 * record holds. Whoever got no answer sends the same request again under the same key.
 */
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type EmbeddedPostgres, reachableDataFolder, startSealer, verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { killRounds, type Writing } from '../support/kill-rounds.js';
import { type ServerProcess, serverProcess } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';

const ROUNDS = 20;
/** Twenty starts of a server and a recovering database, on a machine that does other things too. */
const LONGEST_MS = 400_000;
const SIGN_INS = ['odrin', 'tamsel', 'wick', 'hebba', 'brask', 'sennet', 'jorik', 'wenna'];
let dataFolder: string;

/** One person writing. A request that was not answered is kept, to be sent again under its key. */
interface Writer {
  name: string;
  cookie: string;
  unanswered: { key: string; body: object } | null;
}
const writers: Writer[] = SIGN_INS.map((name) => ({ name, cookie: '', unanswered: null }));

beforeAll(() => {
  const folder = mkdtempSync(join(tmpdir(), 'proviso-kill9-http-'));
  chmodSync(folder, 0o711);
  dataFolder = reachableDataFolder(folder);
});

afterAll(() => rmSync(dataFolder, { recursive: true, force: true }));

async function start({ ownerUrl }: EmbeddedPostgres): Promise<Writing> {
  const server = await serverProcess({ databaseUrl: ownerUrl });
  const acknowledged: string[] = [];
  const fleet = await fleetOf(server);
  const writing = writers.map((writer) => write(server, writer, fleet, acknowledged));
  return {
    acknowledged,
    async kill() {
      await server.kill();
      await Promise.all(writing);
    },
  };
}

/** Sessions outlive a server: each person signs in once. */
async function clientOf(server: ServerProcess, writer: Writer): Promise<ApiClient> {
  const client = server.visitor();
  client.cookie = writer.cookie;
  if (writer.cookie === '') await client.signIn(writer.name);
  writer.cookie = client.cookie;
  return client;
}

async function fleetOf(server: ServerProcess): Promise<string[]> {
  const client = await clientOf(server, writers[0] as Writer);
  return (await client.get<Shapes['Fleet']>('/api/fleet')).aircraft.map(({ id }) => id);
}

/** Writes until nobody answers any more. A server without its database says so, and is asked again. */
async function write(server: ServerProcess, writer: Writer, fleet: string[], acknowledged: string[]): Promise<void> {
  try {
    const client = await clientOf(server, writer);
    for (let n = 0; ; n += 1) {
      writer.unanswered ??= { key: randomUUID(), body: aWriteUp(fleet[n % fleet.length] ?? '') };
      const { key, body } = writer.unanswered;
      const answer = await client.send<Shapes['ActDone']>('POST', '/api/defects', { key, body });
      if (answer.status !== 201) continue;
      acknowledged.push(answer.body.defect.id);
      writer.unanswered = null;
    }
  } catch {
    // The server is gone; what it did not answer is sent again in the next round.
  }
}

const aWriteUp = (aircraft: string): object => ({
  aircraft,
  origin: 'technician',
  description: `Seat belt worn, card ${randomUUID()}.`,
  recordedAt: new Date().toISOString(),
});

interface Found {
  missing: string[];
  twice: number;
  withoutRecord: number;
  fsync: string;
}

/** Looked at as a superuser, past every filter. */
function look(adminUrl: string, acknowledged: readonly string[]): Promise<Found> {
  const url = Object.assign(new URL(adminUrl), { pathname: '/proviso' }).href;
  return withClient(url, async (client) => {
    const one = async <T>(sql: string, values: unknown[] = []): Promise<T[]> =>
      (await client.query<{ found: T }>(sql, values)).rows.map(({ found }) => found);
    const [fsync = ''] = await one<string>("select current_setting('fsync') as found");
    const [twice = -1] = await one<number>(
      'select (count(*) - count(distinct description))::int as found from defect',
    );
    const [withoutRecord = -1] = await one<number>(
      `select count(*)::int as found from defect d where not exists (
         select from defect_act a join record_entry e on e.operator_id = a.operator_id and e.id = a.entry_id
         where a.operator_id = d.operator_id and a.defect_id = d.id and a.kind = 'written-up')`,
    );
    const missing = await one<string>(
      `select told.id::text as found from unnest($1::uuid[]) as told (id)
       where not exists (select from defect d where d.id = told.id)`,
      [acknowledged],
    );
    return { missing, twice, withoutRecord, fsync };
  });
}

async function check({ adminUrl, ownerUrl }: EmbeddedPostgres, acknowledged: readonly string[], round: string) {
  const found = await look(adminUrl, acknowledged);
  expect(found, round).toEqual({ missing: [], twice: 0, withoutRecord: 0, fsync: 'on' });
  const sealer = await startSealer(ownerUrl, { everyMs: 1 });
  let findings = await verifyRecord(ownerUrl);
  while (findings.some(({ waiting }) => waiting > 0)) findings = await verifyRecord(ownerUrl);
  await sealer.stop();
  expect(
    findings.map(({ misfit }) => misfit),
    round,
  ).toEqual([null, null]);
  expect(
    findings.reduce((sum, { entries }) => sum + entries, 0),
    round,
  ).toBeGreaterThanOrEqual(acknowledged.length);
}

it(
  'whoever is killed, and whenever, no acknowledged defect is missing, none is there twice, and the record holds',
  async () => {
    const seed = Date.now() % 1_000_000;
    const told = await killRounds({ dataFolder, rounds: ROUNDS, seed, latestMs: 900, start, check });
    expect(told, told.join('\n')).toHaveLength(ROUNDS);
  },
  LONGEST_MS,
);
