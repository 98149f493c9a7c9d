import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate, migrations, schemaDrift, unmigrate } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';

let database: FreshDatabase;

beforeEach(async () => {
  database = await freshDatabase();
});

afterEach(() => database.drop());

/** Everything the schema holds, as the database's own catalogue describes it. */
async function schema(): Promise<string[]> {
  return withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ line: string }>(`
      select 'column ' || table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable || ' ' ||
        coalesce(column_default, '') as line from information_schema.columns where table_schema = 'public'
      union all select 'constraint ' || conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid)
        from pg_constraint where connamespace = 'public'::regnamespace
      union all select 'index ' || indexdef from pg_indexes where schemaname = 'public'
      union all select 'policy ' || tablename || ' ' || policyname || ' ' || cmd || ' ' || coalesce(qual, '') || ' ' ||
        coalesce(with_check, '') from pg_policies
      union all select 'trigger ' || pg_get_triggerdef(oid) from pg_trigger where not tgisinternal
      union all select 'function ' || pg_get_functiondef(oid) from pg_proc where pronamespace = 'public'::regnamespace
      union all select 'grant ' || relname || ' ' || coalesce(relacl::text, '') from pg_class
        where relnamespace = 'public'::regnamespace and relkind = 'r'
      order by 1`);
    return rows.map(({ line }) => line);
  });
}

describe('the migrations', () => {
  it('go up, all the way down and up again, to the same schema', async () => {
    const before = await schema();
    expect(before.length).toBeGreaterThan(300);
    await unmigrate(database.ownerUrl);
    expect((await schema()).filter((line) => !line.includes('migration'))).toEqual([]);
    expect(await migrate(database.ownerUrl)).toHaveLength(migrations.length);
    expect(await schema()).toEqual(before);
  });

  it('go down one by one, each undoing what it did', async () => {
    await unmigrate(database.ownerUrl);
    const after: string[][] = [await schema()];
    for (const n of migrations.keys()) {
      expect(await migrate(database.ownerUrl, { upTo: n + 1 })).toHaveLength(1);
      after.push(await schema());
    }
    for (const expected of after.toReversed().slice(1)) {
      await unmigrate(database.ownerUrl, 1);
      expect(await schema()).toEqual(expected);
    }
  });

  it('run once when three migrate at once', async () => {
    await unmigrate(database.ownerUrl);
    const ran = await Promise.all([1, 2, 3].map(() => migrate(database.ownerUrl)));
    expect(ran.map((names) => names.length).sort((a, b) => a - b)).toEqual([0, 0, migrations.length]);
  });

  it('find nothing to do on a database that is up to date', async () => {
    expect(await migrate(database.ownerUrl)).toEqual([]);
  });

  it('are in the order of their times', () => {
    const times = migrations.map(({ name }) => Number(name.slice(-13)));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(new Set(times).size).toBe(times.length);
  });
});

describe('the row descriptions', () => {
  it('say what the migrations made, without a difference', async () => {
    expect(await schemaDrift(database.ownerUrl)).toEqual([]);
  });

  it.each([
    ['a column that is missing', 'alter table aircraft drop column serial'],
    ['a column too many', 'alter table aircraft add column colour text'],
    ['a column of another type', 'alter table flight alter flight_minutes type bigint'],
    ['a column that may be empty', 'alter table station alter zone drop not null'],
    ['another default', "alter table flight alter state set default 'flown'"],
    ['an instant of another precision', 'alter table flight alter off_block_at type timestamptz(6)'],
    ['a reference that is missing', 'alter table fact drop constraint fact_flight'],
    ['an index that is missing', 'drop index defect_open'],
    ['a rule that is missing', 'alter table flight drop constraint flight_state'],
    ['a uniqueness that is missing', 'alter table defect drop constraint defect_number'],
  ])('would show %s', async (_, change) => {
    await withClient(database.adminUrl, (client) => client.query(change));
    expect(await schemaDrift(database.ownerUrl)).not.toEqual([]);
  });
});
