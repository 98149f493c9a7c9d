import type { KeyObject } from 'node:crypto';
import type { ErasedAgain, ErasureFile } from '#store';
import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { ERASED, erasedWords, erasuresIn, ERASURES_KEY } from '../erasures.js';
import { DATABASE, needed } from '../options.js';
import { publicKeyIn } from '../signed-file.js';
import { UsageError } from '../usage-error.js';

export const eraseAgainCommand: Command = {
  name: 'erase again',
  summary: 'erase again whoever is on a list of erasures and stands in the database, as after a restore',
  options: [{ ...ERASED, must: true }, ERASURES_KEY, DATABASE],
  examples: ['erase again --erased heads'],
  async run(given) {
    const path = needed(given, 'erased');
    const key = given.options.get('key');
    const keys = key === undefined ? [] : [await publicKeyIn(key)];
    const files = await erasuresIn(path);
    const held = await withDatabase(given.options.get('database'), ({ ownerUrl }) =>
      heldAgainst(ownerUrl, files, keys),
    );
    return { value: { erasures: held }, words: held.map(erasedWords).join('\n'), exit: 0 };
  },
};

async function heldAgainst(ownerUrl: string, files: ErasureFile[], keys: KeyObject[]): Promise<ErasedAgain[]> {
  const { eraseAgain, ErasuresRefused, migrate } = await import('#store');
  await migrate(ownerUrl);
  return eraseAgain(ownerUrl, files, { keys, now: new Date().toISOString() }).catch((error: unknown) => {
    if (error instanceof ErasuresRefused) throw new UsageError(`--erased ${error.message}; nobody was erased`);
    throw error;
  });
}
