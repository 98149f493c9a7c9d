/**
 * Ten thousand open deferrals of one operator: what is left of each counted anew, and the reminders that it makes due.
 * Three of four run by the calendar, one by the hours of an engine, for which the fleet flies meanwhile. Two are signed
 * through the server; the others are copies of their rows and acts, without entries of their own in the record.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { pino } from 'pino';
import { Jobs, newId, openStore, startEmbedded } from '#store';
import { startServer as serve } from '../../dist/apps/server/src/index.js';
import { peakMiB } from './movements.mjs';
import { deferEach, signIn } from './over-http.mjs';
import { startServer } from './server-process.mjs';

const DAY = 86_400_000;
const NEVER_MS = 3_600_000;
const SIGNED = [
  { entry: '33-42-11', units: ['L'] },
  { entry: '73-21-31', units: ['1'] },
];
/** Of every four copies so many are of the second one. */
const COUNTED_OF_FOUR = 1;
const FLIGHTS_EACH = 60;

/** @param deferrals how many; @param aircraft on how many aircraft */
export async function watching(deferrals = 10_000, aircraft = 200) {
  const folder = await mkdtemp(join(tmpdir(), 'proviso-bench-'));
  await (await startServer(folder)).stop();
  // Ours before the server finds it, so that it runs on when the server is stopped.
  const database = await startEmbedded({ dataFolder: join(folder, '.proviso') });
  try {
    const server = await startServer(folder, { REQUESTS_PER_MINUTE: '1000000' });
    const client = await signIn(server.url);
    const store = await openStore(database.url, { connections: 4 });
    const signed = await deferEach(store, client, SIGNED);
    await server.stop();
    const one = { url: database.url, operator: client.operator };
    await inSql(one, (sql) => copied(sql, signed, deferrals, aircraft));
    await store.withOperator(client.operator, null, async (tx) => {
      const [member] = await tx.people.members();
      const address = { kind: 'email', address: 'engineer@example.org', label: 'bench', confirmedAt: timeIn(0) };
      await tx.reminderAddresses.add({ id: newId(), personId: member.personId, ...address, createdAt: timeIn(0) });
    });
    const lines = await looked(store, one);
    await store.close();
    return lines;
  } finally {
    await database.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

async function looked(store, { url, operator }) {
  const jobs = await Jobs.open(url);
  let now = timeIn(0);
  const watch = { jobs, mail: null, endpointsInside: false, everyMs: NEVER_MS, lookEverySeconds: 43_200 };
  const outside = { store, logger: pino({ level: 'error' }), now: () => now, tzdb: process.versions.tz, watch };
  const app = await serve({ ...outside, host: '127.0.0.1', port: 0 });
  const lines = [];
  for (const [what, days, flights] of [
    ['nothing due', 0, 0],
    ['a reminder due for each', 200, FLIGHTS_EACH],
    ['the same again', 200, 0],
  ]) {
    await inSql({ url, operator }, (sql) => flown(sql, flights));
    now = timeIn(days);
    const started = performance.now();
    const used = process.cpuUsage();
    const { deferrals, noticed } = await app.look(operator);
    const seconds = (performance.now() - started) / 1000;
    const { user, system } = process.cpuUsage(used);
    const busy = ((user + system) / 1_000_000).toFixed(1);
    lines.push(
      `${deferrals} open deferrals, ${what}: ${seconds.toFixed(1)} s (${busy} s of this process), ${noticed} noticed`,
    );
  }
  lines.push(`peak memory of this process ${peakMiB()} MiB`);
  await app.close();
  return lines;
}

/** As the owner of the tables, who is shown the rows of this operator alone. */
async function inSql({ url, operator }, work) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("select set_config('app.operator', $1, false)", [operator]);
    await work(client);
  } finally {
    await client.end();
  }
}

/** Deferrals that were signed through the server, copied under new keys onto so many aircraft. */
async function copied(sql, [byCalendar, counted], deferrals, aircraft) {
  const planes = Array.from({ length: aircraft }, (_, n) => [randomUUID(), `Q-N${String(n).padStart(3, '0')}`]);
  const columns = async (table) => (await sql.query(`select * from ${table} limit 0`)).fields.map(({ name }) => name);
  const like = (names, own) => names.map((name) => own[name] ?? `old.${name}`).join(', ');
  const [ofAircraft, ofDefect, ofAct] = [
    await columns('aircraft'),
    await columns('defect'),
    await columns('defect_act'),
  ];
  await sql.query(
    `insert into aircraft (${ofAircraft.join(', ')})
     select ${like(ofAircraft, { id: 'made.id', registration: 'made.mark' })}
     from unnest($1::uuid[], $2::text[]) made (id, mark), aircraft old
     where old.id = (select aircraft_id from defect where id = $3)`,
    [planes.map(([id]) => id), planes.map(([, mark]) => mark), byCalendar],
  );
  await sql.query('create temporary table made (id uuid, of uuid, aircraft_id uuid, number integer)');
  await sql.query(
    `insert into made
     select gen_random_uuid(), case when n / $2 % 4 < $6 then $5::uuid else $4::uuid end, ($1::uuid[])[1 + n % $2],
       1 + n / $2
     from generate_series(0, $3 - 1) n`,
    [planes.map(([id]) => id), aircraft, deferrals, byCalendar, counted, COUNTED_OF_FOUR],
  );
  await sql.query(
    `insert into defect (${ofDefect.join(', ')})
     select ${like(ofDefect, { id: 'made.id', aircraft_id: 'made.aircraft_id', number: 'made.number' })}
     from made join defect old on old.id = made.of`,
  );
  const payload = 'replace(old.payload::text, old.defect_id::text, made.id::text)::jsonb';
  await sql.query(
    `insert into defect_act (${ofAct.join(', ')})
     select ${like(ofAct, { id: 'gen_random_uuid()', defect_id: 'made.id', payload })}
     from made join defect_act old on old.defect_id = made.of`,
  );
  await sql.query('analyze');
}

/** So many flights of two hours by each of the copies, twelve hours apart. */
async function flown(sql, flights) {
  await sql.query(
    `insert into flight (operator_id, id, aircraft_id, number, from_station, to_station, off_block_at, on_block_at,
       flight_minutes, state)
     select operator_id, gen_random_uuid(), id, 'N' || n, station, station, $2::timestamptz + n * interval '12 hours',
       $2::timestamptz + n * interval '12 hours' + interval '2 hours', 110, 'flown'
     from aircraft, generate_series(1, $1) n, (select min(code) as station from station) one
     where registration like 'Q-N%'`,
    [flights, timeIn(0)],
  );
}

const begun = Date.now();
const timeIn = (days) => new Date(begun + days * DAY + 3_600_000).toISOString();
