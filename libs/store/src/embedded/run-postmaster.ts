import { spawn, type ChildProcess } from 'node:child_process';
import { closeSync, openSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { asUser } from './database-user.js';
import type { Cluster } from './initialise.js';
import { isAlive, isPostgres, postmasterOf, type Postmaster } from './postmaster.js';

const tries = 60;
const pauseMs = 250;

/**
 * Starts the server and waits until it answers. After a crash a first start may be refused (a killed server not yet
 * waited for, or its children still letting go of the shared memory), and a port found free may be taken in between:
 * so it is tried again for a while before its own words are handed on.
 */
export async function runPostmaster(cluster: Omit<Cluster, 'secret'>): Promise<Postmaster> {
  const log = join(dirname(cluster.cluster), 'postgresql.log');
  for (let attempt = 1; attempt <= tries; attempt += 1) {
    removeLeftover(cluster.cluster);
    const port = await freePort();
    const child = launch(cluster, port, log);
    const started = await untilReady(child, cluster.cluster);
    if (started) return started;
    await sleep(pauseMs);
  }
  throw new Error(`PostgreSQL does not start on ${cluster.cluster}. Its last words:\n${tail(log)}`);
}

/** Its number now belongs to a process that is no PostgreSQL; the server itself would believe it and refuse. */
function removeLeftover(cluster: string): void {
  const left = postmasterOf(cluster);
  if (left && isAlive(left.pid) && !isPostgres(left.pid)) rmSync(join(cluster, 'postmaster.pid'));
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve, reject) => probe.once('listening', resolve).once('error', reject));
  const { port } = probe.address() as AddressInfo;
  await new Promise((resolve) => probe.close(resolve));
  return port;
}

/** In a session of its own, so that a key pressed in the terminal stops us and not the database under us. */
function launch({ binaries, cluster, user }: Omit<Cluster, 'secret'>, port: number, log: string): ChildProcess {
  const output = openSync(log, 'a', 0o600);
  const settings = [`port=${port}`, 'listen_addresses=127.0.0.1', 'unix_socket_directories=', 'fsync=on'];
  const child = spawn(binaries.postgres, ['-D', cluster, ...settings.flatMap((setting) => ['-c', setting])], {
    ...asUser(user, cluster),
    detached: true,
    stdio: ['ignore', output, output],
  });
  closeSync(output);
  child.on('error', () => undefined);
  child.unref();
  return child;
}

/** Asked of its own file, as PostgreSQL's own tools do: a connection tried too early only fills the log. */
async function untilReady(child: ChildProcess, cluster: string): Promise<Postmaster | undefined> {
  while (child.pid !== undefined && child.exitCode === null && child.signalCode === null) {
    const found = postmasterOf(cluster);
    if (found?.pid === child.pid && found.ready) return found;
    await sleep(20);
  }
  return undefined;
}

function tail(path: string): string {
  return readFileSync(path, 'utf8').trim().split('\n').slice(-12).join('\n');
}
