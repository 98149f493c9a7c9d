import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE, needed } from '../options.js';
import { UsageError } from '../usage-error.js';
import { count, sayInstant } from '../words/say-time.js';

export const backup: Command = {
  name: 'backup',
  summary: 'write everything into one file while the servers go on; needs no database tools',
  options: [
    {
      name: 'to',
      value: 'FILE|FOLDER',
      about: 'where it goes; in a folder it is named after the moment',
      must: true,
    },
    DATABASE,
  ],
  examples: ['backup --to /var/backups/proviso'],
  async run(given) {
    const now = new Date().toISOString();
    const path = await fileIn(needed(given, 'to'), now);
    const made = await withDatabase(given.options.get('database'), async ({ ownerUrl }) => {
      const { makeBackup } = await import('#store');
      return makeBackup(ownerUrl, path, now);
    });
    const { rows, bytes, operators } = made;
    const words = `${path}: ${count(rows, 'row')} of ${count(operators.length, 'operator')}, ${bytes} bytes, as of ${sayInstant(now)}.\n${ADVICE}`;
    return { value: { file: path, ...made }, words, exit: 0 };
  },
};

const ADVICE =
  'It holds names and hashes of secrets: keep it closed. Keep one in another place, and make one within 24 hours of any maintenance.';

/** In a folder the file is named after the moment. Nothing that is there is written over. */
async function fileIn(to: string, now: string): Promise<string> {
  const there = await stat(to).catch(() => null);
  if (there?.isDirectory()) return join(to, `proviso-${now.replace(/[:.]/g, '-')}.backup`);
  if (there) throw new UsageError(`--to ${to}: is there already and is not written over`);
  return to;
}
