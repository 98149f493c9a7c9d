/** Questions that go out together: in the order in which they were asked, prepared once, and none after the end. */
import type { EventEmitter } from 'node:events';
import type { DataSource } from 'typeorm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createOperator, listOperators, lockAircraft, StaleVersion, type Store, type Tx } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { anOperator, openedStore, writeUp, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

const withTx = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
  store.withOperator(operator.id, operator.person, work);

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database, 4);
  operator = await anOperator(database, store, 'TA');
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

it('what is asked together with a lock is read once the lock is held', async () => {
  const aircraft = { id: operator.aircraft, registration: 'Q-TAA' };
  const { id } = await withTx((tx) => writeUp(tx, operator, aircraft));
  let waiting: Promise<unknown> = Promise.resolve();
  await withTx(async (tx) => {
    await lockAircraft(tx, operator.aircraft);
    waiting = withTx((other) =>
      Promise.all([
        other.aircraft.lockOfDefect(id),
        other.defects.openBeside(id),
        other.operators.current(),
        other.aircraft.get(operator.aircraft),
      ]),
    );
    await new Promise((go) => setTimeout(go, 200));
    await tx.defects.change(id, 1, { state: 'changed while the other one waited' });
    await tx.aircraft.change(operator.aircraft, 1, { serial: 77 });
  });
  const [locked, open, , read] = (await waiting) as [object, object[], object, object];
  expect(locked).toMatchObject({ version: 2, serial: 77 });
  expect(open).toMatchObject([{ id, version: 2, state: 'changed while the other one waited' }]);
  expect(read).toMatchObject({ version: 2, serial: 77 });
});

it('what was remembered before a lock is asked anew after it', async () => {
  await withTx(async (tx) => {
    expect(await tx.register.ofAircraft(operator.aircraft)).toEqual([]);
    await withTx((other) =>
      other.register.add({
        aircraftId: operator.aircraft,
        defectId: null,
        kind: 'pin',
        place: 'nose gear',
        tag: 'P-1',
        undo: 'take it out',
        under: null,
        ownedBy: null,
        ownerKind: null,
        ownerUntil: null,
        fittedBy: operator.person,
        fittedAt: '2026-01-15T03:00:00.000Z',
      }),
    );
    await lockAircraft(tx, operator.aircraft);
    expect(await tx.register.ofAircraft(operator.aircraft)).toHaveLength(1);
  });
});

it('whoever runs on after the end of a transaction asks nothing more on its connection', async () => {
  let late: Tx | undefined;
  const broken = withTx((tx) => {
    late = tx;
    return Promise.reject(new Error('given up'));
  });
  await expect(broken).rejects.toThrow('given up');
  await expect(late?.aircraft.change(operator.aircraft, 2, { serial: 1 })).rejects.toThrow('has ended');
});

it('what is sent without waiting stands with the transaction, and fails it as what failed first', async () => {
  const serial = () => withTx(async (tx) => (await tx.aircraft.get(operator.aircraft))?.serial);
  await withTx((tx) => {
    tx.send(tx.aircraft.change(operator.aircraft, 2, { serial: 78 }));
    return Promise.resolve();
  });
  expect(await serial()).toBe(78);
  const stale = withTx((tx) => {
    tx.send(tx.aircraft.change(operator.aircraft, 3, { serial: 79 }));
    tx.send(tx.aircraft.change(operator.aircraft, 3, { serial: 80 }));
    return Promise.reject(new Error('because of it'));
  });
  await expect(stale).rejects.toThrow(StaleVersion);
  expect(await serial()).toBe(78);
});

it('whoever passes over a failed question is not told that anything was kept', async () => {
  const passedOver = withTx((tx) => tx.query('select 1 / $1::int', [0]).catch(() => undefined));
  await expect(passedOver).rejects.toThrow('nothing of the transaction was kept');
});

it('the acts beside a defect are found by their defects, however many there are', async () => {
  const { id } = await withTx((tx) => writeUp(tx, operator, { id: operator.aircraft, registration: 'Q-TAA' }));
  const found = await withTx((tx) => tx.acts.ofOpenBeside(id));
  const all = await withTx(async (tx) => tx.acts.ofAll((await tx.defects.openBeside(id)).map((row) => row.id)));
  expect(found).toEqual(all);
  expect(found.length).toBeGreaterThan(1);
});

