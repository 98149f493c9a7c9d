/** Somebody was erased after the backup was made; the backup is restored, with the list of erasures and without it. */
import { generateKeyPairSync } from 'node:crypto';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run, type Ran } from '../../apps/cli/src/run.js';
import { type ErasureList, signErasures } from '#record';
import { headKeyIn, type HeadExport, startHeadExport, startSealer } from '#store';
import type { Shapes } from '../support/api-client.js';
import { placesOf } from '../support/places-of.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type RunningServer, serverProcess } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';
import { anotherTechnician, TAVIKS } from './another-technician.js';
import { scratchFolder } from './cli-scratch.js';

const { folder, file } = scratchFolder();
const heads = join(folder, 'heads');
const key = headKeyIn(join(folder, 'key.pem'));
const before = join(folder, 'before.backup');
const after = join(folder, 'after.backup');
let clock = '2026-01-15T12:00:00.000Z';
let database: FreshDatabase;
let exporter: HeadExport;
let server: RunningServer;
let provedUpTo = 0;
let id: string;

beforeAll(async () => {
  database = await freshDatabase();
  exporter = await startHeadExport(database.ownerUrl, { key, folder: heads, everyMs: 3_600_000, now: () => clock });
  server = await runningServer({ now: () => clock, demo: true, database, heads: exporter });
  id = await anotherTechnician(server);
  await allSealed(database.ownerUrl);
  await exporter.signNow();
  provedUpTo =
    (await (await server.signIn('wenna')).get<Shapes['RecordHeads']>('/api/record/heads')).heads[0]?.size ?? 0;
  await proviso('backup', '--to', before, '--database', database.ownerUrl);
  await eraseTavik();
  await proviso('backup', '--to', after, '--database', database.ownerUrl);
}, 120_000);

afterAll(async () => {
  await server.stop();
  await exporter.stop();
  await database.drop();
});

const proviso = (...args: string[]): Promise<Ran> => run(args);

async function allSealed(ownerUrl: string): Promise<void> {
  const { stdout } = await proviso('record', 'verify', '--database', ownerUrl);
  if (!stdout.includes('not yet sealed')) return;
  await new Promise((go) => setTimeout(go, 50));
  await allSealed(ownerUrl);
}

async function eraseTavik(): Promise<void> {
  await (await server.signIn('ulla')).post(`/api/people/${id}/leaving`, { reason: 'Moves away.' });
  clock = '2029-02-15T12:00:00.000Z';
  const quality = await server.signIn('wenna');
  const { statement } = await quality.get<Shapes['Statement']>(`/api/people/${id}/erasure-statement`);
  const sign = { secret: quality.secret, statement };
  const body = { reason: 'Asked for, and nothing binds it.', sign };
  const { body: done } = await quality.post<Shapes['PersonErased']>(`/api/people/${id}/erasure`, body);
  expect(done.list).toMatchObject({ written: true, says: expect.stringContaining('has it') as string });
}

async function intoEmpty(work: (empty: FreshDatabase) => Promise<void>): Promise<void> {
  const empty = await freshDatabase();
  await work(empty).finally(() => empty.drop());
}

const restored = (empty: FreshDatabase, ...more: string[]): Promise<Ran> =>
  proviso('restore', '--from', before, '--database', empty.ownerUrl, ...more);

async function sealed(ownerUrl: string): Promise<void> {
  const sealer = await startSealer(ownerUrl, { everyMs: 5 });
  await allSealed(ownerUrl);
  await sealer.stop();
}

/** Gone from every table, every entry fits, the tables say what the record says. */
async function expectGone({ ownerUrl, adminUrl }: FreshDatabase): Promise<void> {
  expect(await placesOf(adminUrl, TAVIKS)).toEqual([]);
  await sealed(ownerUrl);
  const fits = await proviso('record', 'verify', '--database', ownerUrl);
  expect(fits).toMatchObject({ code: 0, stdout: expect.stringContaining('all fit') as string });
  const equal = await proviso('record', 'compare', '--database', ownerUrl);
  expect(equal).toMatchObject({ code: 0, stdout: expect.stringContaining('all say the same') as string });
}

