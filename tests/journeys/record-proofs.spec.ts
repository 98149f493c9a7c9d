/**
 * What quality hands to an auditor, and what the auditor does with it: at another desk, without the house's database,
 * with the public key and a head kept from earlier.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import { headKeyIn, startHeadExport, type HeadExport } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { scratchFolder } from './cli-scratch.js';

const now = () => '2026-01-15T12:12:00.000Z';
const PATIENCE = { timeout: 30_000 };
const { folder, file } = scratchFolder();
const heads = join(folder, 'heads');
const key = headKeyIn(join(folder, 'key.pem'));
let database: FreshDatabase;
let exporter: HeadExport;
let server: RunningServer;
let quality: ApiClient;
let publicKey: string;
let defect: Shapes['DefectLine'];

beforeAll(async () => {
  database = await freshDatabase();
  exporter = await startHeadExport(database.ownerUrl, { key, folder: heads, everyMs: 3_600_000, now });
  server = await runningServer({ now, demo: true, database, heads: exporter });
  publicKey = file('public.pem', key.publicPem);
  quality = await server.signIn('wenna');
  const { defects } = await quality.get<Shapes['DefectList']>('/api/defects');
  defect = defects.find(({ deadline }) => deadline !== null) as Shapes['DefectLine'];
  while ((await waiting()) > 0) await new Promise((go) => setTimeout(go, 50));
});

afterAll(async () => {
  await server.stop();
  await exporter.stop();
  await database.drop();
});

async function waiting(): Promise<number> {
  const { value } = await json<{ operators: { waiting: number }[] }>('record verify --database', database.ownerUrl);
  return value.operators.reduce((sum, one) => sum + one.waiting, 0);
}

async function json<Value>(line: string, ...more: string[]): Promise<{ value: Value; code: number }> {
  const { stdout, stderr, code } = await run([...line.split(' '), ...more, '--json']);
  if (code > 1) throw new Error(stderr);
  return { value: JSON.parse(stdout) as Value, code };
}

const check = (path: string, ...more: string[]) => run(['record', 'check', path, '--key', publicKey, ...more]);

describe('a history that was handed out', () => {
  let history: Shapes['RecordHistory'];

  it('holds every act of the item, and fits at the desk of somebody who has nothing but the key', async () => {
    history = await quality.get<Shapes['RecordHistory']>(`/api/defects/${defect.id}/history.json`);
    const view = await quality.get<Shapes['DefectView']>(`/api/defects/${defect.id}`);
    const numbers = history.entries.map(({ number }) => number);
    expect(view.history.map(({ sealedAs }) => sealedAs).every((one) => numbers.includes(one ?? 0))).toBe(true);
    expect(history.about).toMatchObject({ subject: defect.number, notIn: 0 });
    const { stdout, code } = await check(file('history.json', JSON.stringify(history)));
    expect({ code, stdout }).toMatchObject({ code: 0, stdout: expect.stringContaining('fits.') as string });
    expect(stdout).toContain(`${numbers.length} entries stand word for word in the record of ${history.head.size}`);
  });

  it('names nobody in what is proved, and tells the names beside it', () => {
    const { entries, people } = history;
    const names = Object.values(people).map((person) => person?.name ?? '');
    expect(names.length).toBeGreaterThan(1);
    for (const { canonical } of entries) {
      for (const name of names) expect(canonical).not.toContain(name);
    }
  });

  it('is said not to fit once a word of it was changed, and the entry is named', async () => {
    const [first, ...rest] = history.entries;
    const canonical = first?.canonical.replace(/"description":"/, '"description":"not ') ?? '';
    expect(canonical).not.toBe(first?.canonical);
    const altered = { ...history, entries: [{ ...first, canonical }, ...rest] };
    const { stdout, code } = await check(file('altered.json', JSON.stringify(altered)));
    expect(code).toBe(1);
    expect(stdout).toContain(
      `entry ${first?.number}: The text of entry ${first?.number} does not give its leaf hash`,
    );
  });

  it('of the aircraft holds that of its item', async () => {
    const whole = await quality.get<Shapes['RecordHistory']>(`/api/aircraft/${defect.aircraft}/history.json`);
    const numbers = whole.entries.map(({ number }) => number);
    expect(history.entries.every(({ number }) => numbers.includes(number))).toBe(true);
    expect((await check(file('aircraft.json', JSON.stringify(whole)))).code).toBe(0);
  });

  it('is saved under a name of letters and digits alone, and kept by no cache', async () => {
    const { headers } = await quality.page(`/api/defects/${defect.id}/history.json`);
    expect(headers.get('content-disposition')).toMatch(/^attachment; filename="history-Q-[A-Z]+-\d+\.json"$/);
    expect(headers.get('cache-control')).toBe('private, no-store');
  });

  it('is given neither to a technician nor to another operator', async () => {
    const technician = await server.signIn('odrin');
    const address = `/api/defects/${defect.id}/history.json`;
    expect(await technician.refused('GET', address)).toMatchObject({ code: 'role-missing' });
    const { operators } = await quality.get<Shapes['SessionView']>('/api/session');
    expect(operators).toHaveLength(1);
    const elsewhere = await server.signIn('kesh');
    expect(await elsewhere.refused('GET', address)).toMatchObject({ code: 'not-found' });
    const theirs = `/api/aircraft/${defect.aircraft}/history.json`;
    expect(await elsewhere.refused('GET', theirs)).toMatchObject({ code: 'not-found' });
  });
});

describe('a head that the auditor kept', () => {
  it('was exported, is listed, and fits the key', async () => {
    const listed = await quality.get<Shapes['RecordHeads']>('/api/record/heads');
    expect(listed.keys.map(({ pem }) => pem)).toEqual([key.publicPem]);
    // The list of erasures lies beside them, and is signed in a form of its own.
    const files = readdirSync(heads).filter((one) => one.endsWith('.json') && !one.endsWith('.erasures.json'));
    expect(files).not.toEqual([]);
    for (const name of files) {
      const { stdout, code } = await check(join(heads, name));
      expect({ code, stdout }).toMatchObject({ code: 0, stdout: expect.stringContaining('fits.') as string });
    }
    const [newest] = listed.heads;
    const kept = readdirSync(heads).some((name) => name.includes(String(newest?.size).padStart(12, '0')));
    expect(kept).toBe(true);
  });

  it('is the beginning of the record that grew since: one command writes the proof, another checks it', async () => {
    const { heads: before } = await quality.get<Shapes['RecordHeads']>('/api/record/heads');
    const held = readdirSync(heads).find((name) => name.includes(String(before[0]?.size).padStart(12, '0'))) ?? '';
    const technician = await server.signIn('odrin');
    await technician.post('/api/defects', {
      aircraft: defect.aircraft,
      origin: 'technician',
      description: 'Reading light flickers.',
      recordedAt: now(),
    });
    await expect.poll(waiting, PATIENCE).toBe(0);
    await exporter.signNow();
    const to = join(folder, 'proof.json');
    const operator = held.split('-')[0] ?? '';
    const asked = ['--operator', operator, '--database', database.appUrl, '--since', String(before[0]?.size)];
    const proved = await run(['record', 'prove', ...asked, '--defect', defect.number, '--to', to]);
    expect(proved).toMatchObject({ code: 0, stderr: '' });
    const { stdout, code } = await check(to, '--held', join(heads, held));
    expect({ code, stdout }).toMatchObject({
      code: 0,
      stdout: expect.stringContaining(`It begins with the record of ${before[0]?.size}, unaltered.`) as string,
    });
    const again = await run(['record', 'prove', ...asked, '--to', to]);
    expect(again).toMatchObject({ code: 2, stderr: expect.stringContaining('is not written over') as string });
  });

  it('shows a record that was rewritten behind it', async () => {
    const proof = JSON.parse(readFileSync(join(folder, 'proof.json'), 'utf8')) as Shapes['RecordProof'];
    const earlier = proof.earlier?.proof.with(0, '0'.repeat(64)) ?? [];
    const broken = file('broken.json', JSON.stringify({ ...proof, earlier: { ...proof.earlier, proof: earlier } }));
    const { stdout, code } = await check(broken);
    expect(code).toBe(1);
    expect(stdout).toContain('earlier head: The record of');
  });
});

describe('mistakes in the call', () => {
  it.each([
    ['no key', ['record', 'check', 'x.json'], '--key is missing'],
    ['the private key', ['record', 'check', 'x.json', '--key', join(folder, 'key.pem')], 'is a private key'],
    ['no key in the file', ['record', 'check', 'x.json', '--key', 'package.json'], 'holds no public Ed25519 key'],
    ['no file', ['record', 'check', 'nowhere.json', '--key', join(folder, 'public.pem')], 'there is no such file'],
    ['no operator', ['record', 'prove', '--to', 'x'], '--operator is missing'],
    [
      'two things',
      ['record', 'prove', '--operator', 'QOF', '--to', 'x', '--entry', '1', '--aircraft', 'Q-A'],
      'one file',
    ],
    ['no number', ['record', 'prove', '--operator', 'QOF', '--to', 'x', '--entry', '0'], 'is no whole number from 1'],
    ['no such entry', ['record', 'prove', '--operator', 'QOF', '--to', 'x', '--entry', '99999'], 'no such entry'],
    ['no such head', ['record', 'prove', '--operator', 'QOF', '--to', 'x', '--since', '99999'], 'was signed'],
    ['nobody', ['record', 'prove', '--operator', 'ZZ', '--to', 'x'], 'there is no such operator'],
  ])('%s: one line, and exit 2', async (_, line, reason) => {
    const withUrl = line[1] === 'prove' ? [...line, '--database', database.ownerUrl] : line;
    const { stderr, code } = await run(withUrl);
    expect({ code, stderr }).toMatchObject({ code: 2, stderr: expect.stringContaining(reason) as string });
  });
});
