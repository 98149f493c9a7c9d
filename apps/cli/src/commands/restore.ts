import { access } from 'node:fs/promises';
import type { ErasuresGiven, Restored } from '#store';
import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { ERASED, erasedWords, erasuresIn, ERASURES_KEY, unheldWords } from '../erasures.js';
import { DATABASE, needed } from '../options.js';
import { publicKeyIn } from '../signed-file.js';
import { UsageError } from '../usage-error.js';
import { count, sayInstant } from '../words/say-time.js';

export const restore: Command = {
  name: 'restore',
  summary: 'put a backup into an empty database, all of it or nothing, with every record checked',
  options: [
    { name: 'from', value: 'FILE', about: 'the file that `backup` wrote', must: true },
    ERASED,
    ERASURES_KEY,
    DATABASE,
  ],
  examples: [
    'restore --from proviso-2026-11-28.backup --erased heads --database postgres://owner@db.example.org/empty',
  ],
  async run(given) {
    const from = needed(given, 'from');
    await access(from).catch(() => {
      throw new UsageError(`--from ${from}: there is no such file`);
    });
    const erased = given.options.get('erased');
    const key = given.options.get('key');
    const erasures = {
      files: erased === undefined ? [] : await erasuresIn(erased),
      keys: key === undefined ? [] : [await publicKeyIn(key)],
      now: new Date().toISOString(),
    };
    return withDatabase(
      given.options.get('database'),
      ({ ownerUrl, name }) => restored(ownerUrl, name, from, erasures),
      { mayMake: true },
    );
  },
};

async function restored(ownerUrl: string, name: string, from: string, erasures: ErasuresGiven) {
  const { BackupDamaged, CannotRestore, ErasuresRefused, restoreBackup } = await import('#store');
  try {
    const done = await restoreBackup(ownerUrl, from, erasures);
    return { value: { database: name, ...done }, words: wordsOf(name, done), exit: 0 as const };
  } catch (error) {
    if (error instanceof BackupDamaged) throw new UsageError(`--from ${from}: is no whole backup: ${error.message}`);
    if (error instanceof CannotRestore) throw new UsageError(`${name}: nothing was restored: ${error.message}`);
    if (error instanceof ErasuresRefused) throw new UsageError(`--erased ${error.message}; nothing was restored`);
    throw error;
  }
}

function wordsOf(name: string, { rows, madeAt, records, erasures }: Restored): string {
  const fits = records.map(({ operatorCode, entries }) => `${operatorCode} ${entries}`).join(', ');
  const held = records.map(({ operatorCode }) => {
    const list = erasures.find(({ operator }) => operator === operatorCode);
    return list ? erasedWords(list) : unheldWords(operatorCode, madeAt);
  });
  const first = `${name}: ${count(rows, 'row')} as of ${sayInstant(madeAt)} restored; every record fits (${fits} entries). Jobs that waited are not in a backup.`;
  return [first, ...held].join('\n');
}
