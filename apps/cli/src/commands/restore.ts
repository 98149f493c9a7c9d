import { access } from 'node:fs/promises';
import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE, needed } from '../options.js';
import { UsageError } from '../usage-error.js';
import { count, sayInstant } from '../words/say-time.js';

export const restore: Command = {
  name: 'restore',
  summary: 'put a backup into an empty database, all of it or nothing, with every record checked',
  options: [{ name: 'from', value: 'FILE', about: 'the file that `backup` wrote', must: true }, DATABASE],
  examples: ['restore --from proviso-2026-11-28.backup --database postgres://owner@db.example.org/empty'],
  async run(given) {
    const from = needed(given, 'from');
    await access(from).catch(() => {
      throw new UsageError(`--from ${from}: there is no such file`);
    });
    return withDatabase(given.options.get('database'), ({ ownerUrl, name }) => restored(ownerUrl, name, from), {
      mayMake: true,
    });
  },
};

async function restored(ownerUrl: string, name: string, from: string) {
  const { BackupDamaged, CannotRestore, restoreBackup } = await import('#store');
  try {
    const done = await restoreBackup(ownerUrl, from);
    const records = done.records.map(({ operatorCode, entries }) => `${operatorCode} ${entries}`).join(', ');
    const words = `${name}: ${count(done.rows, 'row')} as of ${sayInstant(done.madeAt)} restored; every record fits (${records} entries). Jobs that waited are not in a backup.`;
    return { value: { database: name, ...done }, words, exit: 0 as const };
  } catch (error) {
    if (error instanceof BackupDamaged) throw new UsageError(`--from ${from}: is no whole backup: ${error.message}`);
    if (error instanceof CannotRestore) throw new UsageError(`${name}: nothing was restored: ${error.message}`);
    throw error;
  }
}
