import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StaleVersion, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, someInstant, type AnOperator } from './an-operator.js';
import { fillEveryTable } from './fill-every-table.js';

let database: FreshDatabase;
let store: Store;
let north: AnOperator;
let south: AnOperator;

/** Every table that holds rows of an operator, and how it says whose they are. */
let owned: { table: string; owner: string }[];

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  north = await anOperator(database, store, 'NA');
  south = await anOperator(database, store, 'SA');
  for (const operator of [north, south]) await fillEveryTable(database, store, operator);
  owned = await withClient(database.adminUrl, async (client) => {
    const found = await client.query<{ table: string }>(
      `select table_name as table from information_schema.columns
       where table_schema = 'public' and column_name = 'operator_id' and table_name <> 'session' order by 1`,
    );
    return [...found.rows.map(({ table }) => ({ table, owner: 'operator_id' })), { table: 'operator', owner: 'id' }];
  });
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

/** As the given role, with the operator set as a request would, and no word about the operator in the question. */
async function seenAs(url: string, operator: string | null, sql: string): Promise<Record<string, unknown>[]> {
  return withClient(url, async (client) => {
    await client.query('begin');
    if (operator !== null) await client.query("select set_config('app.operator', $1, true)", [operator]);
    const { rows } = await client.query<Record<string, unknown>>(sql);
    await client.query('rollback');
    return rows;
  });
}

/** What the server's role may not read at all counts as nothing seen. */
async function ownersSeen(url: string, operator: string | null, table: string, owner: string): Promise<unknown[]> {
  try {
    const rows = await seenAs(url, operator, `select distinct ${owner} as owner from ${table}`);
    return rows.map((row) => row.owner);
  } catch (error) {
    expect((error as { code: string }).code).toBe('42501');
    return [];
  }
}

describe('with the filter on the operator removed', () => {
  it('every table of an operator was filled for both, so that there is something to be hidden', async () => {
    expect(owned.length).toBeGreaterThanOrEqual(22);
    for (const { table, owner } of owned) {
      const rows = await seenAs(database.adminUrl, null, `select distinct ${owner} as owner from ${table}`);
      expect(rows.map((row) => row.owner).sort(), table).toEqual([north.id, south.id].sort());
    }
  });

  it('the server sees its own rows and none of another operator', async () => {
    let read = 0;
    for (const { table, owner } of owned) {
      const seen = await ownersSeen(database.appUrl, north.id, table, owner);
      read += seen.length;
      expect(
        seen.filter((id) => id !== north.id),
        table,
      ).toEqual([]);
    }
    expect(read).toBe(owned.length - 2);
  });

  it('the server sees nothing where no operator is set', async () => {
    for (const { table, owner } of owned)
      expect(await ownersSeen(database.appUrl, null, table, owner), table).toEqual([]);
  });

  it('the server sees nothing where the operator is set to an empty text', async () => {
    expect(await ownersSeen(database.appUrl, '', 'aircraft', 'operator_id')).toEqual([]);
  });

  it('even the owner is bound, but for the tables that sign-in and sealer look through', async () => {
    const open: string[] = [];
    for (const { table, owner } of owned) {
      const seen = await ownersSeen(database.ownerUrl, north.id, table, owner);
      if (seen.includes(south.id)) open.push(table);
    }
    expect(open.sort()).toEqual(['membership', 'operator', 'record_pending']);
  });

  it('a person is seen where a membership is, and by that person alone elsewhere', async () => {
    const people = 'select id from person';
    expect(await seenAs(database.appUrl, north.id, people)).toEqual([{ id: north.person }]);
    expect(await seenAs(database.appUrl, null, people)).toEqual([]);
    const seen = await withClient(database.appUrl, async (client) => {
      await client.query("select set_config('app.person', $1, false)", [south.person]);
      return (await client.query(people)).rows as unknown[];
    });
    expect(seen).toEqual([{ id: south.person }]);
  });

  it('no salt is ever read by the server', async () => {
    await expect(seenAs(database.appUrl, north.id, 'select salt from person')).rejects.toMatchObject({
      code: '42501',
    });
  });

  it('credentials and sessions are seen by their person alone', async () => {
    await store.withOperator(north.id, null, (tx) => tx.people.giveCredential(north.person, 'nora', 'hash'));
    const hash = 'e'.repeat(64);
    await store.identity.begin({
      tokenHash: hash,
      personId: north.person,
      createdAt: someInstant,
      expiresAt: someInstant,
    });
    for (const table of ['credential', 'session']) {
      expect(await seenAs(database.appUrl, north.id, `select * from ${table}`), table).toEqual([]);
      expect(await seenAs(database.appUrl, south.id, `select * from ${table}`), table).toEqual([]);
    }
  });
});

