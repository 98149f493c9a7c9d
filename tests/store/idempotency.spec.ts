import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { anEntry, anOperator, openedStore, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;
const response = { status: 201, headers: { etag: '"2"' }, body: '{"b":1,"a":2}' };

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database, 20);
  operator = await anOperator(database, store, 'IA');
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

function request(key: string, fingerprint: string, work: () => Promise<void> = async () => undefined) {
  return store.withOperator(operator.id, operator.person, async (tx) => {
    const claim = await tx.idempotency.claim(key, fingerprint);
    if (claim.state !== 'new') return claim;
    await tx.record.append(anEntry(operator, { what: `test.${key}` }));
    await work();
    await tx.idempotency.keep(key, fingerprint, response);
    return claim;
  });
}

async function timesDone(key: string): Promise<number> {
  const rows = await store.withOperator(operator.id, null, (tx) =>
    tx.query('select from record_entry where what = $1', [`test.${key}`]),
  );
  return rows.length;
}

it('a request sent again is answered with the very bytes of the first answer and not done again', async () => {
  expect(await request('a', 'f')).toEqual({ state: 'new' });
  expect(await request('a', 'f')).toEqual({ state: 'done', response });
  expect(await timesDone('a')).toBe(1);
});

it('another request under the same key is told apart', async () => {
  await request('b', 'f');
  expect(await request('b', 'g')).toEqual({ state: 'other-request' });
});

it('the same request while the first is under way does not wait for it', async () => {
  let second: unknown;
  await request('c', 'f', async () => {
    second = await request('c', 'f');
  });
  expect(second).toEqual({ state: 'under-way' });
});

it('of many at once one is done', async () => {
  const states = await Promise.all(Array.from({ length: 12 }, () => request('d', 'f').then(({ state }) => state)));
  expect(states.filter((state) => state === 'new')).toHaveLength(1);
  expect(await timesDone('d')).toBe(1);
});

it('a request that failed may be sent again under its key', async () => {
  await request('e', 'f', () => Promise.reject(new Error('no'))).catch(() => undefined);
  expect(await request('e', 'f')).toEqual({ state: 'new' });
});

it('keys of two people do not meet', async () => {
  await request('g', 'f');
  const other = await store.withOperator(operator.id, null, async (tx) => {
    const { id } = await tx.people.add({ name: 'Another' });
    await tx.people.join({ personId: id, roles: ['engineer'], validFrom: '2026-01-01T00:00:00Z' });
    return id;
  });
  const claim = await store.withOperator(operator.id, other, (tx) => tx.idempotency.claim('g', 'x'));
  expect(claim).toEqual({ state: 'new' });
});

it('old keys are forgotten, young ones kept', async () => {
  await request('h', 'f');
  const forget = (before: string) => store.withOperator(operator.id, null, (tx) => tx.idempotency.forget(before));
  expect(await forget('2020-01-01T00:00:00Z')).toBe(0);
  expect(await forget('2999-01-01T00:00:00Z')).toBeGreaterThan(0);
  expect(await request('h', 'f')).toEqual({ state: 'new' });
});
