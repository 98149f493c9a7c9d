/** Heads of the record as they leave the house, and what somebody outside can show with them. */
import { createPublicKey } from 'node:crypto';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkProof, isHeadSignedBy, type HeadFile } from '#record';
import {
  ERASURES_ENDING,
  headKeyIn,
  startHeadExport,
  startSealer,
  verifyRecord,
  type HeadExport,
  type Store,
} from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anEntry, anOperator, openedStore, type AnOperator } from './an-operator.js';

const now = () => '2026-03-01T09:00:00.000Z';
const hours = 3_600_000;
const folder = mkdtempSync(join(tmpdir(), 'proviso-heads-'));
const key = headKeyIn(join(folder, 'key.pem'));
let database: FreshDatabase;
let store: Store;
let operator: AnOperator;
let neighbour: AnOperator;

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  operator = await anOperator(database, store, 'HA');
  neighbour = await anOperator(database, store, 'HB');
});

afterAll(async () => {
  await store.close();
  await database.drop();
  rmSync(folder, { recursive: true, force: true });
});

/** Writes entries and waits until they are sealed. */
async function grow(of: AnOperator, by: number): Promise<number> {
  const sealer = await startSealer(database.ownerUrl, { everyMs: 5 });
  const before = await sizeOf(of);
  for (let n = 0; n < by; n += 1) {
    const aircraft = { id: of.aircraft, registration: 'Q-HA' };
    await store.withOperator(of.id, of.person, (tx) => tx.record.append(anEntry(of, { aircraft, payload: { n } })));
  }
  while ((await sizeOf(of)) < before + by) await new Promise((go) => setTimeout(go, 5));
  await sealer.stop();
  return before + by;
}

const sizeOf = (of: AnOperator) => store.withOperator(of.id, null, async (tx) => (await tx.record.head())?.size ?? 0);
const signedOf = (of: AnOperator) => store.withOperator(of.id, null, (tx) => tx.proofs.signedHeads());

function exporter(to: string): Promise<HeadExport> {
  return startHeadExport(database.ownerUrl, {
    key,
    folder: to,
    everyMs: hours,
    now,
    onError: (error) => {
      throw error;
    },
  });
}

describe('the key', () => {
  it('is made once, readable for its owner alone, and read again as the same one', () => {
    const path = join(folder, 'made', 'key.pem');
    const made = headKeyIn(path);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(headKeyIn(path).publicHex).toBe(made.publicHex);
    expect(createPublicKey(made.publicPem).asymmetricKeyType).toBe('ed25519');
  });

  it('is refused where others may read it, and where the file holds something else', () => {
    const path = join(folder, 'open.pem');
    headKeyIn(path);
    chmodSync(path, 0o640);
    expect(() => headKeyIn(path)).toThrow(/may be read by others \(mode 0640\)/);
    const other = join(folder, 'other.pem');
    writeFileSync(other, 'no key', { mode: 0o600 });
    expect(() => headKeyIn(other)).toThrow(/holds no private Ed25519 key/);
  });
});

describe('signed heads', () => {
  it('are signed for each operator, written out, and not again while nothing grew', async () => {
    const size = await grow(operator, 3);
    await grow(neighbour, 2);
    const to = join(folder, 'heads');
    const heads = await exporter(to);
    await heads.signNow();
    await heads.signNow();
    await heads.stop();
    const files = readdirSync(to).filter((name) => name.endsWith('.json') && !name.endsWith(ERASURES_ENDING));
    expect(files.toSorted()).toEqual(['HA-000000000003.json', 'HB-000000000002.json']);
    const file = JSON.parse(readFileSync(join(to, 'HA-000000000003.json'), 'utf8')) as HeadFile;
    const head = await store.withOperator(operator.id, null, (tx) => tx.record.head());
    expect(file).toMatchObject({ ...head, log: operator.id, operator: 'HA', signedAt: now() });
    const [pem] = readdirSync(to).filter((name) => name.endsWith('.pem'));
    expect(isHeadSignedBy(file, createPublicKey(readFileSync(join(to, pem ?? ''))))).toBe(true);
    expect((await signedOf(operator)).map((one) => one.size)).toEqual([size]);
  });

  it('are signed once by several servers at the same time, and each of them has them', async () => {
    const size = await grow(operator, 2);
    const places = [1, 2, 3].map((n) => join(folder, `server-${n}`));
    const servers = await Promise.all(places.map(exporter));
    await Promise.all(servers.map((server) => server.signNow()));
    await Promise.all(servers.map((server) => server.stop()));
    expect((await signedOf(operator)).map((one) => one.size)).toEqual([size, 3]);
    const files = places.map((place) => readFileSync(join(place, 'HA-000000000005.json'), 'utf8'));
    expect(new Set(files).size).toBe(1);
  });

  it('are signed a last time at the stop', async () => {
    const heads = await exporter(join(folder, 'stopped'));
    await heads.signNow();
    const size = await grow(operator, 1);
    await heads.stop();
    expect((await signedOf(operator))[0]?.size).toBe(size);
  });

  it('cannot be changed, deleted or made by the role of the server', async () => {
    const attempts = [
      `update signed_head set signed_at = now()`,
      'delete from signed_head',
      `insert into signed_head select operator_id, size, root, now(), repeat('0', 128), repeat('0', 88) from tree_head`,
    ];
    for (const sql of attempts) {
      const tried = withClient(database.appUrl, async (client) => {
        await client.query("select set_config('app.operator', $1, false)", [operator.id]);
        await client.query(sql);
      });
      await expect(tried, sql).rejects.toMatchObject({ code: '42501' });
    }
    const asOwner = withClient(database.ownerUrl, async (client) => {
      await client.query("select set_config('app.operator', $1, false)", [operator.id]);
      await client.query('delete from signed_head');
    });
    await expect(asOwner).rejects.toMatchObject({ code: 'PV002' });
  });
});

