import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { asRefused, OPERATOR_OPTIONS } from '../operator-options.js';
import { DATABASE, needed } from '../options.js';
import { firstSecretWords } from '../words/first-secret-words.js';

export const operatorAdministrator: Command = {
  name: 'operator administrator',
  summary: 'let one more administrator in, or give another first secret to one who never used it',
  options: [
    OPERATOR_OPTIONS.code,
    OPERATOR_OPTIONS.signIn,
    { ...OPERATOR_OPTIONS.administrator, about: `${OPERATOR_OPTIONS.administrator.about}; for a new account` },
    OPERATOR_OPTIONS.licence,
    DATABASE,
  ],
  notes: [
    'For a first secret that was lost or is over, and for a house none of whose administrators can sign in any more. Nobody who has chosen a secret loses it. It stands in the record of the operator.',
  ],
  examples: [
    'operator administrator --code QXA --sign-in ada',
    'operator administrator --code QXA --sign-in bo --administrator "Bo Lindt"',
  ],
  async run(given) {
    const { options } = given;
    const [code, signInName] = [needed(given, 'code'), needed(given, 'sign-in')];
    const asked = { name: options.get('administrator') ?? null, signInName, licence: options.get('licence') ?? null };
    const done = await withDatabase(options.get('database'), async ({ ownerUrl }) => {
      const { ensureAppRole, openStore } = await import('#store');
      const { letAdministratorIn } = await import('../../../server/src/index.js');
      const store = await openStore(await ensureAppRole(ownerUrl), { connections: 3 });
      const now = new Date().toISOString();
      return asRefused(() => letAdministratorIn(ownerUrl, store, code, asked, now)).finally(() => store.close());
    });
    const { operator, isNew, secret, until } = done;
    const who = asked.name ?? signInName;
    const said = isNew
      ? `${who} administers ${operator} from now on.`
      : `Another first secret for ${signInName} of ${operator}.`;
    const value = { code, isNew, signInName, firstSecret: secret, firstUntil: until };
    return { value, words: [said, ...firstSecretWords(who, signInName, secret, until)].join('\n'), exit: 0 };
  },
};
