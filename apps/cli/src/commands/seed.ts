import type { Command } from '../command.js';
import { DATABASE } from '../options.js';
import { withDatabase } from '../database.js';
import { demoOnEmpty } from '../demo.js';
import { demoWords } from '../words/demo.js';

export const seed: Command = {
  name: 'seed',
  summary: 'load the invented demo operators into an empty database',
  options: [DATABASE],
  notes: ['Its sign-ins are printed in the repository: keep it off a server that others can reach.'],
  examples: ['seed'],
  async run(given) {
    return withDatabase(given.options.get('database'), async ({ ownerUrl, name }) => {
      const { ensureAppRole, migrate, openStore } = await import('#store');
      const appUrl = await ensureAppRole(ownerUrl);
      await migrate(ownerUrl);
      const store = await openStore(appUrl, { connections: 2 });
      try {
        const demo = await demoOnEmpty(ownerUrl, store, process.versions.tz ?? 'unknown');
        const words = demo ? demoWords(demo) : 'The database holds operators of its own; nothing was loaded.';
        return { value: { database: name, demo }, words: `${name}: ${words}`, exit: 0 as const };
      } finally {
        await store.close();
      }
    });
  },
};
