/** Everything out of one database and into another, and nothing of a file that is not whole. */
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeBackup, openStore, restoreBackup, startSealer, unmigrate, verifyRecord, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, someInstant, type AnOperator } from './an-operator.js';

const folder = mkdtempSync(join(tmpdir(), 'proviso-backup-'));
const path = join(folder, 'one.backup');
let database: FreshDatabase;
let store: Store;
let operator: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'BA');
  const other = await anOperator(database, store, 'BB');
  const sealer = await startSealer(database.ownerUrl, { everyMs: 5 });
  await store.withOperator(operator.id, operator.person, async (tx) => {
    await tx.people.giveCredential(operator.person, 'bea', 'hash');
    await tx.facts.add({
      aircraftId: operator.aircraft,
      key: 'flight.icing',
      value: 'a,"b"\\c (Žurić)\n',
      observedAt: someInstant,
      enteredAt: someInstant,
    });
  });
  for (const of of [operator, other, operator]) {
    const aircraft = { id: of.aircraft, registration: 'Q-BA' };
    await store.withOperator(of.id, of.person, (tx) => tx.record.append(anEntry(of, { aircraft })));
  }
  const sealed = async () => (await verifyRecord(database.ownerUrl)).every(({ waiting }) => waiting === 0);
  while (!(await sealed())) await new Promise((go) => setTimeout(go, 10));
  await sealer.stop();
  await store.withOperator(operator.id, operator.person, (tx) => tx.record.append(anEntry(operator)));
  await makeBackup(database.ownerUrl, path, someInstant);
});

afterAll(async () => {
  await store.close();
  await database.drop();
  rmSync(folder, { recursive: true, force: true });
});

/** Every row of every table as text, but what a backup itself writes down. */
async function everything(of: FreshDatabase): Promise<Record<string, string[]>> {
  return withClient(of.adminUrl, async (client) => {
    await client.query("set timezone = 'UTC'");
    const { rows: tables } = await client.query<{ name: string }>(
      `select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
         and relname <> 'migration'`,
    );
    const found: Record<string, string[]> = {};
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(`select t::text as row from ${name} t order by 1`);
      found[name] = rows.map(({ row }) => row);
    }
    return found;
  });
}

async function emptied(work: (empty: FreshDatabase) => Promise<void>): Promise<void> {
  const empty = await freshDatabase();
  try {
    await work(empty);
  } finally {
    await empty.drop();
  }
}

describe('a backup', () => {
  it('brings back every row of every table, and the records fit and go on', async () => {
    await emptied(async (empty) => {
      const restored = await restoreBackup(empty.ownerUrl, path);
      expect(restored.records).toMatchObject([
        { operatorCode: 'BA', entries: 3, waiting: 1, misfit: null },
        { operatorCode: 'BB', entries: 1, waiting: 0, misfit: null },
      ]);
      const [before, after] = [await everything(database), await everything(empty)];
      // The backup was recorded once it was made, so it is not in itself.
      for (const name of ['record_entry', 'record_pending']) {
        expect(
          before[name]?.filter((row) => !row.includes('backup.made') && !after[name]?.includes(row)).length,
        ).toBe(name === 'record_pending' ? 2 : 0);
        delete before[name];
        delete after[name];
      }
      expect(after).toEqual(before);
      const again = await openStore(empty.appUrl, { connections: 2 });
      const sealer = await startSealer(empty.ownerUrl, { everyMs: 5 });
      await again.withOperator(operator.id, operator.person, (tx) => tx.record.append(anEntry(operator)));
      const size = async () => (await again.withOperator(operator.id, null, (tx) => tx.record.head()))?.size ?? 0;
      while ((await size()) < 5) await new Promise((go) => setTimeout(go, 10));
      await sealer.stop();
      await again.close();
      expect((await verifyRecord(empty.appUrl))[0]).toMatchObject({ entries: 5, waiting: 0, misfit: null });
    });
  });

  it('is put into a database without any table as well', async () => {
    await emptied(async (empty) => {
      await unmigrate(empty.ownerUrl);
      expect((await restoreBackup(empty.ownerUrl, path)).records).toHaveLength(2);
    });
  });

  it('is for its owner alone to read, is not written over, and is recorded for every operator', async () => {
    expect(statSync(path).mode & 0o777).toBe(0o600);
    const made = await store.withOperator(operator.id, null, (tx) => tx.record.lastOf('backup.made'));
    expect(made?.entry.times.enteredAt).toBe(someInstant);
    expect(made?.entry.who).toBeNull();
  });

  it('is refused where anything is there already', async () => {
    await expect(restoreBackup(database.ownerUrl, path)).rejects.toThrow('the database is not empty');
  });
});

const DAMAGE = /it (was altered|ends too early)|something stands after its end/;

/** What a compressed file holds; null where it is none. */
function unpacked(bytes: Buffer): string | null {
  try {
    return gunzipSync(bytes).toString('latin1');
  } catch {
    return null;
  }
}

describe('a file that is not whole', () => {
  it('is refused before anything is touched, wherever a byte of it differs and wherever it ends', async () => {
    const bytes = readFileSync(path);
    const whole = unpacked(bytes);
    const broken = join(folder, 'broken.backup');
    await emptied(async (empty) => {
      await fc.assert(
        fc.asyncProperty(
          fc.nat(bytes.length - 1),
          fc.integer({ min: 1, max: 255 }),
          fc.boolean(),
          async (at, by, cut) => {
            // Bytes 4 to 9 of the head of the compression say when and by what; they hold nothing of the backup.
            fc.pre(cut || at < 3 || at > 9);
            const other = cut ? bytes.subarray(0, at) : Buffer.from(bytes);
            if (!cut) other[at] = (other[at] ?? 0) ^ by;
            // Bits that fill up the last byte of the compression say nothing either.
            fc.pre(unpacked(other) !== whole);
            writeFileSync(broken, other);
            await expect(restoreBackup(empty.ownerUrl, broken)).rejects.toThrow(DAMAGE);
          },
        ),
        { numRuns: 30 },
      );
      expect((await everything(empty))['operator']).toEqual([]);
    });
  });

  it('leaves nothing behind when it is whole and its record was rewritten', async () => {
    const lines = gunzipSync(readFileSync(path)).toString('utf8').split('\n').slice(0, -2);
    const altered = lines.map((line) => line.replace(/(\\\\\\\\x7b22[0-9a-f]{40})/, (hex) => `${hex.slice(0, -1)}f`));
    const { createHash } = await import('node:crypto');
    const text = altered.map((line) => `${line}\n`).join('');
    const rows = altered.filter((line) => line.startsWith('{"row"')).length;
    const end = { rows, sha256: createHash('sha256').update(text).digest('hex') };
    const forged = join(folder, 'forged.backup');
    writeFileSync(forged, gzipSync(`${text}${JSON.stringify({ end })}\n`));
    expect(text).not.toBe(lines.map((line) => `${line}\n`).join(''));
    await emptied(async (empty) => {
      await expect(restoreBackup(empty.ownerUrl, forged)).rejects.toThrow(/record_entry_leaf|does not fit/);
      expect((await everything(empty))['operator']).toEqual([]);
      expect((await restoreBackup(empty.ownerUrl, path)).records).toHaveLength(2);
    });
  });
});
