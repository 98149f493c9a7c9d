/** The command as it is really called: compiled, in a process of its own, on files and on a database. */
import { execFile } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createOperator, createOwner, startEmbedded, startSealer, openStore } from '#store';
import { built } from '../support/built.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { scratchFolder } from './cli-scratch.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const main = join(root, 'dist/apps/cli/src/main.js');
const mel = join(root, 'tests/cases/published-rows-t1.yaml');
const { folder, file } = scratchFolder();

interface Ended {
  stdout: string;
  stderr: string;
  code: number;
}

function end(program: string, args: readonly string[], cwd = root): Promise<Ended> {
  const { DATABASE_URL: _, ...env } = process.env;
  return new Promise((resolve) => {
    execFile(program, args, { cwd, env, maxBuffer: 50_000_000 }, (error, stdout, stderr) => {
      resolve({ stdout, stderr, code: error ? Number(error.code) : 0 });
    });
  });
}

const proviso = (...line: string[]) => end(process.execPath, [main, ...line]);
const DEADLINE = 'deadline --category B --recorded 2026-01-26T10:00 --base UTC'.split(' ');

beforeAll(built);

describe('on files alone', () => {
  it('answers through npm as the documents say, with nothing but JSON on standard output', async () => {
    const { stdout, stderr, code } = await end('npm', ['run', '-s', 'proviso', '--', ...DEADLINE, '--json']);
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    expect(JSON.parse(stdout)).toMatchObject({
      lastDay: '2026-01-29',
      endsAt: '2026-01-30T00:00:00Z',
      lengthHours: 72,
    });
  });

  it('judges, and an unwelcome answer is an answer', async () => {
    const path = file(
      'case.yaml',
      `at: 2026-03-10T06:00Z
aircraft: { registration: Q-ABC, type: T1 }
flight: { id: f1, from: Northmere, to: Saltby, offBlockAt: 2026-03-10T08:00Z }
defects: [{ entry: 49-10-01, row: '1', recordedAt: 2026-03-09T12:00Z }]
facts: { flight.etopsMinutes: 120 }
`,
    );
    const words = await proviso('judge', '--mel', mel, '--case', path);
    expect(words).toMatchObject({ stderr: '', code: 0 });
    expect(words.stdout).toMatch(/^MAY NOT FLY: Q-ABC, flight f1 Northmere to Saltby, /);
    const json = await proviso('--json', 'judge', '--mel', mel, '--case', path);
    expect(JSON.parse(json.stdout)).toMatchObject({ verdict: 'may-not-fly' });
  });

  it('exits 1 for findings of a check', async () => {
    const { stdout, code } = await proviso('mel', 'check', file('bad.yaml', 'format: other'));
    expect(stdout).toMatch(/finding/);
    expect(code).toBe(1);
  });

  it.each([
    ['a mistake in the call', ['deadline', '--category']],
    ['a file that is not there', ['mel', 'check', 'none.yaml']],
    [
      'a text nested so deep that it would end the process',
      ['judge', '--mel', file('deep.yaml', '['.repeat(300_000)), '--case', mel],
    ],
    ['a block nested so deep', ['mel', 'compare', mel, file('deep-block.yaml', '- '.repeat(300_000))]],
  ])('exits 2 with one line for %s', async (_what, line) => {
    const { stdout, stderr, code } = await proviso(...line);
    expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
    expect(stderr).toMatch(/^proviso: [^\n]+\n$/);
  });

  it('is silent when its reader stops early', async () => {
    const line = `"${process.execPath}" "${main}" mel compare "${mel}" "${mel.replace('t1', 't2')}" --json | head -c 20`;
    expect(await end('/bin/sh', ['-c', line])).toMatchObject({ stderr: '', code: 0 });
  });
});

