import type { Command } from '../command.js';
import { withDatabase } from '../database.js';
import { DATABASE, needed } from '../options.js';
import { UsageError } from '../usage-error.js';
import { leftWords, type LeftView } from '../words/left.js';

export const left: Command = {
  name: 'left',
  summary: 'what is left altered on an aircraft, and what it belongs to',
  options: [{ name: 'aircraft', value: 'MARK', about: 'its registration', must: true }, DATABASE],
  examples: ['left --aircraft Q-KEA'],
  async run(given) {
    const mark = needed(given, 'aircraft');
    const views = await withDatabase(given.options.get('database'), ({ ownerUrl }) => registersOf(ownerUrl, mark));
    if (views.length === 0) throw new UsageError(`no operator in this database has an aircraft ${mark}`);
    return { value: views, words: views.map(leftWords).join('\n\n'), exit: 0 as const };
  },
};

/** Two operators may each have an aircraft of that mark; each register is printed with its operator. */
async function registersOf(ownerUrl: string, mark: string): Promise<LeftView[]> {
  const { ensureAppRole, listOperators, openStore } = await import('#store');
  const { registerView } = await import('../../../server/src/index.js');
  const operators = await listOperators(ownerUrl);
  const store = await openStore(await ensureAppRole(ownerUrl));
  const at = new Date().toISOString();
  const views: LeftView[] = [];
  try {
    for (const { id, code } of operators) {
      await store.withOperator(id, null, async (tx) => {
        const aircraft = await tx.aircraft.byRegistration(mark);
        if (aircraft) views.push({ operator: code, ...(await registerView(tx, aircraft, at)) });
      });
    }
    return views;
  } finally {
    await store.close();
  }
}