it('a question is prepared once on a connection, and asked again by its name', async () => {
  const one = await openedStore(database, 1);
  const prepared = () =>
    one.withOperator(operator.id, operator.person, async (tx) => {
      await Promise.all([tx.aircraft.get(operator.aircraft), tx.aircraft.get(operator.aircraft)]);
      return tx.query<{ statement: string; asked: number }>(
        `select statement, (generic_plans + custom_plans)::int as asked from pg_prepared_statements
         where statement like $1`,
        ['%from aircraft where%'],
      );
    });
  expect(await prepared()).toMatchObject([{ asked: 2 }]);
  expect(await prepared()).toMatchObject([{ asked: 4 }]);
  await one.close();
});

it('an operator is made whole or not at all, also where what was sent without waiting fails', async () => {
  const asked = { code: 'TB', name: 'Operator TB', invented: true, base: 'UTC', settings: {} };
  const made = createOperator(database.ownerUrl, asked, (tx) => {
    const append = tx.record.append.bind(tx.record);
    tx.record.append = async (entry) => {
      const appended = await append(entry);
      tx.send(tx.query('select 1 / 0'));
      return appended;
    };
    return Promise.resolve();
  });
  await expect(made).rejects.toThrow('division by zero');
  expect((await listOperators(database.ownerUrl)).map(({ code }) => code)).toEqual(['TA']);
});

/** The driver's connection, which says each message that it gets. */
async function toldOn(one: Store): Promise<EventEmitter> {
  const source = (one as unknown as { source: DataSource }).source;
  const runner = source.createQueryRunner();
  const { connection } = (await runner.connect()) as { connection: EventEmitter };
  await runner.release();
  return connection;
}

it('the columns of a question are described once on a connection, and its rows read the same each time', async () => {
  const one = await openedStore(database, 1);
  const ofKinds = `select $1::int as n, $2::timestamptz as at, $3::jsonb as held, $4::text[] as texts, $5::bytea as bytes,
    null::text as nothing`;
  const values = [7, '2026-01-26T10:00:00Z', { a: [1, null] }, ['x', 'y"z'], Buffer.from('00ff', 'hex')];
  const row = {
    n: 7,
    at: new Date('2026-01-26T10:00:00Z'),
    held: { a: [1, null] },
    texts: ['x', 'y"z'],
    bytes: Buffer.from('00ff', 'hex'),
    nothing: null,
  };
  let described = 0;
  (await toldOn(one)).on('rowDescription', () => (described += 1));
  const ask = (tx: Tx) => tx.query(ofKinds, values);
  const inOne = <T>(work: (tx: Tx) => Promise<T>) => one.withOperator(operator.id, operator.person, work);
  expect(await inOne(ask)).toEqual([row]);
  const before = described;
  expect(await inOne((tx) => Promise.all([ask(tx), ask(tx)]))).toEqual([[row], [row]]);
  expect(before).toBeGreaterThan(0);
  expect(described).toBe(before);
  await one.close();
});

it('a question that failed is asked again by its name, and what it changed is counted each time', async () => {
  const one = await openedStore(database, 1);
  const share = (by: number) =>
    one.withOperator(operator.id, operator.person, (tx) => tx.query<{ n: number }>('select 6 / $1::int as n', [by]));
  for (const by of [0, 2, 0, 3]) {
    if (by === 0) await expect(share(by)).rejects.toMatchObject({ driverError: { code: '22012' } });
    else expect(await share(by)).toEqual([{ n: 6 / by }]);
  }
  const change = (seen: number) =>
    one.withOperator(operator.id, operator.person, (tx) =>
      tx.aircraft.change(operator.aircraft, seen, { serial: 5 }),
    );
  const [{ version } = { version: 0 }] = await one.withOperator(operator.id, operator.person, (tx) =>
    tx.query<{ version: number }>('select version from aircraft where id = $1', [operator.aircraft]),
  );
  await change(version);
  await change(version + 1);
  await expect(change(version)).rejects.toThrow(StaleVersion);
  await one.close();
});
