/**
 * Two servers as two processes on one database watch one folder, and one of them is killed while it takes files in. Each
 * file is taken in once and whole: no message is lost, and none counts twice.
 */
import { mkdir, mkdtemp, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openStore, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { type ServerProcess, serverProcess } from '../support/running-server.js';
import { movementsOperator, type MovementsOperator } from './movements-operator.js';

const FILES = 24;
const MESSAGES = 12;
const PATIENCE = { interval: 50, timeout: 120_000 };
/** The server runs by the real clock, so the flights are of yesterday. */
const YESTERDAY = new Date(Date.now() - 86_400_000).toISOString().slice(0, 10);

let database: FreshDatabase;
let store: Store;
let operator: MovementsOperator;
let root: string;
let servers: ServerProcess[] = [];

beforeAll(async () => {
  database = await freshDatabase();
  store = await openStore(database.appUrl);
  const marks = Array.from({ length: FILES }, (_, n) => `Q-T${String.fromCharCode(65 + n)}X`);
  operator = await movementsOperator({ database, store }, { code: 'QT', marks });
  root = await mkdtemp(join(tmpdir(), 'proviso-two-'));
  const env = { MOVEMENTS_FOLDER: root };
  servers = await Promise.all([1, 2].map(() => serverProcess({ databaseUrl: database.ownerUrl, env })));
  // Whole from their first moment: written beside it and moved in.
  const outside = join(root, '..', `${root.split('/').at(-1)}-beside`);
  await mkdir(outside);
  for (const [n, mark] of marks.entries()) {
    const name = `file-${String(n).padStart(2, '0')}.txt`;
    await writeFile(join(outside, name), flownBy(mark.replace('-', ''), n));
    await rename(join(outside, name), join(root, name));
  }
  await rm(outside, { recursive: true });
});

afterAll(async () => {
  await Promise.all(servers.map((server) => server.stop()));
  await store.close();
  await database.drop();
  await rm(root, { recursive: true, force: true });
});

/** Six legs of one aircraft, each with its departure and its arrival. */
function flownBy(mark: string, file: number): string {
  const day = YESTERDAY.slice(8);
  const two = (hour: number) => String(hour).padStart(2, '0');
  const legs = Array.from({ length: MESSAGES / 2 }, (_, leg) => {
    const flight = `QT${file * 10 + leg + 1}/${day}.${mark}`;
    const [from, to] = leg % 2 === 0 ? ['QXA', 'QXB'] : ['QXB', 'QXA'];
    const [out, back] = [two(leg * 3), two(leg * 3 + 1)];
    return `MVT\n${flight}.${from}\nAD${out}00/${out}10 EA${back}00 ${to}\n\nMVT\n${flight}.${to}\nAA${back}00/${back}05`;
  });
  return `RECEIVED ${YESTERDAY}T23:30:00Z\n${legs.join('\n\n')}\n`;
}

const counted = (sql: string) =>
  store.withOperator(operator.id, null, async (tx) => Number((await tx.query<{ n: string }>(sql))[0]?.n));
const done = async () => (await readdir(join(root, 'done'))).length;
const lying = async () => (await readdir(root)).filter((name) => name.endsWith('.txt'));

it('each file is taken in once, and nothing of one that a killed server had at hand is lost', async () => {
  await expect.poll(done, PATIENCE).toBeGreaterThan(2);
  await servers.shift()?.kill();
  expect((await lying()).length).toBeGreaterThan(0);
  await expect.poll(done, PATIENCE).toBe(FILES);
  expect(await lying()).toEqual([]);
  expect(await readdir(join(root, 'tray'))).toEqual([]);
  expect(await counted('select count(*) as n from movement_file')).toBe(FILES);
  expect(await counted("select count(*) as n from movement_delivery where came_by = 'file'")).toBe(FILES);
  expect(await counted('select count(distinct sha256) as n from movement_message')).toBe(FILES * MESSAGES);
  expect(await counted('select count(*) as n from movement_message')).toBe(FILES * MESSAGES);
  expect(await counted('select count(*) as n from movement_tray')).toBe(0);
  const legs = "from leg where version = 1 and ending = 'arrived'";
  expect(await counted(`select count(*) as n ${legs}`)).toBe((FILES * MESSAGES) / 2);
  expect(await counted(`select sum(flight_minutes) as n ${legs}`)).toBe(((FILES * MESSAGES) / 2) * 50);
  expect(await counted('select count(*) as n from leg')).toBe((FILES * MESSAGES) / 2);
});
