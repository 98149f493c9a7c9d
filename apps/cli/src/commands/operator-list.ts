import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE } from '../options.js';
import { UsageError } from '../usage-error.js';
import { count } from '../words/say-time.js';
import { sentence } from '../words/wrapped.js';
import type { OperatorThere } from '../../../server/src/index.js';

export const operatorList: Command = {
  name: 'operator list',
  summary: 'the operators of this server, and what each still needs before its first aircraft',
  options: [{ name: 'code', value: 'CODE', about: 'this operator alone' }, DATABASE],
  examples: ['operator list'],
  async run({ options }) {
    const code = options.get('code');
    const operators = await withDatabase(options.get('database'), ({ ownerUrl }) => operatorsIn(ownerUrl, code));
    if (code !== undefined && operators.length === 0)
      throw new UsageError(`--code ${code} is no operator of this server`);
    const words = operators.length === 0 ? NOBODY : operators.map(wordsOf).join('\n\n');
    return { value: operators, words, exit: 0 };
  },
};

const NOBODY = 'There is no operator yet. `proviso help operator add` says how one is made.';

async function operatorsIn(ownerUrl: string, code: string | undefined): Promise<OperatorThere[]> {
  const { ensureAppRole, openStore } = await import('#store');
  const { operatorsThere } = await import('../../../server/src/index.js');
  const store = await openStore(await ensureAppRole(ownerUrl), { connections: 2 });
  try {
    return await operatorsThere(ownerUrl, store, code ?? null, new Date().toISOString());
  } finally {
    await store.close();
  }
}

function wordsOf({ code, name, base, preset, invented, aircraft, people, steps }: OperatorThere): string {
  const missing = steps.filter(({ done }) => !done);
  return [
    ...sentence(
      `${code}: ${name}${invented ? ' (invented, never for flight)' : ''}, days of ${base}, preset ${preset}; ${aircraft} aircraft, ${count(people, 'person', 'people')}.`,
      '',
      '  ',
    ),
    ...(missing.length === 0 ? ['  Nothing is missing.'] : ['  Still to do:']),
    ...missing.flatMap(({ what, by, page }) =>
      sentence(`${what} (${by.join(' or ')}, page ${page})`, '  - ', '    '),
    ),
  ].join('\n');
}
