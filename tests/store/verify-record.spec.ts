import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startSealer, verifyRecord, type RecordFinding, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, type AnOperator } from './an-operator.js';

const entries = 40;
let database: FreshDatabase;
let store: Store;
let operator: AnOperator;
let neighbour: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'RA');
  neighbour = await anOperator(database, store, 'RB');
  const sealer = await startSealer(database.ownerUrl, { everyMs: 1 });
  for (let n = 0; n < entries; n += 1) {
    for (const of of [operator, neighbour]) {
      await store.withOperator(of.id, of.person, (tx) =>
        tx.record.append(anEntry(of, { payload: { n }, aircraft: { id: of.aircraft, registration: 'Q-RA' } })),
      );
      await untilSealed(of, n + 1);
    }
  }
  await sealer.stop();
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

/** One entry at a time, so that there is a head for each. */
async function untilSealed(of: AnOperator, size: number): Promise<void> {
  const head = () => store.withOperator(of.id, null, (tx) => tx.record.head());
  while ((await head())?.size !== size) await new Promise((go) => setTimeout(go, 2));
}

/**
 * What checking finds after a change made behind every guard: by the superuser, with triggers and references off. The
 * change is put back afterwards.
 */
async function foundAfter(sql: string, values: unknown[] = []): Promise<RecordFinding> {
  const tables = ['record_entry', 'record_sealed', 'tree_head', 'record_pending'];
  return withClient(database.adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    for (const table of tables) await client.query(`create temp table kept_${table} as select * from ${table}`);
    await client.query('alter table record_entry drop constraint record_entry_leaf');
    try {
      const { rowCount } = [await client.query(sql, values)].flat().at(-1) as { rowCount: number };
      expect(rowCount, 'the change itself').toBeGreaterThan(0);
      const [finding] = await verifyRecord(database.ownerUrl, 'RA');
      const [other] = await verifyRecord(database.ownerUrl, 'RB');
      expect(other?.misfit).toBeNull();
      if (!finding) throw new Error('no finding');
      return finding;
    } finally {
      for (const table of tables) {
        await client.query(`delete from ${table}`);
        await client.query(`insert into ${table} overriding system value select * from kept_${table}`);
      }
      await client.query(
        "alter table record_entry add constraint record_entry_leaf check (leaf = sha256('\\x00'::bytea || canonical))",
      );
    }
  });
}

const entryNumbered = `record_entry.operator_id = s.operator_id and record_entry.id = s.entry_id and s.operator_id = '`;

it('fits while nobody touched it, with the newest head and the count', async () => {
  const [finding] = await verifyRecord(database.ownerUrl, 'RA');
  const head = await store.withOperator(operator.id, null, (tx) => tx.record.head());
  expect(finding).toEqual({
    operatorId: operator.id,
    operatorCode: 'RA',
    entries,
    head,
    waiting: 0,
    lastBackupAt: null,
    unsavedSince: expect.any(String),
    misfit: null,
  });
});

it('one altered byte, anywhere in any entry, is found and its entry named', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 1, max: entries }),
      fc.nat(),
      fc.integer({ min: 1, max: 255 }),
      async (number, at, by) => {
        const finding = await foundAfter(
          `update record_entry set canonical = set_byte(canonical, $2::int % length(canonical),
           get_byte(canonical, $2::int % length(canonical)) # $3::int)
         from record_sealed s where ${entryNumbered}${operator.id}' and s.number = $1`,
          [number, at, by],
        );
        expect(finding.misfit).toMatchObject({ number });
      },
    ),
    { numRuns: 25 },
  );
});

