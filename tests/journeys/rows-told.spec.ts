/** Every table of the schema is held against the record, or left out for a reason; whatever is altered in one is named. */
import type { Client } from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { migrate, type Store, toldTables } from '#store';
import { type Compared, compareRecord, LEFT_OUT, REBUILT } from '../../apps/server/src/index.js';
import { anOperator, type AnOperator, openedStore } from '../store/an-operator.js';
import { fillEveryTable } from '../store/fill-every-table.js';
import { type FreshDatabase, freshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';

interface Column {
  table: string;
  column: string;
  type: string;
}

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database, 2);
  operator = await anOperator(database, store, 'TA');
  await migrate(database.ownerUrl);
  await fillEveryTable(database, store, operator);
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

const told = toldTables.map(({ table }) => table.options.name);

/** Only of the tables that are told row by row: what the others hold here is invented. */
async function differences(): Promise<Compared['differences']> {
  const compared = await compareRecord(store, { id: operator.id, code: 'TA' });
  return compared.differences.filter(({ table }) => told.includes(table));
}

function behindEveryGuard<T>(work: (client: Client) => Promise<T>): Promise<T> {
  return withClient(database.adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    return work(client);
  });
}

it('each table is told, rebuilt or left out with a reason, and none twice', async () => {
  const tables = await withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ name: string }>(
      "select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'",
    );
    return rows.map(({ name }) => name);
  });
  expect([...told, ...REBUILT, ...Object.keys(LEFT_OUT)].toSorted()).toEqual(tables.toSorted());
  expect(Object.values(LEFT_OUT).every((because) => because.length > 5)).toBe(true);
});

it('says the same before anything is altered, of a database that is older than the telling too', async () => {
  expect(await differences()).toEqual([]);
});

it('names no person by id, and holds no address', async () => {
  const text = await withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ text: string }>(
      "select string_agg(convert_from(canonical, 'UTF8'), '') as text from record_entry where what = 'rows.told'",
    );
    return rows[0]?.text ?? '';
  });
  expect(text).toContain(operator.reference);
  for (const personal of [operator.person, 'Person of TA', 'L-TA', '.invalid', 'telephone']) {
    expect(text).not.toContain(personal);
  }
});

/** Another value of the same type. */
const OTHER: Record<string, string> = {
  text: `coalesce(?, '') || 'x'`,
  uuid: 'gen_random_uuid()',
  'timestamp with time zone': `coalesce(?, '2020-01-01') + interval '1 day'`,
  date: `coalesce(?, '2020-01-01') + 1`,
  integer: 'coalesce(?, 0) + 1',
  bigint: 'coalesce(?, 0) + 1',
  boolean: 'not ?',
  ARRAY: `array_append(coalesce(?, '{}'), 'x')`,
  jsonb: `'{"altered": true}'`,
};

async function columnsTold(): Promise<Column[]> {
  const columns = await withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<Column>(
      `select table_name as table, column_name as column, data_type as type from information_schema.columns
       where table_schema = 'public' and table_name = any($1) and is_generated = 'NEVER'`,
      [told],
    );
    return rows;
  });
  const snake = (name: string): string => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  return columns.filter(({ table, column }) => {
    const one = toldTables.find((other) => other.table.options.name === table);
    const key = snake(one?.key ?? '');
    return column !== key && one?.without.every((left) => snake(left) !== column);
  });
}

/** All columns at once; one whose other value the database itself refuses is left as it was. @returns those altered */
async function alterAll(client: Client, columns: readonly Column[]): Promise<string[]> {
  const altered: string[] = [];
  for (const { table, column, type } of columns) {
    const other = (OTHER[type] ?? '').replace('?', column);
    await client.query('savepoint before');
    try {
      await client.query(`update ${table} set ${column} = ${other} where operator_id = $1`, [operator.id]);
      altered.push(column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase()));
    } catch (error) {
      if ((error as { code?: string }).code !== '23514') throw error;
      await client.query('rollback to savepoint before');
    }
  }
  return altered;
}

it('an altered value is named, in whatever column of whatever table', async () => {
  const columns = await columnsTold();
  let tried = 0;
  for (const table of told) {
    if (table === 'operator') continue;
    await behindEveryGuard(async (client) => {
      await client.query('begin');
      await client.query(`create temp table kept as select * from ${table}`);
      const own = columns.filter((one) => one.table === table);
      const altered = await alterAll(client, own);
      await client.query('commit');
      const found = await differences();
      await client.query(`delete from ${table}`);
      await client.query(`insert into ${table} select * from kept`);
      const named = new Set(found.filter((one) => one.table === table).map((one) => one.column?.split('.')[0]));
      expect([table, altered.filter((column) => !named.has(column))]).toEqual([table, []]);
      tried += altered.length;
    });
  }
  expect(tried).toBeGreaterThan(120);
}, 300_000);

it('altered settings of the operator are named', async () => {
  const found = await behindEveryGuard(async (client) => {
    const set = (value: string) => client.query('update operator set settings = $1', [value]);
    await set('{"retentionLog": 1}');
    const seen = await differences();
    await set('{}');
    return seen;
  });
  expect(found).toMatchObject([{ table: 'operator', column: 'settings.retentionLog', record: null, stored: 1 }]);
});

it('a row taken out is named, of whatever table', async () => {
  for (const table of told) {
    if (table === 'operator') continue;
    const found = await behindEveryGuard(async (client) => {
      await client.query(`create temp table kept as select * from ${table}`);
      await client.query(`delete from ${table} where operator_id = $1`, [operator.id]);
      try {
        return await differences();
      } finally {
        await client.query(`insert into ${table} select * from kept where operator_id = $1`, [operator.id]);
        await client.query('drop table kept');
      }
    });
    expect(found, table).toContainEqual(expect.objectContaining({ table, column: null, stored: null }));
  }
}, 300_000);

it('a row put in beside the program is named', async () => {
  const found = await behindEveryGuard(async (client) => {
    await client.query(`insert into station (operator_id, code, name, zone) values ($1, 'QQZ', 'Nowhere', 'UTC')`, [
      operator.id,
    ]);
    const seen = await differences();
    await client.query("delete from station where code = 'QQZ'");
    return seen;
  });
  expect(found).toEqual([{ table: 'station', id: 'QQZ', column: null, record: null, stored: 'is there' }]);
});

it('what is changed afterwards is told as it then stands', async () => {
  await store.withOperator(operator.id, null, async (tx) => {
    const { version } = await tx.operators.current();
    await tx.operators.changeSettings(version, { retentionLog: 40 });
  });
  expect(await differences()).toEqual([]);
});
