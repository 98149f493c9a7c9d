import { createHash } from 'node:crypto';
import { existsSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { databaseUser, type DatabaseUser } from './database-user.js';

/** The nearest folder above (or at) `path` that `user` may not enter; undefined when the way is open. */
export function closedFolder(path: string, user: DatabaseUser | null): string | undefined {
  if (!user) return undefined;
  const way: string[] = [];
  for (let at = resolve(path); ; at = dirname(at)) {
    way.unshift(at);
    if (dirname(at) === at) break;
  }
  return way.find((folder) => existsSync(folder) && !mayEnter(folder, user));
}

function mayEnter(folder: string, { uid, gid }: DatabaseUser): boolean {
  const { mode, uid: owner, gid: group } = statSync(folder);
  if (owner === uid) return (mode & 0o100) !== 0;
  if (group === gid) return (mode & 0o010) !== 0;
  return (mode & 0o001) !== 0;
}

/**
 * The preferred data folder, or, where root started us and the database's own user cannot get there (a checkout in a
 * closed home folder), one under /var/lib that belongs to this preferred path alone.
 */
export function reachableDataFolder(preferred: string): string {
  const path = resolve(preferred);
  if (!closedFolder(dirname(path), databaseUser())) return path;
  return join('/var/lib/proviso', createHash('sha256').update(path).digest('hex').slice(0, 16));
}
