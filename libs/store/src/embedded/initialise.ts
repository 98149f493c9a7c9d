import { execFile } from 'node:child_process';
import { chownSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import type { Binaries } from './binaries.js';
import { asUser, type DatabaseUser } from './database-user.js';

export interface Cluster {
  binaries: Binaries;
  /** The folder PostgreSQL itself calls its data directory. */
  cluster: string;
  secret: string;
  user: DatabaseUser | null;
}

/**
 * Makes an empty database cluster. It is made beside its place and moved there when whole, so that one broken off
 * half-way is begun again and not taken for a database.
 */
export async function initialise({ binaries, cluster, secret, user }: Cluster): Promise<void> {
  const half = `${cluster}.new`;
  const passwordFile = join(dirname(cluster), 'password.new');
  rmSync(half, { recursive: true, force: true });
  rmSync(passwordFile, { force: true });
  mkdirSync(half, { mode: 0o700 });
  writeFileSync(passwordFile, secret, { mode: 0o600, flag: 'wx' });
  if (user) for (const path of [half, passwordFile]) chownSync(path, user.uid, user.gid);
  try {
    await promisify(execFile)(binaries.initdb, [...settings, '-D', half, '--pwfile', passwordFile], {
      ...asUser(user, half),
    });
  } finally {
    rmSync(passwordFile, { force: true });
  }
  renameSync(half, cluster);
}

/** The locale is PostgreSQL's own, so that text sorts and folds alike on every machine, whatever it has installed. */
const settings = [
  '--username=postgres',
  '--auth=scram-sha-256',
  '--encoding=UTF8',
  '--locale=C',
  '--locale-provider=builtin',
  '--builtin-locale=C.UTF-8',
  '--data-checksums',
];
