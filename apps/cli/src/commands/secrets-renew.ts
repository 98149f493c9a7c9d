import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE } from '../options.js';
import { secretKeysIn } from '../start-options.js';
import { UsageError } from '../usage-error.js';
import { count } from '../words/say-time.js';
import type { Resealed } from '../../../server/src/index.js';

export const secretsRenew: Command = {
  name: 'secrets renew',
  summary: 'seal every secret of a webhook under the first of SECRET_KEYS',
  options: [DATABASE],
  notes: [
    'SECRET_KEYS holds the new key first and the older ones behind it, with commas between. Start the servers with these keys, then run this beside them; once it says that nothing is under an older key, leave the older ones out. Broken off, it is run again.',
  ],
  examples: ['secrets renew'],
  exitsWithOne: 'a secret is under a key that was not named, and stays as it is',
  async run({ options }) {
    const keys = secretKeysIn(process.env);
    if (keys.length === 0) throw new UsageError('SECRET_KEYS is not set: it holds the keys, the new one first');
    const done = await withDatabase(options.get('database'), async ({ ownerUrl }) => {
      const { ensureAppRole, openStore } = await import('#store');
      const { resealAll } = await import('../../../server/src/index.js');
      const store = await openStore(await ensureAppRole(ownerUrl), { connections: 2 });
      return resealAll(store, keys, new Date().toISOString()).finally(() => store.close());
    });
    return { value: done, words: wordsOf(done), exit: done.unopened.length === 0 ? 0 : 1 };
  },
};

function wordsOf({ secrets, fromKey, fromReadable, already, unopened }: Resealed): string {
  const anew = Object.entries(fromKey).map(([key, many]) => `${many} sealed anew from key ${key}`);
  const parts = [
    ...anew,
    ...(fromReadable === 0
      ? []
      : [`${fromReadable} lay readable and ${fromReadable === 1 ? 'is' : 'are'} sealed now`]),
    ...(already === 0 ? [] : [`${already} under the first key already`]),
  ];
  return [
    secrets === 0
      ? 'No webhook has a secret.'
      : `${count(secrets, 'secret')}: ${parts.join(', ') || 'none renewed'}.`,
    ...unopened.map((which) => `No key that was named opens the secret of ${which}; name its key, too.`),
  ].join('\n');
}
