import { execFileSync } from 'node:child_process';

/** The system user that runs the database. PostgreSQL refuses to run as root, so root hands it to somebody else. */
export interface DatabaseUser {
  name: string;
  uid: number;
  gid: number;
}

/** Nobody in particular when this process is not root: the database then runs as whoever started it. */
export function databaseUser(): DatabaseUser | null {
  if (process.getuid?.() !== 0) return null;
  for (const name of ['postgres', 'nobody']) {
    const found = lookUp(name);
    if (found) return found;
  }
  throw new Error('PostgreSQL may not run as root, and this system has neither a user "postgres" nor "nobody".');
}

/** `id` is asked rather than /etc/passwd read: users may come from a directory service. */
function lookUp(name: string): DatabaseUser | undefined {
  try {
    const [uid, gid] = ['-u', '-g'].map((flag) =>
      Number(execFileSync('id', [flag, name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })),
    );
    return uid && gid ? { name, uid, gid } : undefined;
  } catch {
    return undefined;
  }
}

/** Options for a child process of that user: its identity, and nothing of our environment but what programs need. */
export function asUser(user: DatabaseUser | null, cwd: string) {
  const { PATH = '/usr/bin:/bin', SystemRoot } = process.env;
  const env = { PATH, LC_ALL: 'C', TZ: 'UTC', ...(SystemRoot ? { SystemRoot } : {}) };
  return user ? { cwd, env, uid: user.uid, gid: user.gid } : { cwd, env };
}
