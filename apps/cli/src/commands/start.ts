import { join } from 'node:path';
import type { Logger } from 'pino';
import type { Store } from '#store';
import type { RunningServer } from '../../../server/src/index.js';
import type { Command } from '../command.js';
import { type Found, withDatabase } from '../database.js';
import { demoOnEmpty, ROOT } from '../demo.js';
import { erasuresAtStart } from '../erasures-at-start.js';
import { exportHeads, HEAD_OPTIONS, headsAsked, type HeadsAsked, keyAsked } from '../heads.js';
import type { WatchingFolder } from '../folder/watch-folder.js';
import { START_OPTIONS, type StartOptions, startOptions } from '../start-options.js';
import { demoWords } from '../words/demo.js';
import { readableSecretWords } from '../words/readable-secrets.js';
import { zoneDataWords } from '../words/zone-data-words.js';

export const start: Command = {
  name: 'start',
  summary: 'run the server and the pages; without a database it brings one of its own',
  options: [...START_OPTIONS, ...HEAD_OPTIONS],
  notes: [
    'What stands in brackets is the variable of the environment that says the same. By the environment alone: PUBLIC_URL, the address that people use; OPENID_ISSUER, OPENID_CLIENT_ID, OPENID_CLIENT_SECRET and OPENID_NAME, a sign-on of your own; SECRET_KEYS, keys for the secrets of webhooks; REQUESTS_PER_MINUTE and LOG_LEVEL.',
  ],
  examples: ['start --port 8080 --heads /mnt/elsewhere/heads'],
  async run(given) {
    const options = startOptions(given, process.env);
    const heads = headsAsked(given);
    await withDatabase(given.options.get('database'), (found) => serve(found, heads, options), { mayMake: true });
    return { value: null, words: '', exit: 0 as const };
  },
};

async function serve({ ownerUrl, name }: Found, asked: HeadsAsked, options: StartOptions): Promise<void> {
  const { pino } = await import('pino');
  const { ensureAppRole, Jobs, migrate, openStore, startSealer } = await import('#store');
  const { startServer } = await import('../../../server/src/index.js');
  const logger = pino({ level: process.env['LOG_LEVEL'] ?? 'warn' });
  const failed = (what: string) => (err: unknown) => logger.error({ err }, what);
  const tzdb = process.versions.tz ?? 'unknown';
  const now = () => new Date().toISOString();
  const appUrl = await ensureAppRole(ownerUrl);
  await migrate(ownerUrl);
  const erased =
    asked.folder === null ? [] : await erasuresAtStart(ownerUrl, asked.folder, await keyAsked(asked.key), now());
  const store = await openStore(appUrl);
  const demo = options.demo ? await demoOnEmpty(ownerUrl, store, tzdb) : null;
  const sealer = await startSealer(ownerUrl, { onError: failed('sealing failed') });
  const heads = await exportHeads(ownerUrl, asked, now, failed('signing heads failed'));
  const { host, port, requestsPerMinute, leaseSeconds, mail, endpointsInside, secretKeys, lookEverySeconds } =
    options;
  const jobs = await Jobs.open(appUrl, { leaseSeconds, onError: failed('a job failed') });
  const watch = { jobs, mail, endpointsInside, secretKeys, lookEverySeconds };
  const pages = join(ROOT, 'dist/apps/web');
  const { publicUrl, signOn } = options;
  const outside = { store, logger, now, tzdb, heads, watch, publicUrl, signOn };
  const server = await startServer({ ...outside, host, port, pages, requestsPerMinute });
  const folder = await movementsFolder(options, store, server, logger);
  print(`Proviso is ready: ${server.url} (database ${name}, time-zone data ${tzdb})`);
  if (heads) print(`Signed heads of the record: ${asked.folder}, every ${asked.minutes} min, key ${asked.key}`);
  for (const line of [...erased, ...zoneDataWords(server.zoneData)]) print(line);
  if (demo) print(demoWords(demo));
  if ((await store.operatorsServed()).length === 0) print(NOBODY_YET);
  for (const line of await readableSecretWords(store, secretKeys.length > 0)) print(line);
  await toldToStop();
  await folder?.stop();
  await server.close();
  await sealer.stop();
  await heads?.stop();
  await store.close();
}

const NOBODY_YET =
  'Nobody can sign in yet: make an operator and its first administrator beside this server (proviso help operator add).';

/** Only once the server answers, so that a folder that cannot be used stops the start and nothing else. */
async function movementsFolder(
  { movementsFolder: folder }: StartOptions,
  store: Store,
  { movementFiles }: RunningServer,
  logger: Logger,
): Promise<WatchingFolder | null> {
  if (folder === null) return null;
  const { layOut, watchFolder } = await import('../folder/watch-folder.js');
  const laidOut = await layOut(
    folder,
    (await store.operatorsServed()).map(({ code }) => code),
  );
  const onError = (err: unknown, path: string) => logger.error({ err, path }, 'a file could not be taken in');
  return watchFolder({ folder: laidOut, ...movementFiles, onError });
}

function toldToStop(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}
