import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { isAlive } from './postmaster.js';

/**
 * Runs `work` while no other process does the same on this folder. The lock is a file naming its holder, so that one
 * left by a killed process is known for dead and taken over.
 */
export async function withFolderLock<T>(path: string, work: () => Promise<T>): Promise<T> {
  while (!take(path)) {
    removeIfDead(path);
    await sleep(50);
  }
  try {
    return await work();
  } finally {
    rmSync(path, { force: true });
  }
}

/** Linked into place with the number already in it: there is no moment at which the lock names nobody. */
function take(path: string): boolean {
  const mine = `${path}.${process.pid}`;
  writeFileSync(mine, String(process.pid), { mode: 0o600 });
  try {
    linkSync(mine, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    return false;
  } finally {
    rmSync(mine, { force: true });
  }
}

/** Moved aside before it is judged, so that of several who wait only one removes it; a live one is put back. */
function removeIfDead(path: string): void {
  if (isHeldByTheLiving(path)) return;
  const aside = `${path}.${process.pid}.dead`;
  try {
    renameSync(path, aside);
    if (isHeldByTheLiving(aside)) linkSync(aside, path);
  } catch (error) {
    if (!['ENOENT', 'EEXIST'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

function isHeldByTheLiving(path: string): boolean {
  try {
    return isAlive(Number(readFileSync(path, 'utf8')));
  } catch {
    return true;
  }
}
