import type { Compared, Difference } from '../../../server/src/index.js';
import type { Command } from '../command.js';
import { DATABASE } from '../options.js';
import { withDatabase } from '../database.js';
import { count } from '../words/say-time.js';

export const recordCompare: Command = {
  name: 'record compare',
  summary: 'build the state anew from the record and compare it with the tables',
  options: [DATABASE],
  examples: ['record compare'],
  exitsWithOne: 'the tables say something else than the record',
  async run(given) {
    const operators = await withDatabase(given.options.get('database'), ({ ownerUrl }) => comparedAll(ownerUrl));
    const { LEFT_OUT } = await import('../../../server/src/index.js');
    const equal = operators.every(({ differences }) => differences.length === 0);
    return {
      value: { equal, operators, leftOut: LEFT_OUT },
      words: words(operators, Object.keys(LEFT_OUT)),
      exit: equal ? 0 : 1,
    };
  },
};

async function comparedAll(ownerUrl: string): Promise<Compared[]> {
  const { ensureAppRole, openStore, recordedOperators } = await import('#store');
  const { compareRecord } = await import('../../../server/src/index.js');
  const operators = await recordedOperators(ownerUrl);
  const store = await openStore(await ensureAppRole(ownerUrl), { connections: 1 });
  const compared: Compared[] = [];
  try {
    for (const operator of operators) compared.push(await compareRecord(store, operator));
    return compared;
  } finally {
    await store.close();
  }
}

function words(operators: readonly Compared[], leftOut: readonly string[]): string {
  if (operators.length === 0) return 'The database holds no operator, and so no record.';
  const trusted = 'The record itself is checked by: proviso record verify';
  const not = `Not compared, each for a reason that --json gives: ${leftOut.join(', ')}.`;
  return [...operators.flatMap(operatorWords), not, trusted].join('\n');
}

function operatorWords({ operator, entries, rows, differences }: Compared): string[] {
  const held = `${count(rows, 'row', 'rows')} held against ${count(entries, 'entry', 'entries')} of the record`;
  if (differences.length === 0) return [`${operator}: ${held}: all say the same.`];
  return [`${operator}: ${held}: ${count(differences.length, 'difference')}.`, ...differences.map(line)];
}

function line({ table, id, column, record, stored }: Difference): string {
  const place = column === null ? '' : ` ${column}`;
  return `  ${table} ${id}${place}: the record says ${said(record)}, the table says ${said(stored)}`;
}

const said = (value: unknown): string => (value === null ? 'nothing' : JSON.stringify(value));
