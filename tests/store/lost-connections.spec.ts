import { afterAll, beforeAll, expect, it } from 'vitest';
import { startSealer, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'LA');
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

/** As a restart of the database does it: every connection but the asking one is cut. */
async function cutAll(): Promise<void> {
  await withClient(database.adminUrl, (client) =>
    client.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and pid <> pg_backend_pid()`,
    ),
  );
  await new Promise((go) => setTimeout(go, 50));
}

const append = () => store.withOperator(operator.id, operator.person, (tx) => tx.record.append(anEntry(operator)));

it('connections cut while they waited are replaced without a word', async () => {
  await Promise.all([append(), append(), append()]);
  await cutAll();
  await expect(append()).resolves.toHaveProperty('id');
});

it('a transaction cut in its middle fails, leaves nothing, and the next one works', async () => {
  const cut = store.withOperator(operator.id, operator.person, async (tx) => {
    await tx.aircraft.add({ registration: 'Q-CUT', type: 'T1' });
    await cutAll();
    await tx.aircraft.list();
  });
  await expect(cut).rejects.toThrow(/terminat|already released/);
  expect(await store.withOperator(operator.id, null, (tx) => tx.aircraft.byRegistration('Q-CUT'))).toBeNull();
});

it('a sealer goes on after its connection was cut', async () => {
  const errors: unknown[] = [];
  const sealer = await startSealer(database.ownerUrl, { everyMs: 10, onError: (error) => errors.push(error) });
  await cutAll();
  const { id } = await append();
  const number = () => store.withOperator(operator.id, null, async (tx) => (await tx.record.get(id))?.number);
  while ((await number()) === null) await new Promise((go) => setTimeout(go, 20));
  await sealer.stop();
  expect(errors.length).toBeLessThanOrEqual(1);
});

it('a read that runs when the store is closed is answered to its end', async () => {
  const closed = await openedStore(database);
  const read = closed.withOperator(operator.id, null, async (tx) => {
    for (let turn = 0; turn < 20; turn += 1) await tx.aircraft.list();
    return 'to its end';
  });
  await Promise.all([closed.close(), expect(read).resolves.toBe('to its end')]);
});

it('whether the database answers is told', async () => {
  expect(await store.isUp()).toBe(true);
});