describe('a proof out of the database', () => {
  it('is checked outside with the key alone: an aircraft whole, and how the record grew since', async () => {
    const size = await sizeOf(operator);
    const file = await store.withOperator(operator.id, null, async (tx) =>
      tx.proofs.file({ entryIds: await tx.proofs.entriesOf(operator.aircraft), since: 3 }),
    );
    expect(file.entries.map(({ number }) => number)).toEqual(Array.from({ length: size }, (_, n) => n + 1));
    const check = checkProof(JSON.parse(JSON.stringify(file)), { key: createPublicKey(key.publicPem) });
    expect(check).toMatchObject({ fits: true, entries: size, grownFrom: 3 });
  });

  it('is of no other operator, and of no head that was not signed', async () => {
    const file = await store.withOperator(neighbour.id, null, async (tx) => {
      expect(await tx.proofs.entriesOf(operator.aircraft)).toEqual([]);
      expect(await tx.proofs.entryNumbered(3)).toBeNull();
      await expect(tx.proofs.file({ entryIds: [], since: 1 })).rejects.toThrow('No head of 1 entries was signed.');
      return tx.proofs.file({ entryIds: [] });
    });
    expect(file).toMatchObject({ log: neighbour.id, head: { size: 2 } });
  });
});

describe('checking the whole record', () => {
  it('works as the role of the server too, and finds the same', async () => {
    await store.withOperator(operator.id, operator.person, (tx) => tx.record.append(anEntry(operator)));
    const asOwner = await verifyRecord(database.ownerUrl);
    expect(asOwner).toMatchObject([
      { operatorCode: 'HA', entries: 6, waiting: 1, misfit: null },
      { operatorCode: 'HB', entries: 2, waiting: 0, misfit: null },
    ]);
    expect(await verifyRecord(database.appUrl)).toEqual(asOwner);
  });

  it.each([
    ['the time of signing', "signed_at = signed_at - interval '1 day'", 'signed-head'],
    ['the key', "public_key = repeat('0', 88)", 'signed-head'],
    ['the root, as if the record had been another', "root = repeat('0', 64)", 'rewritten'],
  ])('names a signed head of which %s was altered', async (_, change, kind) => {
    await withClient(database.adminUrl, async (client) => {
      await client.query("set session_replication_role = 'replica'");
      await client.query(`update signed_head set ${change} where operator_id = $1 and size = 5`, [operator.id]);
    });
    for (const url of [database.ownerUrl, database.appUrl]) {
      const [finding, other] = await verifyRecord(url);
      expect(finding?.misfit).toMatchObject({ kind });
      expect(other?.misfit).toBeNull();
    }
    await putBack();
  });

  /** The three columns as they were: the next export would find the same. */
  async function putBack(): Promise<void> {
    await withClient(database.adminUrl, async (client) => {
      await client.query("set session_replication_role = 'replica'");
      const file = JSON.parse(readFileSync(join(folder, 'server-1', 'HA-000000000005.json'), 'utf8')) as HeadFile;
      await client.query('update signed_head set root = $1, signed_at = $2, public_key = $3 where size = 5', [
        file.root,
        file.signedAt,
        key.publicHex,
      ]);
    });
    expect((await verifyRecord(database.ownerUrl))[0]?.misfit).toBeNull();
  }
});
