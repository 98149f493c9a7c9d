/**
 * Deferrals a second through HTTP, each judged, signed with the secret entered again and recorded, beside the same rows
 * put into the same tables of the same database by plain `pg`.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { newId, openStore, startEmbedded } from '#store';
import { median, rate, ratio } from './measure.mjs';
import { rowsOfOneDeferral, statementsOf } from './plain-inserts.mjs';
import { takenBy, takenByDatabase } from './processor-time.mjs';
import { startServer } from './server-process.mjs';

const AT_ONCE = 16;
const DEFERRALS = 320;
const ROUNDS = 3;
const ENTRY = '33-42-11';

export async function overHttp() {
  const folder = await mkdtemp(join(tmpdir(), 'proviso-bench-'));
  await (await startServer(folder)).stop();
  const server = await startServer(folder, { REQUESTS_PER_MINUTE: '1000000' });
  const database = await startEmbedded({ dataFolder: join(folder, '.proviso') });
  const pool = new pg.Pool({ connectionString: database.url, max: AT_ONCE });
  try {
    const client = await signIn(server.url);
    const store = await openStore(database.url, { connections: 2 });
    const rates = { http: [], plain: [] };
    const used = { http: [], plain: [] };
    const counter = counterOf(server.pid, join(folder, '.proviso'));
    for (let round = 0; round < ROUNDS; round += 1) {
      const defects = await writtenUp(client, await fleet(store, client, round));
      const counted = counter();
      rates.http.push(await perSecond(defects, (defect) => defer(client, defect)));
      used.http.push(counted());
      const rows = await rowsOfOneDeferral(pool, client.operator, defects[0].id);
      const countedPlain = counter();
      rates.plain.push(
        await perSecond(defects, (defect) => inSql(pool, client.operator, statementsOf(rows, defect))),
      );
      used.plain.push(countedPlain());
    }
    const peak = server.peakMiB();
    await store.close();
    const [http, plain] = [median(rates.http), median(rates.plain)];
    return [
      `${AT_ONCE} at once, median of ${ROUNDS} rounds of ${DEFERRALS}:`,
      `deferrals through HTTP ${rate(http)}/s; the same rows by plain pg ${rate(plain)}/s; ratio ${ratio(http, plain)}`,
      `processor time of each, on whatever machine: through HTTP ${told(used.http)}; plain ${told(used.plain)}`,
      `peak memory of the server ${Math.round(peak)} MiB`,
    ];
  } finally {
    await pool.end();
    await server.stop();
    await database.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

/** @returns begins to count what client, server and database take; called again it says how much that was, of each */
function counterOf(serverPid, dataFolder) {
  const now = () => [process.pid, serverPid].map(takenBy).concat(takenByDatabase(dataFolder));
  return () => {
    const before = now();
    return () => now().map((milliseconds, at) => (milliseconds - before[at]) / DEFERRALS);
  };
}

/** The median of the rounds, client, server and database apart. */
function told(rounds) {
  const [client, server, database] = [0, 1, 2].map((at) => median(rounds.map((round) => round[at])).toFixed(1));
  return `client ${client} + server ${server} + database ${database} ms`;
}

export async function signIn(url, name = 'odrin') {
  const secret = 'copper lantern meadow';
  const answer = await fetch(`${url}/api/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name, secret }),
  });
  const cookie = answer.headers.get('set-cookie').split(';')[0];
  const session = await (await fetch(`${url}/api/session`, { headers: { cookie } })).json();
  return { url, cookie, secret, operator: session.operator.id };
}

/** One deferral on row 1 of an entry for each item, signed through the server. @returns ids of their defects */
export async function deferEach(store, client, items) {
  const aircraft = (await fleet(store, client, 9)).slice(0, items.length);
  const defects = [];
  for (const [index, item] of items.entries()) {
    const [defect] = await writtenUp(client, [aircraft[index]], item);
    await defer(client, defect, item.entry);
    defects.push(defect.id);
  }
  return defects;
}

/** One aircraft for each deferral, so that no two wait for the same lock. */
async function fleet(store, client, round) {
  return store.withOperator(client.operator, null, async (tx) => {
    const ids = [];
    for (let n = 0; n < DEFERRALS; n += 1) {
      const registration = `Q-B${round}${String(n).padStart(3, '0')}`;
      ids.push(
        await tx.aircraft.add({
          id: newId(),
          registration,
          type: 'Kellwing',
          serial: 9000,
          configuration: ['regional'],
        }),
      );
    }
    return ids;
  });
}

async function writtenUp(client, aircraft, item = { entry: ENTRY, units: ['L'] }) {
  const defects = [];
  await perSecond(aircraft, async (id) => {
    const { body, etag } = await post(client, '/api/defects', {
      aircraft: id,
      origin: 'technician',
      description: 'Found inoperative.',
      recordedAt: new Date().toISOString(),
      item,
    });
    defects.push({
      id: body.defect.id,
      aircraft: id,
      number: body.defect.number,
      registration: body.defect.registration,
      etag,
    });
  });
  return defects;
}

async function defer(client, { id, number, registration, etag }, entry = ENTRY) {
  const statement = `I defer defect ${number} on ${registration} on the basis of MEL ${entry} row 1. I have read its conditions, and its procedures and placard belong to this deferral.`;
  await post(client, `/api/defects/${id}/deferral`, { row: '1', sign: { secret: client.secret, statement } }, etag);
}

export async function post({ url, cookie }, path, body, etag) {
  const response = await fetch(`${url}${path}`, {
    method: 'POST',
    headers: {
      cookie,
      'content-type': 'application/json',
      'idempotency-key': randomUUID(),
      ...(etag ? { 'if-match': etag } : {}),
    },
    body: JSON.stringify(body),
  });
  const answer = await response.json();
  if (!response.ok) throw new Error(`${path}: ${response.status} ${answer.detail}`);
  return { body: answer, etag: response.headers.get('etag') };
}

async function inSql(pool, operator, statements) {
  const connection = await pool.connect();
  try {
    await connection.query('begin');
    await connection.query("select set_config('app.operator', $1, true)", [operator]);
    for (const { text, values } of statements) await connection.query(text, values);
    await connection.query('commit');
  } finally {
    connection.release();
  }
}

/** Does all of the work, so many at once. @returns how many a second */
async function perSecond(list, work) {
  const waiting = [...list];
  const started = performance.now();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) await work(next);
    }),
  );
  return (list.length * 1000) / (performance.now() - started);
}
