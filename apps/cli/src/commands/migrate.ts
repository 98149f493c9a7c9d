import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { filesOf, readGiven } from '../options.js';

export const migrate: Command = {
  name: 'migrate',
  takes: '[--database URL]',
  summary: "bring the database to this program's schema",
  async run(args) {
    const given = readGiven(args, ['database']);
    filesOf(given);
    return withDatabase(given.options.get('database'), async ({ ownerUrl, name }) => {
      const { ensureAppRole, migrate: bringUp } = await import('#store');
      await ensureAppRole(ownerUrl);
      const ran = await bringUp(ownerUrl);
      const words = ran.length === 0 ? 'nothing to do' : `ran ${ran.join(', ')}`;
      return { value: { database: name, ran }, words: `${name}: ${words}.`, exit: 0 as const };
    });
  },
};
