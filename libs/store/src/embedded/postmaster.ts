import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a running server writes into its own folder. */
export interface Postmaster {
  pid: number;
  port: number;
  /** Whether it takes connections; false while it starts, recovers or stops. */
  ready: boolean;
}

/** The server that wrote postmaster.pid, if that process is alive and is a PostgreSQL; undefined otherwise. */
export function livePostmaster(cluster: string): Postmaster | undefined {
  const found = postmasterOf(cluster);
  return found && isAlive(found.pid) && isPostgres(found.pid) ? found : undefined;
}

/** What postmaster.pid says, whether or not it is still true. */
export function postmasterOf(cluster: string): Postmaster | undefined {
  let lines: string[];
  try {
    lines = readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n');
  } catch {
    return undefined;
  }
  const [pid, port] = [Number(lines[0]), Number(lines[3])];
  return pid > 0 && port > 0 ? { pid, port, ready: lines[7]?.trim() === 'ready' } : undefined;
}

/** A process that died but was not yet waited for (a zombie) still has a number, and is not alive. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  return process.platform === 'win32' || !ask(pid, 'stat').startsWith('Z');
}

/** Process numbers are used again, after a restart of the machine above all. */
export function isPostgres(pid: number): boolean {
  return process.platform === 'win32' || /postgres/.test(ask(pid, 'comm'));
}

function ask(pid: number, what: 'stat' | 'comm'): string {
  const fromProc = readProc(pid, what);
  if (fromProc !== undefined) return fromProc;
  try {
    return execFileSync('ps', ['-o', `${what}=`, '-p', String(pid)], { encoding: 'utf8' }).trim();
  } catch {
    return '';
  }
}

function readProc(pid: number, what: 'stat' | 'comm'): string | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/${what}`, 'utf8');
    return what === 'stat' ? text.slice(text.lastIndexOf(')') + 2) : text.trim();
  } catch {
    return undefined;
  }
}
