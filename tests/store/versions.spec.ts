import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lockAircraft, StaleVersion, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { anOperator, openedStore, writeUp, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database, 20);
  operator = await anOperator(database, store, 'VA');
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

describe('a change of a row', () => {
  it('is lost by nobody: of many made from the same version one stands and the others are told', async () => {
    const id = await store.withOperator(operator.id, null, (tx) =>
      tx.aircraft.add({ registration: 'Q-VAB', type: 'T1' }),
    );
    const outcomes = await Promise.allSettled(
      Array.from({ length: 10 }, (_, serial) =>
        store.withOperator(operator.id, null, (tx) => tx.aircraft.change(id, 1, { serial })),
      ),
    );
    const refused = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason as unknown] : []));
    expect(refused).toHaveLength(9);
    for (const reason of refused) expect(reason).toBeInstanceOf(StaleVersion);
    const winner = outcomes.findIndex(({ status }) => status === 'fulfilled');
    const stands = await store.withOperator(operator.id, null, (tx) => tx.aircraft.get(id));
    expect(stands).toMatchObject({ serial: winner, version: 2 });
  });

  it('names what was stale', async () => {
    const change = store.withOperator(operator.id, null, (tx) =>
      tx.aircraft.change(operator.aircraft, 7, { serial: 2 }),
    );
    await expect(change).rejects.toMatchObject({ noun: 'aircraft', id: operator.aircraft, seen: 7 });
  });

  it('of the settings goes by version too', async () => {
    await store.withOperator(operator.id, null, (tx) => tx.operators.changeSettings(1, { delayMinutes: 15 }));
    const again = store.withOperator(operator.id, null, (tx) => tx.operators.changeSettings(1, { delayMinutes: 5 }));
    await expect(again).rejects.toBeInstanceOf(StaleVersion);
    const { settings, version } = await store.withOperator(operator.id, null, (tx) => tx.operators.current());
    expect({ settings, version }).toEqual({ settings: { delayMinutes: 15 }, version: 2 });
  });
});

describe('an aircraft that is held', () => {
  it('numbers its defects without a gap under many writers, some of whom give up', async () => {
    const work = Array.from({ length: 24 }, (_, n) =>
      store.withOperator(operator.id, operator.person, async (tx) => {
        const aircraft = await lockAircraft(tx, operator.aircraft);
        if (!aircraft) throw new Error('no aircraft');
        const { number } = await writeUp(tx, operator, aircraft);
        if (n % 3 === 0) throw new Error('given up');
        return number;
      }),
    );
    const given = (await Promise.allSettled(work)).flatMap((end) => (end.status === 'fulfilled' ? [end.value] : []));
    expect(given.sort((a, b) => a - b)).toEqual(Array.from({ length: 16 }, (_, n) => n + 1));
  });

  it('is seen by the second as the first left it', async () => {
    const versions = await Promise.all(
      Array.from({ length: 8 }, () =>
        store.withOperator(operator.id, operator.person, async (tx) => {
          const aircraft = await lockAircraft(tx, operator.aircraft);
          if (!aircraft) throw new Error('no aircraft');
          return tx.aircraft.touch(aircraft);
        }),
      ),
    );
    expect(new Set(versions).size).toBe(8);
  });

  it('of another operator is not there to be held', async () => {
    const other = await anOperator(database, store, 'VB');
    expect(await store.withOperator(operator.id, null, (tx) => lockAircraft(tx, other.aircraft))).toBeNull();
  });
});

it('a transaction that throws leaves nothing behind', async () => {
  const work = store.withOperator(operator.id, null, async (tx) => {
    await tx.aircraft.add({ registration: 'Q-GONE', type: 'T1' });
    throw new Error('no');
  });
  await expect(work).rejects.toThrow('no');
  expect(await store.withOperator(operator.id, null, (tx) => tx.aircraft.byRegistration('Q-GONE'))).toBeNull();
});