describe('a row of another operator', () => {
  it('cannot be inserted', async () => {
    const insert = `insert into station values ('${south.id}', 'QQX', 'X', 'UTC')`;
    await expect(seenAs(database.appUrl, north.id, insert)).rejects.toMatchObject({ code: '42501' });
  });

  it('cannot be changed, whoever knows its key', async () => {
    const change = store.withOperator(north.id, north.person, (tx) =>
      tx.aircraft.change(south.aircraft, 1, { registration: 'Q-XXX' }),
    );
    await expect(change).rejects.toBeInstanceOf(StaleVersion);
    expect(
      await seenAs(
        database.appUrl,
        north.id,
        "update aircraft set version = 2, registration = 'Q' returning operator_id",
      ),
    ).toEqual([{ operator_id: north.id }]);
  });

  it('cannot be given away', async () => {
    const give = `update aircraft set version = version + 1, operator_id = '${south.id}'`;
    await expect(seenAs(database.appUrl, north.id, give)).rejects.toMatchObject({ code: '42501' });
  });

  it('cannot be pointed at', async () => {
    const point = store.withOperator(north.id, north.person, (tx) =>
      tx.facts.add({
        aircraftId: south.aircraft,
        key: 'k',
        value: 1,
        observedAt: someInstant,
        enteredAt: someInstant,
      }),
    );
    await expect(point).rejects.toMatchObject({ driverError: { code: '23503' } });
  });

  it('cannot be recorded on', async () => {
    const append = store.withOperator(north.id, north.person, (tx) =>
      tx.record.append(anEntry(north, { aircraft: { id: south.aircraft, registration: 'Q-SA' } })),
    );
    await expect(append).rejects.toMatchObject({ driverError: { code: '23503' } });
  });
});

describe('a connection given back to the pool', () => {
  const settings =
    "select current_setting('app.operator', true) as operator, current_setting('app.person', true) as person";

  it.each(['commit', 'rollback'])('knows neither operator nor person after a %s', async (end) => {
    const one = await openedStore(database, 1);
    const work = one.withOperator(north.id, north.person, async (tx) => {
      expect(await tx.query(settings)).toEqual([{ operator: north.id, person: north.person }]);
      if (end === 'rollback') throw new Error('changed my mind');
    });
    await work.catch(() => undefined);
    await one.withOperator(south.id, null, async (tx) => {
      expect(await tx.query(settings)).toEqual([{ operator: south.id, person: '' }]);
    });
    const source = (one as unknown as { source: { query(sql: string): Promise<unknown[]> } }).source;
    expect(await source.query(settings)).toEqual([{ operator: '', person: '' }]);
    expect(await source.query('select * from aircraft')).toEqual([]);
    await one.close();
  });
});

it('an operator that is no key never reaches the database', async () => {
  for (const id of ["' or true --", '', north.id.toUpperCase().slice(1)]) {
    await expect(store.withOperator(id, null, async () => 1)).rejects.toThrow(/is not a key/);
  }
});

it('the application role owns nothing and nothing is lifted for it', async () => {
  const client = new Client({ connectionString: database.adminUrl });
  await client.connect();
  const role = await client.query(
    "select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb from pg_roles where rolname = 'proviso_app'",
  );
  expect(role.rows).toEqual([{ rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false }]);
  const things = await client.query(
    "select count(*)::int as n from pg_class c join pg_roles r on r.oid = c.relowner where r.rolname = 'proviso_app'",
  );
  expect(things.rows).toEqual([{ n: 0 }]);
  const member = await client.query(
    "select 1 from pg_auth_members m join pg_roles r on r.oid = m.member where r.rolname = 'proviso_app'",
  );
  expect(member.rowCount).toBe(0);
  await client.end();
});
