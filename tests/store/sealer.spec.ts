import type { Client } from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startSealer, verifyRecord, type Store } from '#store';
import { bundled } from '../support/bundled.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { Program } from '../support/program.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let operator: AnOperator;
let operators = 0;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database, 20);
});

beforeEach(async () => {
  operators += 1;
  operator = await anOperator(database, store, `S${operators}`);
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

function append(note = 'x'): Promise<string> {
  return store.withOperator(
    operator.id,
    operator.person,
    async (tx) => (await tx.record.append(anEntry(operator, { payload: { note } }))).id,
  );
}

interface Sealed {
  number: number;
  id: string;
}

function sealed(of = operator): Promise<Sealed[]> {
  return withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<Sealed>(
      'select number::int, entry_id as id from record_sealed where operator_id = $1 order by number',
      [of.id],
    );
    return rows;
  });
}

async function untilSealed(count: number, of = operator): Promise<Sealed[]> {
  for (;;) {
    const rows = await sealed(of);
    if (rows.length >= count) return rows;
    await new Promise((go) => setTimeout(go, 20));
  }
}

async function withSealer<T>(work: () => Promise<T>): Promise<T> {
  const errors: unknown[] = [];
  const sealer = await startSealer(database.ownerUrl, { everyMs: 10, onError: (error) => errors.push(error) });
  try {
    return await work();
  } finally {
    await sealer.stop();
    expect(errors).toEqual([]);
  }
}

describe('numbers', () => {
  it('have no gap and no repetition with eight writers and two sealers in processes of their own', async () => {
    const program = await bundled('tests/store/sealer.program.ts');
    const other = await anOperator(database, store, 'SX');
    const sealers = [1, 2].map(() => new Program(process.execPath, [program, database.ownerUrl]));
    await Promise.all(sealers.map((sealer) => sealer.ready()));
    const write = async (n: number) => {
      const of = n % 2 === 0 ? operator : other;
      for (let i = 0; i < 60; i += 1) {
        await store
          .withOperator(of.id, of.person, async (tx) => {
            for (let times = 0; times <= i % 3; times += 1) await tx.record.append(anEntry(of));
            if (i % 5 === 0) throw new Error('given up');
          })
          .catch((error: Error) => expect(error.message).toBe('given up'));
      }
    };
    await Promise.all(Array.from({ length: 8 }, (_, n) => write(n)));
    const written = 4 * Array.from({ length: 60 }, (_, i) => (i % 5 === 0 ? 0 : (i % 3) + 1)).reduce((a, b) => a + b);
    for (const of of [operator, other]) {
      const rows = await untilSealed(written, of);
      expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: written }, (_, n) => n + 1));
      expect(new Set(rows.map(({ id }) => id)).size).toBe(written);
      expect(await verifyRecord(database.ownerUrl, of.id)).toMatchObject([
        { entries: written, waiting: 0, misfit: null },
      ]);
    }
    for (const sealer of sealers) {
      await sealer.finish();
      expect(sealer.errors).toBe('');
    }
  });

  it('start at 1 for each operator and go on after a restart of the sealer', async () => {
    const first = await append();
    await withSealer(() => untilSealed(1));
    const second = await append();
    const rows = await withSealer(() => untilSealed(2));
    expect(rows).toEqual([
      { number: 1, id: first },
      { number: 2, id: second },
    ]);
  });
});

describe('an entry', () => {
  it('is not sealed while an older transaction is still running, so that none appears behind its back', async () => {
    let running: (() => void) | undefined;
    let begun: (() => void) | undefined;
    const hasBegun = new Promise<void>((go) => (begun = go));
    const older = store.withOperator(operator.id, operator.person, async (tx) => {
      const { id } = await tx.record.append(anEntry(operator));
      begun?.();
      await new Promise<void>((go) => (running = go));
      return id;
    });
    await hasBegun;
    const younger = await append();
    const before = await withSealer(async () => {
      await new Promise((go) => setTimeout(go, 300));
      return sealed();
    });
    expect(before).toEqual([]);
    running?.();
    const first = await older;
    expect((await withSealer(() => untilSealed(2))).map(({ id }) => id)).toEqual([first, younger]);
  });

  it('written after another was done is never numbered before it, though its transaction is older', async () => {
    const begin = 'begin; select pg_current_xact_id()';
    const earlier = await withClient(database.appUrl, async (old) =>
      withClient(database.appUrl, async (middle) => {
        await old.query(begin);
        await middle.query(begin);
        const done = await append('done first');
        const because = await appendIn(old);
        await old.query('commit');
        const rows = await withSealer(async () => {
          await new Promise((go) => setTimeout(go, 200));
          return sealed();
        });
        expect(rows).toEqual([]);
        await middle.query('commit');
        return [done, because];
      }),
    );
    expect((await withSealer(() => untilSealed(2))).map(({ id }) => id)).toEqual(earlier);
  });

  it('of a transaction that was rolled back gets no number', async () => {
    await store
      .withOperator(operator.id, operator.person, async (tx) => {
        await tx.record.append(anEntry(operator));
        throw new Error('no');
      })
      .catch(() => undefined);
    const kept = await append();
    expect(await withSealer(() => untilSealed(1))).toEqual([{ number: 1, id: kept }]);
  });

  it('from another server, with a transaction number of the far future, is sealed too', async () => {
    const id = await append();
    await withClient(database.adminUrl, (client) =>
      client.query("update record_pending set written_in = '999999999999' where entry_id = $1", [id]),
    );
    expect(await withSealer(() => untilSealed(1))).toEqual([{ number: 1, id }]);
  });

  it('is read in the order of its number, from after the last one known', async () => {
    const ids = [await append(), await append(), await append()];
    await withSealer(() => untilSealed(3));
    const read = (after: number, limit: number) =>
      store.withOperator(operator.id, null, (tx) => tx.record.sealedAfter(after, limit));
    expect((await read(0, 10)).map(({ entry }) => entry.id)).toEqual(ids);
    expect((await read(1, 1)).map(({ number, entry }) => [number, entry.id])).toEqual([[2, ids[1]]]);
    expect(await read(3, 10)).toEqual([]);
  });
});

/** Appends on a given connection, in the transaction it already has open. */
async function appendIn(client: Client): Promise<string> {
  await client.query("select set_config('app.operator', $1, true)", [operator.id]);
  const { rows } = await client.query<{ id: string }>(
    `insert into record_entry (operator_id, id, what, entered_at, canonical, leaf)
     values ($1, gen_random_uuid(), 'x', now(), '{}', sha256('\\x00'::bytea || '{}')) returning id`,
    [operator.id],
  );
  return rows[0]?.id ?? '';
}