describe('on a database', () => {
  let database: FreshDatabase;

  beforeAll(async () => {
    database = await freshDatabase();
  });
  afterAll(() => database.drop());

  it('migrates an empty one, and a second time finds nothing to do', async () => {
    const name = `cli_${process.pid}`;
    const empty = await createOwner(database.adminUrl, name);
    try {
      const unready = await proviso('record', 'verify', '--database', empty);
      expect(unready).toMatchObject({ code: 2, stderr: expect.stringContaining('run `proviso migrate` first') });
      const first = await proviso('migrate', '--database', empty, '--json');
      expect(first).toMatchObject({ stderr: '', code: 0 });
      expect((JSON.parse(first.stdout) as { ran: string[] }).ran.length).toBeGreaterThan(5);
      expect((await proviso('migrate', '--database', empty)).stdout).toMatch(/: nothing to do\.\n$/);
      const verified = await proviso('record', 'verify', '--database', empty);
      expect(verified).toMatchObject({ stdout: 'The database holds no operator, and so no record.\n', code: 0 });
    } finally {
      await withClient(database.adminUrl, (client) => client.query(`drop database ${name} with (force)`));
    }
  });

  it('verifies the record, and exits 1 when one byte was altered', async () => {
    await recordSome(database);
    const whole = await proviso('record', 'verify', '--database', database.ownerUrl, '--json');
    expect(whole).toMatchObject({ stderr: '', code: 0 });
    expect(JSON.parse(whole.stdout)).toMatchObject({
      fits: true,
      operators: [{ operatorCode: 'QCL', entries: 3, head: { size: 3 }, misfit: null }],
    });
    const words = await proviso('record', 'verify', '--database', database.ownerUrl);
    expect(words.stdout).toMatch(/^QCL: 3 entries, all fit\. Head 3 [0-9a-f]{64}\. No backup is recorded\.\n$/);

    await withClient(database.adminUrl, async (client) => {
      await client.query("set session_replication_role = 'replica'");
      await client.query('alter table record_entry drop constraint record_entry_leaf');
      await client.query(
        `update record_entry set canonical = set_byte(canonical, 9, get_byte(canonical, 9) # 1)
         where id = (select entry_id from record_sealed where number = 2)`,
      );
    });
    const altered = await proviso('record', 'verify', '--database', database.ownerUrl, '--json');
    expect(altered).toMatchObject({ stderr: '', code: 1 });
    expect(JSON.parse(altered.stdout)).toMatchObject({ fits: false, operators: [{ misfit: { number: 2 } }] });
    const said = await proviso('record', 'verify', '--database', database.ownerUrl);
    expect(said).toMatchObject({
      code: 1,
      stdout: expect.stringMatching(/^QCL: the record does not fit at entry 2 /),
    });
  });

  it('finds the one of `npm start` in its folder, runs or not, and says so when there is none', async () => {
    const here = (...line: string[]) => end(process.execPath, [main, ...line], folder);
    expect(await here('record', 'verify')).toMatchObject({ code: 2, stderr: expect.stringContaining('no database') });
    // As root the database runs as another user, who must be able to come here.
    chmodSync(folder, 0o755);
    const server = await startEmbedded({ dataFolder: join(folder, '.proviso') });
    try {
      expect(await here('migrate')).toMatchObject({ stderr: '', code: 0 });
    } finally {
      await server.stop();
    }
    const verified = await here('record', 'verify');
    expect(verified).toMatchObject({ stdout: expect.stringContaining('no operator'), stderr: '', code: 0 });
  });
});

/** An operator with three sealed entries: the first tells of the operator itself. */
async function recordSome(database: FreshDatabase): Promise<void> {
  const operator = { code: 'QCL', name: 'Invented Air', invented: true, base: 'UTC', settings: {} };
  const id = await createOperator(database.ownerUrl, operator);
  const store = await openStore(database.appUrl, { connections: 2 });
  const sealer = await startSealer(database.ownerUrl, { everyMs: 5 });
  const times = { enteredAt: '2026-03-01T08:00:00.000Z' };
  await store.withOperator(id, null, async (tx) => {
    for (const n of [1, 2]) {
      const entry = { who: null, authorisation: null, organisation: null, aircraft: null, times };
      await tx.record.append({ ...entry, what: 'test.noted', payload: { n } });
    }
  });
  const head = () => store.withOperator(id, null, (tx) => tx.record.head());
  while ((await head())?.size !== 3) await new Promise((go) => setTimeout(go, 5));
  await sealer.stop();
  await store.close();
}
