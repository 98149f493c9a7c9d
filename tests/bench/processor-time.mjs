/** Processor time of processes, from what the system counts for them. */
import { readdirSync, readFileSync } from 'node:fs';

/** The system counts in hundredths of a second. */
const MS_EACH = 10;

/** @returns milliseconds that this process took so far */
export function takenBy(pid) {
  return taken(pid)?.milliseconds ?? 0;
}

/** @returns milliseconds that a database took so far: its first process, and the one of each connection */
export function takenByDatabase(dataFolder) {
  const first = Number(readFileSync(`${dataFolder}/postgresql/postmaster.pid`, 'utf8').split('\n')[0]);
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  const all = processes.map((pid) => ({ pid: Number(pid), ...taken(pid) }));
  return all
    .filter(({ pid, parent }) => pid === first || parent === first)
    .reduce((sum, { milliseconds }) => sum + milliseconds, 0);
}

function taken(pid) {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = line.slice(line.lastIndexOf(')') + 2).split(' ');
    return { parent: Number(fields[1]), milliseconds: (Number(fields[11]) + Number(fields[12])) * MS_EACH };
  } catch {
    return { parent: 0, milliseconds: 0 };
  }
}