const listNamed = (count: string): string => {
  const name = readdirSync(heads).find((one) => one.startsWith('QOF-') && one.endsWith(`${count}.erasures.json`));
  if (!name) throw new Error(`No list of ${count}.`);
  return join(heads, name);
};
const newest = (): ErasureList => JSON.parse(readFileSync(listNamed('000001'), 'utf8')) as ErasureList;

describe('the list of erasures', () => {
  it('lies beside the signed heads, one for each operator and each erasure, and holds nothing personal', () => {
    const lists = readdirSync(heads).filter((name) => name.endsWith('.erasures.json'));
    expect(lists.map((name) => name.replace(/-[0-9a-f]{8}-/, ' ')).toSorted()).toContain('QOF 000000.erasures.json');
    expect(newest()).toMatchObject({ operator: 'QOF', signedAt: clock, people: [{ erasedAt: clock }] });
    const text = readFileSync(listNamed('000001'), 'utf8').toLowerCase();
    for (const word of TAVIKS) expect(text).not.toContain(word.toLowerCase());
  });
});

describe('a backup from before the erasure', () => {
  it('brings the person back without a list, and that is said with what to do', () =>
    intoEmpty(async (empty) => {
      const { stdout, code } = await restored(empty);
      expect(code).toBe(0);
      expect(stdout).toMatch(
        /QOF: NOT held against a list of erasures\. Whoever was erased after .* stands in this database again/,
      );
      expect(stdout).toContain('proviso erase again --erased');
      expect(await placesOf(empty.adminUrl, TAVIKS)).toContain('public.person.name');
      const again = await proviso('erase', 'again', '--erased', heads, '--database', empty.ownerUrl);
      expect(again).toMatchObject({
        code: 0,
        stdout: expect.stringMatching(/QOF: .* 1 person on it, 1 of them erased again/) as string,
      });
      await expectGone(empty);
      const twice = await proviso('erase', 'again', '--erased', heads, '--database', empty.ownerUrl);
      expect(twice.stdout).toContain('none of them stood in it any longer');
    }));

  it('does not with the list: the person is gone, proofs hold across it, and the record says so', () =>
    intoEmpty(async (empty) => {
      const done = await restored(empty, '--erased', heads);
      expect(done).toMatchObject({ code: 0, stdout: expect.stringContaining('1 of them erased again') as string });
      expect(done.stdout).not.toContain('NOT held');
      await expectGone(empty);
      const entries = await withClient(empty.adminUrl, async (client) => {
        const { rows } = await client.query<{ entry: string }>(
          `select convert_from(canonical, 'UTF8') as entry from record_entry where what in ('person.left', 'person.erased') order by seq`,
        );
        return rows.map(
          ({ entry }) => JSON.parse(entry) as { who: null; payload: { person: string; again?: object } },
        );
      });
      const [person] = newest().people;
      expect(entries).toHaveLength(2);
      for (const { who, payload } of entries)
        expect({ who, person: payload.person }).toEqual({ who: null, person: person?.reference });
      expect(entries[1]?.payload.again).toMatchObject({ erasedAt: person?.erasedAt, by: person?.by });
      const later = await startHeadExport(empty.ownerUrl, {
        key,
        folder: join(folder, 'later'),
        everyMs: 3_600_000,
        now: () => clock,
      });
      await later.stop();
      const publicKey = file('public.pem', key.publicPem);
      const grownFile = join(folder, 'grown.json');
      const asked = ['--operator', 'QOF', '--since', String(provedUpTo), '--to', grownFile];
      await proviso('record', 'prove', ...asked, '--database', empty.ownerUrl);
      const grown = await proviso('record', 'check', grownFile, '--key', publicKey);
      expect(grown).toMatchObject({ code: 0, stdout: expect.stringContaining('unaltered') as string });
    }));

  it(
    'does not when the server is started with the folder of its heads',
    () =>
      intoEmpty(async (empty) => {
        await restored(empty);
        const own = join(folder, 'own');
        mkdirSync(own);
        for (const name of readdirSync(heads)) copyFileSync(join(heads, name), join(own, name));
        const started = await serverProcess({
          databaseUrl: empty.ownerUrl,
          env: { HEADS_FOLDER: own, HEAD_KEY: join(folder, 'key.pem') },
        });
        await started.stop();
        await expectGone(empty);
        const left = await proviso('erase', 'again', '--erased', own, '--database', empty.ownerUrl);
        expect(left.stdout).toContain('none of them stood in it any longer');
      }),
    300_000,
  );
});