describe('what was altered is found, however the traces were covered', () => {
  const here = () => `operator_id = '${operator.id}'`;

  it('bytes altered together with the leaf beside them', async () => {
    const finding = await foundAfter(
      `update record_entry set canonical = replaced, leaf = sha256('\\x00'::bytea || replaced)
       from (select s.*, convert_to(replace(convert_from(e.canonical, 'UTF8'), 'test.noted', 'test.nothing'), 'UTF8') as replaced
             from record_sealed s join record_entry e on e.id = s.entry_id) s
       where ${entryNumbered}${operator.id}' and s.number = 7`,
    );
    expect(finding.misfit).toMatchObject({ number: 7 });
  });

  it('bytes altered together with both leaves: the heads still tell', async () => {
    const finding = await foundAfter(
      `with changed as (
         update record_entry set canonical = replaced, leaf = sha256('\\x00'::bytea || replaced)
         from (select s.*, convert_to(replace(convert_from(e.canonical, 'UTF8'), '"n":6', '"n":9'), 'UTF8') as replaced
               from record_sealed s join record_entry e on e.id = s.entry_id) s
         where ${entryNumbered}${operator.id}' and s.number = 7 returning record_entry.id, record_entry.leaf)
       update record_sealed set leaf = changed.leaf from changed where entry_id = changed.id`,
    );
    expect(finding.misfit).toMatchObject({ number: 7, kind: 'rewritten' });
  });

  it.each([
    ['a sealed leaf altered', () => `update record_sealed set leaf = sha256('x') where number = 3 and ${here()}`, 3],
    ['a number taken out', () => `delete from record_sealed where number = 5 and ${here()}`, 5],
    ['the last number taken out', () => `delete from record_sealed where number = ${entries} and ${here()}`, entries],
    [
      'two numbers exchanged',
      () => `update record_sealed set number = number + 1000 where number in (10, 11) and ${here()};
        update record_sealed set number = 1021 - number where number > 1000 and ${here()}`,
      10,
    ],
    [
      'an entry taken out',
      () => `delete from record_entry using record_sealed s where ${entryNumbered}${operator.id}' and s.number = 9`,
      9,
    ],
    ['the newest head taken out', () => `delete from tree_head where size = ${entries} and ${here()}`, entries],
    ['a head replaced', () => `update tree_head set root = repeat('0', 64) where size = 12 and ${here()}`, 12],
    [
      'a column that says other than the bytes',
      () =>
        `update record_entry set what = 'x' from record_sealed s where ${entryNumbered}${operator.id}' and s.number = 4`,
      4,
    ],
    [
      'another person',
      () =>
        `update record_entry set who = repeat('0', 64) from record_sealed s where ${entryNumbered}${operator.id}' and s.number = 4`,
      4,
    ],
    [
      'an entry hung on no aircraft',
      () =>
        `update record_entry set aircraft_id = null from record_sealed s where ${entryNumbered}${operator.id}' and s.number = 4`,
      4,
    ],
    [
      'another time of entering',
      () =>
        `update record_entry set entered_at = entered_at + interval '1 ms' from record_sealed s where ${entryNumbered}${operator.id}' and s.number = 4`,
      4,
    ],
  ])('%s', async (_, change, number) => {
    expect((await foundAfter(change())).misfit).toMatchObject({ number });
  });

  it('an entry added without a number', async () => {
    const finding = await foundAfter(
      `insert into record_entry (operator_id, id, what, entered_at, canonical, leaf)
       values ($1, gen_random_uuid(), 'x', now(), '{}', sha256('\\x00'::bytea || '{}'))`,
      [operator.id],
    );
    expect(finding.misfit).toMatchObject({ number: null, kind: 'lost' });
  });
});

it('a record of several pages is read to its end, and an alteration on a later page found', async () => {
  const long = await anOperator(database, store, 'RC');
  const many = 2_100;
  await store.withOperator(long.id, long.person, async (tx) => {
    for (let n = 0; n < many; n += 1) await tx.record.append(anEntry(long, { payload: { n } }));
  });
  const sealer = await startSealer(database.ownerUrl, { everyMs: 1 });
  await untilSealed(long, many);
  await sealer.stop();
  expect(await verifyRecord(database.ownerUrl, 'RC')).toMatchObject([{ entries: many, misfit: null }]);
  await withClient(database.adminUrl, async (client) => {
    await client.query("set session_replication_role = 'replica'");
    const alter = `update record_sealed set leaf = sha256(leaf) where number = 1500 and operator_id = $1`;
    await client.query(alter, [long.id]);
  });
  expect(await verifyRecord(database.ownerUrl, 'RC')).toMatchObject([{ entries: 1000, misfit: { number: 1500 } }]);
});

it('an entry not yet sealed is counted as waiting and is no misfit', async () => {
  await store.withOperator(neighbour.id, neighbour.person, (tx) => tx.record.append(anEntry(neighbour)));
  const [finding] = await verifyRecord(database.ownerUrl, neighbour.id);
  expect(finding).toMatchObject({ entries, waiting: 1, misfit: null });
});

it('an operator that is not there is said to be missing', async () => {
  await expect(verifyRecord(database.ownerUrl, 'ZZ')).rejects.toThrow('There is no operator "ZZ".');
});
