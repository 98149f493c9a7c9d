/** Secrets of endpoints are sealed anew under the first of the keys named: all of them, again at will, and nothing else. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import { readableSecretWords } from '../../apps/cli/src/words/readable-secrets.js';
import { opened, isSealed } from '../../apps/server/src/watch/reminders/sealed-secret.js';
import { newId, openStore, type Store } from '#store';
import { anOperator, type AnOperator } from '../store/an-operator.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';

const [OLD, FRESH, OTHER] = [1, 2, 3].map((n) => Buffer.alloc(32, n)) as [Buffer, Buffer, Buffer];
const AT = '2026-01-26T10:00:00.000Z';

let database: FreshDatabase;
let store: Store;
let operators: AnOperator[];
const before = process.env['SECRET_KEYS'];

beforeAll(async () => {
  database = await freshDatabase();
  store = await openStore(database.appUrl, { connections: 4 });
  operators = [await anOperator(database, store, 'QSA'), await anOperator(database, store, 'QSB')];
  for (const of of operators) for (const n of [1, 2]) await endpoint(of, `secret ${of.id} ${n}`);
});

afterAll(async () => {
  if (before === undefined) delete process.env['SECRET_KEYS'];
  else process.env['SECRET_KEYS'] = before;
  await store.close();
  await database.drop();
});

const endpoint = ({ id, person }: AnOperator, secret: string) =>
  store.withOperator(id, person, (tx) =>
    tx.reminderAddresses.add({
      id: newId(),
      personId: person,
      kind: 'webhook',
      address: 'https://hooks.example.org/one',
      label: 'Stock room',
      secret,
      formerSecret: `${secret} before`,
      formerUntil: AT,
      createdAt: AT,
      confirmedAt: AT,
    }),
  );

async function renew(...keys: Buffer[]) {
  process.env['SECRET_KEYS'] = keys.map((key) => key.toString('base64')).join(',');
  return run(['secrets', 'renew', '--database', database.ownerUrl]);
}

/** What every secret opens to under one key. */
async function openedBy(key: Buffer): Promise<(string | null)[]> {
  const found: (string | null)[] = [];
  for (const { id } of operators) {
    const rows = await store.withOperator(id, null, (tx) => tx.reminderAddresses.list(null));
    for (const row of rows)
      for (const stored of [row.secret, row.formerSecret]) {
        found.push(stored !== null && isSealed(stored) ? opened(stored, row, [key]) : null);
      }
  }
  return found.toSorted();
}

const SECRETS = () =>
  operators.flatMap(({ id }) => [1, 2].flatMap((n) => [`secret ${id} ${n}`, `secret ${id} ${n} before`])).toSorted();

it('says at the start that secrets lie readable, and what to do', async () => {
  expect(await readableSecretWords(store, false)).toEqual([
    '8 secrets of webhooks lie readable in the database: name SECRET_KEYS, start again and run proviso secrets renew.',
  ]);
});

it('needs a key', async () => {
  const { stderr, code } = await renew();
  expect({ stderr, code }).toEqual({
    stderr: 'proviso: SECRET_KEYS is not set: it holds the keys, the new one first\n',
    code: 2,
  });
});

it('seals what lay readable, once', async () => {
  expect((await renew(OLD)).stdout).toBe('8 secrets: 8 lay readable and are sealed now.\n');
  expect(await openedBy(OLD)).toEqual(SECRETS());
  expect(await readableSecretWords(store, true)).toEqual([]);
  expect((await renew(OLD)).stdout).toBe('8 secrets: 8 under the first key already.\n');
});

it('goes on under a new key, also where it was broken off', async () => {
  const [{ id } = { id: '' }] = operators;
  const half = await store.withOperator(id, null, (tx) => tx.reminderAddresses.list(null));
  await store.withOperator(id, null, async (tx) => {
    const [one] = half;
    if (one) await tx.reminderAddresses.change(one.id, one.version, { secret: 'secret in between' });
  });
  const { stdout, code } = await renew(FRESH, OLD);
  expect({ stdout, code }).toEqual({
    stdout: '8 secrets: 7 sealed anew from key 2, 1 lay readable and is sealed now.\n',
    code: 0,
  });
  expect((await openedBy(FRESH)).filter((one) => one === null)).toEqual([]);
  expect((await openedBy(OLD)).filter((one) => one !== null)).toEqual([]);
});

it('leaves alone what no key opens, and exits 1', async () => {
  const held = await openedBy(FRESH);
  const { stdout, code } = await renew(OTHER);
  expect(code).toBe(1);
  expect(
    stdout.match(/No key that was named opens the secret of QS[AB] Stock room; name its key, too\./g),
  ).toHaveLength(8);
  expect(await openedBy(FRESH)).toEqual(held);
});
