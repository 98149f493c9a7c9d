import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anOperator, openedStore, type AnOperator } from './an-operator.js';
import { fillEveryTable } from './fill-every-table.js';

const keptForEver = [
  'record_entry',
  'record_sealed',
  'tree_head',
  'defect_act',
  'register_act',
  'signature',
  'judgement',
  'verdict',
  'fact',
  'movement_delivery',
  'leg',
  'engine_count',
  'manual_revision',
  'card_confirmation',
];
const versioned = [
  'operator',
  'membership',
  'authorisation',
  'aircraft',
  'flight',
  'defect',
  'left_item',
  'extension',
  'calendar_feed',
  'movement_message',
  'movement_tray',
  'zone_difference',
];
const missingGrant = '42501';
const changeRefused = 'PV002';
const staleVersion = 'PV001';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'GA');
  await fillEveryTable(database, store, operator);
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

/** The database's answer to a statement: its error code, or how many rows it changed. Nothing of it remains. */
async function answer(url: string, sql: string): Promise<string | number | null> {
  return withClient(url, async (client) => {
    await client.query('begin');
    await client.query("select set_config('app.operator', $1, true)", [operator.id]);
    try {
      return (await client.query(sql)).rowCount;
    } catch (error) {
      return (error as { code: string }).code;
    } finally {
      await client.query('rollback');
    }
  });
}

describe.each(keptForEver)('what stands in %s', (table) => {
  const column = table === 'tree_head' ? 'root' : table === 'record_sealed' ? 'leaf' : 'id';
  const key = table === 'record_sealed' ? 'leaf' : table === 'defect_act' ? 'kind' : column;

  it('is refused to the server by missing grants: update, delete, truncate', async () => {
    expect(await answer(database.appUrl, `update ${table} set ${key} = ${key}`)).toBe(missingGrant);
    expect(await answer(database.appUrl, `delete from ${table}`)).toBe(missingGrant);
    expect(await answer(database.appUrl, `truncate ${table} cascade`)).toBe(missingGrant);
  });

  it.each(['owner', 'superuser'])('is refused by triggers even to the %s', async (who) => {
    const url = who === 'owner' ? database.ownerUrl : database.adminUrl;
    expect(await answer(url, `update ${table} set ${key} = ${key}`)).toBe(changeRefused);
    expect(await answer(url, `delete from ${table}`)).toBe(changeRefused);
    expect(await answer(url, `truncate ${table} cascade`)).toBe(changeRefused);
  });
});

describe.each(versioned)('the version of %s', (table) => {
  it('goes up by one or not at all', async () => {
    for (const url of [database.ownerUrl, database.adminUrl]) {
      for (const next of ['version', 'version + 2', 'version - 1', '1'])
        expect(await answer(url, `update ${table} set version = ${next}`), next).toBe(staleVersion);
      expect(await answer(url, `update ${table} set version = version + 1`)).toBe(1);
    }
  });
});

describe('the server', () => {
  it.each(['record_sealed', 'tree_head', 'tree_frontier', 'record_pending'])('cannot write %s', async (table) => {
    expect(await answer(database.appUrl, `insert into ${table} select * from ${table} where false`)).toBe(
      missingGrant,
    );
  });

  it('cannot choose the order of an entry', async () => {
    const entry = `insert into record_entry (operator_id, id, seq, what, entered_at, canonical, leaf)
      values ('${operator.id}', gen_random_uuid(), 1, 'x', now(), '{}', sha256('\\x00'::bytea || '{}'))`;
    expect(await answer(database.appUrl, entry)).toBe('428C9');
  });

  it('cannot record a leaf that is not that of the bytes', async () => {
    const entry = `insert into record_entry (operator_id, id, what, entered_at, canonical, leaf)
      values ('${operator.id}', gen_random_uuid(), 'x', now(), '{}', sha256('{}'))`;
    expect(await answer(database.appUrl, entry)).toBe('23514');
  });

  it('cannot make an operator, a table, a function or a role', async () => {
    const code = "insert into operator (id, code, name, base) values (gen_random_uuid(), 'XX', 'X', 'UTC')";
    expect(await answer(database.appUrl, code)).toBe(missingGrant);
    for (const thing of ['table t (a int)', "function f() returns int language sql as 'select 1'", 'role r'])
      expect(await answer(database.appUrl, `create ${thing}`), thing).toBe(missingGrant);
  });

  it('cannot switch a trigger or row-level security off', async () => {
    for (const change of ['disable trigger all', 'no force row level security', 'disable row level security'])
      expect(await answer(database.appUrl, `alter table record_entry ${change}`), change).toBe(missingGrant);
    expect(await answer(database.appUrl, "set session_replication_role = 'replica'")).toBe(missingGrant);
  });

  it('changes of a MEL revision nothing but whether it is in force', async () => {
    expect(await answer(database.appUrl, 'update mel_revision set in_force = true')).toBe(1);
    expect(await answer(database.appUrl, "update mel_revision set content = '{}'")).toBe(missingGrant);
  });
});

describe('the guards', () => {
  it('stand on every table that holds rows of an operator, forced', async () => {
    const open = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ relname: string }>(
        `select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace
         where n.nspname = 'public' and c.relkind = 'r' and not (c.relrowsecurity and c.relforcerowsecurity) order by 1`,
      );
      return rows.map(({ relname }) => relname);
    });
    // A person and what proves one belong to no operator; `migration` is TypeORM's own list.
    expect(open).toEqual([
      'challenge',
      'credential',
      'failed_attempt',
      'migration',
      'passkey',
      'person',
      'session',
      'sign_in_attempt',
      'sign_on_identity',
    ]);
  });

  it('start every key of an operator with the operator', async () => {
    const rows = await withClient(database.adminUrl, async (client) => {
      const found = await client.query<{ name: string }>(
        `select c.conrelid::regclass || '.' || c.conname as name
         from pg_constraint c join pg_attribute a on a.attrelid = c.conrelid and a.attname = 'operator_id'
         where c.contype in ('p', 'u', 'f') and c.connamespace = 'public'::regnamespace and c.conkey[1] <> a.attnum
         order by 1`,
      );
      return found.rows.map(({ name }) => name);
    });
    // The code of an invitation is looked for before anybody knows whose it is.
    expect(rows).toEqual([
      'invitation.invitation_code',
      'membership.membership_person',
      'record_pending.record_pending_pkey',
      'session.session_id',
      'session.session_person',
      'session.session_pkey',
    ]);
  });

  it('look past row-level security in these functions and no other', async () => {
    const names = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ proname: string }>(
        `select proname from pg_proc where prosecdef and pronamespace = 'public'::regnamespace order by 1`,
      );
      return rows.map(({ proname }) => proname);
    });
    expect(names).toEqual([
      'await_sealing',
      'binding_of_person',
      'count_attempt',
      'credential_named',
      'credential_of',
      'entries_waiting',
      'erase_and_list',
      'erase_person',
      'erased_people',
      'keep_challenge',
      'memberships_of',
      'operators_served',
      'passkey_named',
      'person_signed_on',
      'recorded_operators',
      'session_of_token',
      'take_back_attempts',
      'take_challenge',
    ]);
  });
});
