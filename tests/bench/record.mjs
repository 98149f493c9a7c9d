/**
 * The record: appending with the sealer running beside plain inserts of the same rows, how long until an entry is sealed,
 * checking it whole by the command in a process of its own, and how large a proof is.
 */
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmodSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { createOperator, ensureAppRole, migrate, openStore, startEmbedded, startSealer } from '#store';
import { median, rate, ratio } from './measure.mjs';

const MAIN = fileURLToPath(new URL('../../dist/apps/cli/src/main.js', import.meta.url));
const WRITERS = 16;
const ROUNDS = 3;
const ROUND_MS = 3_000;

export async function record(entries = 1_000_000) {
  const folder = await mkdtemp(join(tmpdir(), 'proviso-bench-'));
  chmodSync(folder, 0o711);
  const server = await startEmbedded({ dataFolder: folder });
  const { ownerUrl } = server;
  const appUrl = await ensureAppRole(ownerUrl);
  await migrate(ownerUrl);
  const store = await openStore(appUrl, { connections: WRITERS });
  const sealer = await startSealer(ownerUrl);
  try {
    const lines = await appending(ownerUrl, store);
    const operator = await anOperator(ownerUrl, 'QBR');
    await fill(ownerUrl, store, operator, entries);
    const { seconds, peakMiB, words } = await verified(ownerUrl);
    const proofStart = performance.now();
    const proof = await store.withOperator(operator, null, async (tx) =>
      tx.proofs.file({ entryIds: [await tx.proofs.entryNumbered(Math.ceil(entries / 2))] }),
    );
    const hashes = proof.entries[0].proof.length;
    return [
      ...lines,
      `checked whole: ${rate(entries)} entries in ${seconds.toFixed(1)} s, ${rate(entries / seconds)}/s, peak ${peakMiB.toFixed(0)} MiB (aim under 256)`,
      words.trim(),
      `proof of one entry: ${hashes} hashes, ${hashes * 32} bytes, made in ${((performance.now() - proofStart) / 1000).toFixed(1)} s`,
    ];
  } finally {
    await sealer.stop();
    await store.close();
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

const anOperator = (ownerUrl, code) =>
  createOperator(ownerUrl, { code, name: code, invented: true, base: 'UTC', settings: {} });

async function appending(ownerUrl, store) {
  const operator = await anOperator(ownerUrl, 'QBA');
  const pool = new pg.Pool({ connectionString: ownerUrl, max: WRITERS });
  await pool.query(
    'create table plain (operator_id uuid, id uuid, what text, entered_at timestamptz, canonical bytea, leaf bytea, primary key (operator_id, id))',
  );
  await pool.query('grant insert on plain to proviso_app');
  const body = Buffer.alloc(420, 'x');
  // The same way to the database and the same transaction; only that nothing is sealed.
  const plain = () =>
    store.withOperator(operator, null, (tx) =>
      tx.query("insert into plain values ($1, $2, 'bench', now(), $3, sha256($3))", [operator, randomUUID(), body]),
    );
  const append = () =>
    store.withOperator(operator, null, (tx) => tx.record.append(entry({ enteredAt: new Date().toISOString() })));
  const rates = { plain: [], append: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    rates.plain.push(await together(plain));
    rates.append.push(await together(append));
  }
  await untilSealed(store, operator);
  const { rows } = await asOperator(pool, operator, (client) =>
    client.query(
      `select avg(extract(epoch from s.sealed_at - e.entered_at)) as mean,
      percentile_cont(0.99) within group (order by extract(epoch from s.sealed_at - e.entered_at)) as p99
      from record_sealed s join record_entry e on e.operator_id = s.operator_id and e.id = s.entry_id
      where s.operator_id = $1`,
      [operator],
    ),
  );
  await pool.end();
  const [one, other] = [median(rates.append), median(rates.plain)];
  return [
    `appended with the sealer running, ${WRITERS} writers: ${rate(one)}/s; plain inserts: ${rate(other)}/s; ratio ${ratio(one, other)}`,
    `until sealed: ${Number(rows[0].mean).toFixed(2)} s on average, ${Number(rows[0].p99).toFixed(2)} s for 99 of 100`,
  ];
}

const entry = (times) => ({
  who: null,
  authorisation: null,
  organisation: null,
  what: 'bench',
  aircraft: null,
  times,
  payload: { note: 'x'.repeat(150) },
});

async function together(work) {
  const start = performance.now();
  let done = 0;
  const one = async () => {
    while (performance.now() - start < ROUND_MS) {
      await work();
      done += 1;
    }
  };
  await Promise.all(Array.from({ length: WRITERS }, one));
  return (done * 1000) / (performance.now() - start);
}

async function asOperator(pool, operator, work) {
  const client = await pool.connect();
  try {
    await client.query('begin');
    await client.query("select set_config('app.operator', $1, true)", [operator]);
    const result = await work(client);
    await client.query('commit');
    return result;
  } finally {
    client.release();
  }
}

/** Entries by the database itself, in canonical form; then the sealer numbers them as it does any others. */
async function fill(ownerUrl, store, operator, entries) {
  const pool = new pg.Pool({ connectionString: ownerUrl, max: 1 });
  for (let from = 1; from <= entries; from += 50_000) {
    await asOperator(pool, operator, (client) =>
      client.query(
        `insert into record_entry (operator_id, id, what, entered_at, canonical, leaf)
         select $1, id, 'bench', '2026-01-01T00:00:00Z', bytes, sha256('\\x00'::bytea || bytes)
         from (select id, convert_to('{"aircraft":null,"authorisation":null,"format":"proviso-record/1","id":"' || id ||
             '","operator":"' || $1::uuid || '","organisation":null,"payload":{"n":' || n || ',"note":"' || repeat('x', 150) ||
             '"},"times":{"enteredAt":"2026-01-01T00:00:00.000Z"},"what":"bench","who":null}', 'UTF8') as bytes
           from (select gen_random_uuid() as id, n from generate_series($2::int, $3::int) n) made) entry`,
        [operator, from, Math.min(entries, from + 49_999)],
      ),
    );
  }
  await pool.end();
  await untilSealed(store, operator, entries);
}

async function untilSealed(store, operator, size = null) {
  const waits = async () =>
    store.withOperator(operator, null, async (tx) => {
      if (size !== null) return ((await tx.record.head())?.size ?? 0) < size;
      return Number((await tx.query('select count(*) from entries_waiting()'))[0].count) > 0;
    });
  while (await waits()) await sleep(50);
}

function verified(ownerUrl) {
  const start = performance.now();
  const child = spawn(process.execPath, [MAIN, 'record', 'verify', '--database', ownerUrl], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let peakMiB = 0;
  let words = '';
  const look = setInterval(() => {
    peakMiB = Math.max(peakMiB, memoryOf(child.pid));
  }, 50);
  child.stdout.on('data', (data) => (words += data.toString()));
  return new Promise((resolve, reject) => {
    child.once('exit', (code) => {
      clearInterval(look);
      if (code === 0) resolve({ seconds: (performance.now() - start) / 1000, peakMiB, words });
      else reject(new Error(`record verify ended with ${code}: ${words}`));
    });
  });
}

function memoryOf(pid) {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}
