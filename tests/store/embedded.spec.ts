import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reachableDataFolder, startEmbedded, type EmbeddedPostgres } from '#store';
import { bundled } from '../support/bundled.js';
import { Program } from '../support/program.js';
import { withClient } from '../support/with-client.js';

const isRoot = process.getuid?.() === 0;
let folder: string;
let dataFolder: string;
let program: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'proviso-embedded-'));
  chmodSync(folder, 0o711);
  dataFolder = reachableDataFolder(join(folder, 'data'));
  program = await bundled('tests/store/embedded.program.ts');
});

afterAll(() => {
  for (const path of [folder, dataFolder]) rmSync(path, { recursive: true, force: true });
});

async function running<T>(work: (server: EmbeddedPostgres) => Promise<T>): Promise<T> {
  const server = await startEmbedded({ dataFolder });
  try {
    return await work(server);
  } finally {
    await server.stop();
  }
}

async function one(url: string, sql: string): Promise<Record<string, unknown> | undefined> {
  return withClient(url, async (client) => (await client.query<Record<string, unknown>>(sql)).rows[0]);
}

interface Started {
  pid: number;
  reused: boolean;
  ownerUrl: string;
}

async function inAnotherProcess(): Promise<{ started: Started; process: Program }> {
  const other = await new Program(process.execPath, [program, dataFolder]).ready();
  return { started: JSON.parse(other.lines[0] ?? '') as Started, process: other };
}

describe('the embedded server', () => {
  it('keeps what was written over a stop and a start', async () => {
    await running(({ ownerUrl }) =>
      withClient(ownerUrl, (client) => client.query('create table kept as select 1 as a')),
    );
    await running(async ({ ownerUrl, reused }) => {
      expect(reused).toBe(false);
      expect(await one(ownerUrl, 'select a from kept')).toEqual({ a: 1 });
    });
  });

  it('is safe by its settings: durable, on the loopback alone, text sorted alike everywhere', async () => {
    await running(async ({ adminUrl }) => {
      const set = await one(
        adminUrl,
        `select current_setting('fsync') as fsync, current_setting('synchronous_commit') as commits,
           current_setting('listen_addresses') as listens, current_setting('unix_socket_directories') as sockets,
           current_setting('data_checksums') as checksums, current_setting('password_encryption') as passwords,
           lower('ÄŁ') as folded, datlocprovider as provider, datlocale as locale from pg_database
         where datname = 'proviso'`,
      );
      expect(set).toEqual({
        fsync: 'on',
        commits: 'on',
        listens: '127.0.0.1',
        sockets: '',
        checksums: 'on',
        passwords: 'scram-sha-256',
        folded: 'äł',
        provider: 'b',
        locale: 'C.UTF-8',
      });
    });
  });

  it('asks for its secret, which is kept readable for its owner alone', async () => {
    expect(statSync(join(dataFolder, 'secret')).mode & 0o777).toBe(0o600);
    expect(statSync(join(dataFolder, 'postgresql')).mode & 0o777).toBe(0o700);
    expect(readFileSync(join(dataFolder, 'secret'), 'utf8')).toMatch(/^[0-9a-f]{64}$/);
    await running(async ({ adminUrl, ownerUrl, url }) => {
      for (const good of [adminUrl, ownerUrl, url]) expect(await one(good, 'select 1 as a')).toEqual({ a: 1 });
      for (const address of [adminUrl, ownerUrl, url]) {
        for (const password of ['', 'postgres', new URL(url === address ? ownerUrl : url).password]) {
          const wrong = Object.assign(new URL(address), { password }).href;
          await expect(one(wrong, 'select 1 as a'), password).rejects.toThrow(/password/);
        }
      }
    });
  });

  it('is used, and not stopped, by a second program while the one that started it lives', async () => {
    const first = await inAnotherProcess();
    const second = await startEmbedded({ dataFolder });
    expect(second).toMatchObject({ reused: true, pid: first.started.pid });
    await second.stop();
    expect(await one(second.ownerUrl, 'select 1 as a')).toEqual({ a: 1 });
    await first.process.finish();
    await expect(one(second.ownerUrl, 'select 1 as a')).rejects.toThrow(/ECONNREFUSED/);
  });

  it('is found again after its program was killed, and is stopped by whoever found it', async () => {
    const first = await inAnotherProcess();
    await first.process.kill('SIGKILL');
    const second = await startEmbedded({ dataFolder });
    expect(second).toMatchObject({ reused: true, pid: first.started.pid });
    await second.stop();
    await expect(one(second.ownerUrl, 'select 1 as a')).rejects.toThrow(/ECONNREFUSED/);
  });

  it('is one server when two programs start it at once', async () => {
    const both = await Promise.all([inAnotherProcess(), inAnotherProcess()]);
    expect(both[0].started.pid).toBe(both[1].started.pid);
    expect(both.map(({ started }) => started.reused).sort()).toEqual([false, true]);
    const [starter, user] = both[0].started.reused ? both.toReversed() : both;
    await user?.process.finish();
    await starter?.process.finish();
  });

  it('starts again after it and its program were killed at the same moment', async () => {
    for (let round = 0; round < 2; round += 1) {
      const { started, process: killed } = await inAnotherProcess();
      process.kill(started.pid, 'SIGKILL');
      await killed.kill('SIGKILL');
    }
    await running(async ({ ownerUrl }) => expect(await one(ownerUrl, 'select a from kept')).toEqual({ a: 1 }));
  });

  it('starts though the process number it left behind now belongs to something else', async () => {
    const port = '5432';
    const left = [process.pid, join(dataFolder, 'postgresql'), 1, port, '', '127.0.0.1', '', 'ready'].join('\n');
    const path = join(dataFolder, 'postgresql/postmaster.pid');
    writeFileSync(path, `${left}\n`);
    await running(async ({ reused }) => expect(reused).toBe(false));
  });

  it('starts though a start was broken off half-way', async () => {
    writeFileSync(join(dataFolder, 'starting'), '4194303');
    mkdirSync(join(dataFolder, 'postgresql.new'));
    await running(async ({ ownerUrl }) => expect(await one(ownerUrl, 'select a from kept')).toEqual({ a: 1 }));
  });
});

it('a data folder that cannot be reached is said so, with the folder in the way', async () => {
  const closed = join(folder, 'closed-home');
  mkdirSync(closed, { mode: isRoot ? 0o700 : 0o500 });
  const start = startEmbedded({ dataFolder: join(closed, 'checkout/.proviso') });
  if (isRoot) await expect(start).rejects.toThrow(`${closed} is closed to it`);
  else await expect(start).rejects.toThrow(`EACCES`);
});
