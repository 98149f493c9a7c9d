import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { OPERATOR_OPTIONS, asRefused } from '../operator-options.js';
import { DATABASE, type Given, needed } from '../options.js';
import { firstSecretWords } from '../words/first-secret-words.js';

export const operatorAdd: Command = {
  name: 'operator add',
  summary: 'make an operator and its first administrator, also beside a running server',
  options: [
    OPERATOR_OPTIONS.code,
    { name: 'name', value: 'NAME', about: 'its name, as in its certificate', must: true },
    {
      name: 'base',
      value: 'UTC|ZONE',
      about: 'whose days it counts: UTC or a zone such as Europe/Paris',
      must: true,
    },
    {
      name: 'preset',
      value: 'easa|faa|tcca-2006|tcca-2022|custom',
      about: 'the rules its settings begin with; easa for the EU',
      must: true,
    },
    { name: 'approval', value: 'NUMBER', about: 'number of its own approval, for an organisation of its name' },
    { ...OPERATOR_OPTIONS.administrator, must: true },
    OPERATOR_OPTIONS.signIn,
    OPERATOR_OPTIONS.licence,
    DATABASE,
  ],
  notes: [
    'All of it is made, or nothing. The first secret is shown this once, is good for 24 hours, and opens one thing: the choice of a secret of their own. Settings are changed afterwards on the page Settings, each with its reason.',
  ],
  examples: [
    'operator add --code QXA --name "Example Air" --base Europe/Paris --preset easa --approval QX-AOC-7 --administrator "Ada Brenn" --sign-in ada',
  ],
  async run(given) {
    const asked = opening(given);
    const opened = await withDatabase(given.options.get('database'), ({ ownerUrl }) => made(ownerUrl, asked), {
      mayMake: true,
    });
    const { operator, secret, until } = opened;
    const { signInName } = asked.administrator;
    const words = [
      `${operator.code} is made: ${operator.name}, days of ${operator.base}, preset ${operator.preset}.`,
      ...firstSecretWords(asked.administrator.name, signInName, secret, until),
      `What comes next: proviso operator list --code ${operator.code}`,
    ].join('\n');
    const value = { operator, administrator: { signInName, firstSecret: secret, firstUntil: until } };
    return { value, words, exit: 0 };
  },
};

function opening(given: Given) {
  const { options } = given;
  return {
    code: needed(given, 'code'),
    name: needed(given, 'name'),
    base: needed(given, 'base'),
    preset: needed(given, 'preset'),
    approval: options.get('approval') ?? null,
    administrator: {
      name: needed(given, 'administrator'),
      signInName: needed(given, 'sign-in'),
      licence: options.get('licence') ?? null,
    },
  };
}

/** Waits for a start that is loading the demo, and keeps it from loading it beside this operator. */
async function made(ownerUrl: string, asked: ReturnType<typeof opening>) {
  const { ensureAppRole, migrate, oneAtATime } = await import('#store');
  const { openOperator } = await import('../../../server/src/index.js');
  await ensureAppRole(ownerUrl);
  await migrate(ownerUrl);
  const now = new Date().toISOString();
  return asRefused(() => oneAtATime(ownerUrl, 'operators', () => openOperator(ownerUrl, asked, now)));
}
