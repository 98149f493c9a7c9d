import type { DataSource } from 'typeorm';
import { dataSource } from './data-source.js';
import { dropJobs, setUpJobs } from './jobs/set-up-jobs.js';
import { tellAllRows } from './record/tell-rows.js';
import { inTransactionOf } from './store.js';
import { migrations } from './migrations/index.js';

/** Any number that nothing else in the database locks on. */
const migrating = 7_110_001;

/**
 * Brings the database to this program's schema. Several at once wait for each other, and the later ones find nothing
 * to do.
 * @param ownerUrl signs in as the role that owns the tables
 * @param options.upTo how many of all migrations, for a developer who wants to stop on the way
 * @returns the names of the migrations that ran
 */
export async function migrate(ownerUrl: string, { upTo = migrations.length } = {}): Promise<string[]> {
  return locked(
    ownerUrl,
    async (source) => {
      const ran = await source.runMigrations();
      if (upTo === migrations.length) {
        await setUpJobs(ownerUrl);
        await tellOlderRows(source);
      }
      return ran.map(({ name }) => name);
    },
    migrations.slice(0, upTo),
  );
}

/** Of a database that is older than the entries which tell rows. */
async function tellOlderRows(source: DataSource): Promise<void> {
  for (const { id } of await source.query<{ id: string }[]>('select id from recorded_operators()')) {
    await source.transaction((manager) => inTransactionOf(manager, id, tellAllRows));
  }
}

/** Undoes the newest migrations: all of them, or as many as asked. For tests and for developers. */
export async function unmigrate(ownerUrl: string, steps = Number.POSITIVE_INFINITY): Promise<void> {
  await locked(ownerUrl, async (source) => {
    if (steps === Number.POSITIVE_INFINITY) await dropJobs(ownerUrl);
    const [row] = await source.query<{ count: string }[]>('select count(*) from migration');
    for (let left = Math.min(steps, Number(row?.count)); left > 0; left -= 1) await source.undoLastMigration();
  });
}

/**
 * What would have to be done to the database to make it as the row descriptions say; empty when they agree. Nothing is
 * done.
 */
export async function schemaDrift(ownerUrl: string): Promise<string[]> {
  return locked(ownerUrl, async (source) => {
    const { upQueries } = await source.driver.createSchemaBuilder().log();
    return upQueries.map(({ query }) => query);
  });
}

/** The lock is held by a connection of its own, for as long as that connection lives. */
async function locked<T>(url: string, work: (source: DataSource) => Promise<T>, known = migrations): Promise<T> {
  const source = await dataSource(url, { connections: 3 }).setOptions({ migrations: known }).initialize();
  const holder = source.createQueryRunner();
  try {
    await holder.query('select pg_advisory_lock($1)', [migrating]);
    return await work(source);
  } finally {
    await holder.query('select pg_advisory_unlock($1)', [migrating]).catch(() => undefined);
    await holder.release();
    await source.destroy();
  }
}
