/** The server as the tests use it: in this process with a clock of the test's own, or as the built program beside it. */
import { createServer, type AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { pino, type Logger } from 'pino';
import type { SecondEvaluator } from '#dispatch';
import { type HeadExport, Jobs, openStore, startSealer, type Store } from '#store';
import {
  type RunningServer as Server,
  type ServerOptions,
  startServer,
  type WatchOptions,
} from '../../apps/server/src/index.js';
import { demoOf, loadDemo } from '../../seed/load.js';
import { ApiClient } from './api-client.js';
import { built } from './built.js';
import { Contract, type OpenApi } from './contract.js';
import { freshDatabase, type FreshDatabase } from './postgres.js';
import { Program } from './program.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const SEED = fileURLToPath(new URL('../../seed', import.meta.url));

export const tzdb = process.versions.tz ?? 'unknown';

export interface RunningOptions {
  /** The clock; absent: the real one. */
  now?: () => string;
  /** Loads the demo; needs a database without an operator. */
  demo?: boolean;
  /** Absent: a fresh one, dropped at the end. */
  database?: FreshDatabase;
  /** Folder of the built pages; absent: the interface alone. */
  pages?: string;
  /** The secret that clients sign in and sign with; absent: that of the demo. */
  secret?: string;
  requestsPerMinute?: number;
  /** Signs heads when a history is handed out; absent: none are signed. */
  heads?: Pick<HeadExport, 'signNow'>;
  /** Absent: errors go to standard output. */
  logger?: Logger;
  /** What judges beside the rules engine; absent: its own. */
  secondEvaluator?: SecondEvaluator;
  /** What it does by itself; absent: nothing. */
  watch?: Omit<WatchOptions, 'jobs'>;
  /** Where people open the pages, and by which sign-on of somebody else they may come in. */
  outside?: Pick<ServerOptions, 'publicUrl' | 'signOn' | 'arrivesWithinMs'> | undefined;
  /** Other time-zone data than this machine's. */
  zoneData?: Pick<ServerOptions, 'tzdb' | 'startOfDayIn'>;
}

export interface RunningServer {
  url: string;
  ownerUrl: string;
  database: FreshDatabase;
  store: Store;
  /** What it found of open deadlines when it started. */
  zoneData: Awaited<ReturnType<typeof startServer>>['zoneData'];
  movementFiles: Server['movementFiles'];
  keep: Server['keep'];
  /** Every answer that its clients got was held against it. */
  contract: Contract;
  /** Somebody who is not signed in. */
  visitor(): ApiClient;
  /** @param operatorCode chooses one of several operators */
  signIn(name: string, operatorCode?: string): Promise<ApiClient>;
  stop(): Promise<void>;
}

/** The server in this process, with its sealer, on a database of its own. */
export async function runningServer(options: RunningOptions = {}): Promise<RunningServer> {
  const { now = () => new Date().toISOString(), demo = false, pages, requestsPerMinute = 100_000 } = options;
  const database = options.database ?? (await freshDatabase());
  const { ownerUrl, appUrl } = database;
  const store = await openStore(appUrl);
  if (demo) await loadDemo({ folder: SEED, ownerUrl, store, now: now(), tzdb });
  const sealer = await startSealer(ownerUrl, { everyMs: 20 });
  const { logger = pino({ level: process.env['LOG_LEVEL'] ?? 'error' }), secondEvaluator } = options;
  const { watch } = options;
  const jobs = watch ? await Jobs.open(appUrl, { onError: (err) => logger.error({ err }, 'a job failed') }) : null;
  const server = await startServer({
    store,
    logger,
    now,
    tzdb,
    host: '127.0.0.1',
    port: 0,
    requestsPerMinute,
    ...(pages === undefined ? {} : { pages }),
    ...options.outside,
    ...(options.heads === undefined ? {} : { heads: options.heads }),
    ...options.zoneData,
    ...(secondEvaluator === undefined ? {} : { secondEvaluator }),
    ...(watch && jobs ? { watch: { ...watch, jobs } } : {}),
  });
  const contract = new Contract(server.openApi as unknown as OpenApi, await problemsOf(server.url));
  const visitor = () => new ApiClient(server.url, options.secret ?? demoSecret(), contract);
  return {
    url: server.url,
    ownerUrl,
    database,
    store,
    zoneData: server.zoneData,
    movementFiles: server.movementFiles,
    keep: server.keep,
    contract,
    visitor,
    signIn: (name, operatorCode) => visitor().signIn(name, operatorCode),
    async stop() {
      await server.close();
      await sealer.stop();
      await store.close();
      if (options.database === undefined) await database.drop();
    },
  };
}

export interface ServerProcess {
  url: string;
  visitor(): ApiClient;
  signIn(name: string, operatorCode?: string): Promise<ApiClient>;
  /** Ends it as an administrator does. */
  stop(): Promise<void>;
  /** Ends it as `kill -9` does. */
  kill(): Promise<void>;
}

export interface ServerProcessOptions {
  /** Signs in as the owner of the tables. */
  databaseUrl: string;
  /** Absent: a free one. */
  port?: number;
  secret?: string;
  env?: Record<string, string>;
}

/** Looked at once for each test file, however many servers it starts. */
let fresh: Promise<void> | undefined;

/** The built program as a process of its own; on a database without an operator it loads the demo. */
export async function serverProcess(options: ServerProcessOptions): Promise<ServerProcess> {
  const { databaseUrl, port = await freePort(), secret = demoSecret() } = options;
  await (fresh ??= built());
  const main = `${ROOT}/dist/apps/cli/src/main.js`;
  const program = new Program(process.execPath, [main, 'start', '--port', String(port)], {
    DATABASE_URL: databaseUrl,
    REQUESTS_PER_MINUTE: '1000000',
    ...options.env,
  });
  await program.ready((line) => line.startsWith('Proviso is ready:'));
  const url = `http://127.0.0.1:${port}`;
  const visitor = () => new ApiClient(url, secret);
  return {
    url,
    visitor,
    signIn: (name, operatorCode) => visitor().signIn(name, operatorCode),
    stop: async () => void (await program.kill('SIGTERM')),
    kill: async () => void (await program.kill()),
  };
}

async function problemsOf(url: string): Promise<{ type: string; status: number }[]> {
  const response = await fetch(`${url}/api/problems`);
  return ((await response.json()) as { problems: { type: string; status: number }[] }).problems;
}

export function demoSecret(): string {
  return demoOf(SEED).secret;
}

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise<void>((resolve) => server.close(() => resolve()));
  return port;
}