describe('a list that is not the one', () => {
  const altered = (change: Partial<ErasureList>) => file('altered.json', JSON.stringify({ ...newest(), ...change }));
  const signedBy = (change: Partial<ErasureList>, by = key.privateKey) =>
    file('signed.json', JSON.stringify(signErasures({ ...newest(), ...change }, by)));
  const otherKey = generateKeyPairSync('ed25519');

  it.each([
    ['damaged', () => file('damaged.json', '{"format":'), 'damaged.json: is no JSON'],
    ['something else', () => file('else.json', '{}'), 'else.json: is no list of erasures'],
    ['altered', () => altered({ people: [] }), 'altered.json: was altered'],
    ['forged', () => signedBy({}, otherKey.privateKey), 'signed.json: was altered, or was signed with a key'],
    [
      'of another operator',
      () => signedBy({ log: '0190a7c4-0000-7000-8000-0000000000aa', operator: 'QXX' }),
      'signed.json: is of another operator (QXX); of this database are:',
    ],
    [
      'about somebody known otherwise',
      () => signedBy({ people: newest().people.map((one) => ({ ...one, reference: 'ab'.repeat(32) })) }),
      'names somebody under another reference',
    ],
    ['not there', () => join(folder, 'nowhere'), 'there is no such file or folder'],
  ])('is refused by name when it is %s, and nothing is restored', (_, path, said) =>
    intoEmpty(async (empty) => {
      const refused = await restored(empty, '--erased', path());
      expect(refused).toMatchObject({ code: 2, stderr: expect.stringContaining(said) as string });
      expect(await placesOf(empty.adminUrl, TAVIKS)).toEqual([]);
    }),
  );

  it('is refused in a folder too, and an older one is not taken in its place', () =>
    intoEmpty(async (empty) => {
      const spoilt = join(folder, 'spoilt');
      mkdirSync(spoilt);
      for (const name of readdirSync(heads)) copyFileSync(join(heads, name), join(spoilt, name));
      const [name = ''] = readdirSync(spoilt).filter(
        (one) => one.endsWith('000001.erasures.json') && one.startsWith('QOF'),
      );
      writeFileSync(join(spoilt, name), readFileSync(join(spoilt, name), 'utf8').replace('2029', '2030'));
      expect(await restored(empty, '--erased', spoilt)).toMatchObject({
        code: 2,
        stderr: expect.stringContaining(name) as string,
      });
    }));

  it('is refused when it is older than the backup', () =>
    intoEmpty(async (empty) => {
      const old = await proviso(
        'restore',
        '--from',
        after,
        '--database',
        empty.ownerUrl,
        '--erased',
        listNamed('000000'),
      );
      expect(old).toMatchObject({
        code: 2,
        stderr: expect.stringContaining('1 erased there are not on it') as string,
      });
    }));

  it('is taken with a newer key that was given', () =>
    intoEmpty(async (empty) => {
      const newer = file('newer.pem', otherKey.publicKey.export({ type: 'spki', format: 'pem' }).toString());
      const done = await restored(empty, '--erased', signedBy({}, otherKey.privateKey), '--key', newer);
      expect(done).toMatchObject({ code: 0, stdout: expect.stringContaining('1 of them erased again') as string });
    }));
});
