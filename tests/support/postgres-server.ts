import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PostgreSqlContainer } from '@testcontainers/postgresql';
import { getContainerRuntimeClient } from 'testcontainers';
import { createOwner, ensureAppRole, migrate, reachableDataFolder, startEmbedded } from '#store';
import { withClient } from './with-client.js';

/** Where fresh databases of this run come from: a server, and a migrated database on it that is copied. */
export interface TestServer {
  /** Signs in as a superuser. */
  adminUrl: string;
  template: string;
  stop(): Promise<void>;
}

interface Started {
  adminUrl: string;
  used: string;
  stop(): Promise<void>;
}

/** `TEST_DATABASE_URL` if set, else a container if an engine answers, else a PostgreSQL of our own. */
export async function startTestServer(): Promise<TestServer> {
  const started = (await given()) ?? (await container()) ?? (await embedded());
  const template = `proviso_test_${process.pid}_${Date.now().toString(36)}`;
  const ownerUrl = await createOwner(started.adminUrl, template);
  await ensureAppRole(ownerUrl);
  await migrate(ownerUrl);
  await say(started);
  return {
    adminUrl: started.adminUrl,
    template,
    async stop() {
      await dropAll(started.adminUrl, template);
      await started.stop();
    },
  };
}

async function given(): Promise<Started | undefined> {
  const adminUrl = process.env.TEST_DATABASE_URL;
  if (!adminUrl) return undefined;
  return { adminUrl, used: 'the server of TEST_DATABASE_URL', stop: () => Promise.resolve() };
}

async function container(): Promise<Started | undefined> {
  const engine = await getContainerRuntimeClient().catch(() => undefined);
  if (!engine) return undefined;
  const running = await new PostgreSqlContainer('postgres:18').start();
  return {
    adminUrl: running.getConnectionUri(),
    used: 'a container of postgres:18',
    stop: async () => void (await running.stop()),
  };
}

const prefix = 'proviso-test-';

async function embedded(): Promise<Started> {
  await removeLeftovers();
  const folder = mkdtempSync(join(tmpdir(), prefix));
  const dataFolder = reachableDataFolder(folder);
  const server = await startEmbedded({ dataFolder });
  return {
    adminUrl: server.adminUrl,
    used: 'the embedded server',
    async stop() {
      await server.stop();
      for (const path of [folder, dataFolder]) rmSync(path, { recursive: true, force: true });
    },
  };
}

/** A run that was killed leaves its server running: starting on its folder adopts it, and then it can be stopped. */
async function removeLeftovers(): Promise<void> {
  const folders = readdirSync(tmpdir())
    .filter((name) => name.startsWith(prefix))
    .map((name) => join(tmpdir(), name));
  for (const folder of folders.filter(isOursAndAbandoned)) {
    const left = await startEmbedded({ dataFolder: folder });
    await left.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

function isOursAndAbandoned(folder: string): boolean {
  const starter = join(folder, 'started-by');
  if (statSync(folder).uid !== process.getuid?.() || !existsSync(starter)) return false;
  try {
    process.kill(Number(readFileSync(starter, 'utf8')), 0);
    return false;
  } catch {
    return true;
  }
}

async function say({ adminUrl, used }: Started): Promise<void> {
  const version = await withClient(adminUrl, async (client) => {
    const answer = await client.query<{ server_version: string }>('show server_version');
    return answer.rows[0]?.server_version;
  });
  mkdirSync('.test-output', { recursive: true });
  appendFileSync('.test-output/used.txt', `PostgreSQL ${version} of ${used}\n`);
}

async function dropAll(adminUrl: string, template: string): Promise<void> {
  await withClient(adminUrl, async (client) => {
    const made = await client.query<{ datname: string }>(
      'select datname from pg_database where starts_with(datname, $1)',
      [template],
    );
    for (const { datname } of made.rows) await client.query(`drop database if exists ${datname} with (force)`);
  });
}
