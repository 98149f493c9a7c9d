/** Movement messages as files in a watched folder: each taken in once, whole, whatever it is called and whoever sees it. */
import { mkdir, mkdtemp, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { layOut, watchFolder, type WatchingFolder } from '../../apps/cli/src/folder/watch-folder.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { movementsOperator, type MovementsOperator, nameAt, SECRET } from './movements-operator.js';

const NOW = '2026-05-14T18:00:00.000Z';
const PATIENT = { interval: 50, timeout: 30_000 };
const RECEIVED = 'RECEIVED 2026-05-14T09:30:00Z\n';
const flown = (flight: string, mark: string) =>
  `${RECEIVED}MVT\nQT${flight}/14.${mark}.QXA\nAD0700/0710 EA0900 QXB\n`;

let server: RunningServer;
let one: MovementsOperator;
let other: MovementsOperator;
let dispatcher: ApiClient;
let root: string;
let outside: string;
const watching: WatchingFolder[] = [];
const errors: unknown[] = [];

beforeAll(async () => {
  server = await runningServer({ now: () => NOW, secret: SECRET });
  one = await movementsOperator(server, { code: 'QT', marks: ['Q-TAB', 'Q-TAD'] });
  other = await movementsOperator(server, { code: 'QU', marks: ['Q-UAA'] });
  dispatcher = await server.signIn(nameAt('QT', 'dispatcher'));
  root = await mkdtemp(join(tmpdir(), 'proviso-folder-'));
  outside = await mkdtemp(join(tmpdir(), 'proviso-outside-'));
  await writeFile(join(outside, 'secret.txt'), flown('666', 'QTAB'));
  await writeFile(join(root, 'before.txt'), flown('1', 'QTAB'));
  for (const _ of ['first server', 'second server']) watching.push(await watcher());
});

afterAll(async () => {
  for (const watched of watching) await watched.stop();
  await server.stop();
  await rm(root, { recursive: true });
  await rm(outside, { recursive: true });
});

async function watcher(): Promise<WatchingFolder> {
  const folder = await layOut(root, ['QT', 'QU']);
  const onError = (error: unknown) => errors.push(error);
  return watchFolder({ folder, ...server.movementFiles, settleMs: 300, retryMs: 100, onError });
}

const inside = async (name: string) =>
  (await readdir(join(root, name))).map((file) => file.replace(/^[\da-f]{12}-|^\d{13}-/, '')).toSorted();
const filesOf = (operator: MovementsOperator) =>
  server.store.withOperator(operator.id, null, (tx) =>
    tx.query<{ name: string }>('select name from movement_file order by name'),
  );
const deliveries = (operator: MovementsOperator) =>
  server.store.withOperator(operator.id, null, async (tx) => {
    const rows = await tx.query<{ count: string }>("select count(*) from movement_delivery where came_by = 'file'");
    return Number(rows[0]?.count);
  });
async function reasonOf(name: string): Promise<string> {
  const found = (await readdir(join(root, 'tray'))).find((file) => file.endsWith(`-${name}.reason.txt`));
  return found === undefined ? `no reason for ${name}` : readFile(join(root, 'tray', found), 'utf8');
}

describe('a file', () => {
  it('that lay there before a server started is taken in, once by two servers', async () => {
    await expect.poll(() => inside('done'), PATIENT).toEqual(['before.txt']);
    expect([await filesOf(one), await deliveries(one)]).toEqual([[{ name: 'before.txt' }], 1]);
    const { legs } = await dispatcher.get<Shapes['AircraftLegs']>(`/api/aircraft/${one.aircraft['Q-TAB']}/legs`);
    expect(legs.map(({ flight, airborneAt }) => [flight, airborneAt])).toEqual([['QT1', '2026-05-14T07:10:00.000Z']]);
  });

  it('goes to the operator whose aircraft it names, or whose folder it lies in', async () => {
    await writeFile(join(root, 'common.txt'), flown('2', 'QUAA'));
    await writeFile(join(root, 'QU', 'own.txt'), flown('3', 'QUAA'));
    await expect.poll(() => inside('done'), PATIENT).toEqual(['before.txt', 'common.txt', 'own.txt']);
    expect(await filesOf(other)).toEqual([{ name: 'common.txt' }, { name: 'own.txt' }]);
    expect(await filesOf(one)).toEqual([{ name: 'before.txt' }]);
  });

  it('of the same content under another name brings nothing new', async () => {
    await writeFile(join(root, 'again.txt'), flown('1', 'QTAB'));
    await expect.poll(() => inside('done'), PATIENT).toContain('again.txt');
    expect([await filesOf(one), await deliveries(one)]).toEqual([[{ name: 'before.txt' }], 1]);
  });

  it('is taken once though many come at the same moment and two servers see each of them', async () => {
    const names = Array.from({ length: 12 }, (_, n) => `many-${String(n).padStart(2, '0')}.txt`);
    await Promise.all(names.map((name, n) => writeFile(join(root, name), flown(`${40 + n}`, 'QTAD'))));
    await expect
      .poll(async () => (await inside('done')).filter((name) => name.startsWith('many')), PATIENT)
      .toEqual(names);
    expect(await deliveries(one)).toBe(13);
    expect(errors).toEqual([]);
  });

  it('is not read while it is still being written, nor under the name of a copy under way', async () => {
    const path = join(root, 'slow.txt');
    const text = flown('90', 'QTAB');
    for (let length = 20; length < text.length; length += 20) {
      await writeFile(path, text.slice(0, length));
      await new Promise((go) => setTimeout(go, 100));
    }
    await writeFile(path, text);
    await writeFile(join(root, 'copy.txt.part'), flown('91', 'QTAB'));
    await writeFile(join(root, '.hidden'), flown('92', 'QTAB'));
    await expect.poll(() => inside('done'), PATIENT).toContain('slow.txt');
    const known = await server.store.withOperator(one.id, null, (tx) =>
      tx.query<{ text: string }>("select text from movement_delivery where text like '%QT9%'"),
    );
    expect(known).toEqual([{ text }]);
    expect((await readdir(root)).toSorted()).toEqual(['.hidden', 'QT', 'QU', 'copy.txt.part', 'done', 'tray']);
    await rename(join(root, 'copy.txt.part'), join(root, 'copy.txt'));
    await expect.poll(() => inside('done'), PATIENT).toContain('copy.txt');
  });
});

describe('goes to the tray with its reason beside it', () => {
  it.each([
    ['binary.txt', Buffer.from([0x4d, 0xff, 0xfe, 0x00]), 'It is no text in UTF-8.\n'],
    ['nul.txt', 'MVT\u0000', 'It is no text in UTF-8.\n'],
    [
      'foreign.txt',
      flown('5', 'QZZZ'),
      'It names aircraft of no operator here. Put it into the folder of its operator.\n',
    ],
    [
      'both.txt',
      flown('6', 'QTAB') + flown('7', 'QUAA'),
      'It names aircraft of QT and QU. Put it into the folder of its operator.\n',
    ],
    ['large.txt', 'X'.repeat(300 * 1024), 'It has 307200 bytes; 262144 are taken at once. Divide it.\n'],
  ])('%s', async (name, content, reason) => {
    await writeFile(join(root, name), content);
    await expect.poll(() => inside('tray'), PATIENT).toContain(name);
    expect(await reasonOf(name)).toBe(reason);
    expect(await readdir(root)).not.toContain(name);
  });

  it('what lies in the folder of an operator and holds no message, or too many', async () => {
    await writeFile(join(root, 'QT', 'blank.txt'), ' \n');
    await writeFile(join(root, 'QT', 'much.txt'), Array.from({ length: 1001 }, (_, n) => `x${n}\n\n`).join(''));
    await expect.poll(() => inside('tray'), PATIENT).toEqual(expect.arrayContaining(['blank.txt', 'much.txt']));
    expect(await reasonOf('blank.txt')).toBe('the text holds no message\n');
    expect(await reasonOf('much.txt')).toBe('the text holds 1001 messages; 1000 are taken at once\n');
  });

  it('a link, which is never followed: neither in it nor as one of its folders', async () => {
    await symlink(join(outside, 'secret.txt'), join(root, 'link.txt'));
    await expect.poll(() => inside('tray'), PATIENT).toContain('link.txt');
    expect(await reasonOf('link.txt')).toBe('It is a link or no plain file, and is not read.\n');
    const taken = await server.store.withOperator(one.id, null, (tx) =>
      tx.query("select 1 from movement_delivery where text like '%QT666%'"),
    );
    expect(taken).toEqual([]);
    const elsewhere = await mkdtemp(join(tmpdir(), 'proviso-links-'));
    await symlink(outside, join(elsewhere, 'done'));
    await expect(layOut(elsewhere, ['QT'])).rejects.toThrow(/done is no folder; a link is not followed$/);
    await expect(layOut(join(elsewhere, 'nothing'), [])).rejects.toThrow(/nothing is not there$/);
    await rm(elsewhere, { recursive: true });
  });

  it('and a folder inside is left alone', async () => {
    await mkdir(join(root, 'letters'));
    await writeFile(join(root, 'letters', 'inner.txt'), flown('8', 'QTAB'));
    await writeFile(join(root, 'after.txt'), flown('9', 'QTAB'));
    await expect.poll(() => inside('done'), PATIENT).toContain('after.txt');
    expect(await readdir(join(root, 'letters'))).toEqual(['inner.txt']);
  });
});

it('an unreadable message in a readable file waits in the tray of movements, and the file is done', async () => {
  await writeFile(join(root, 'QT', 'mixed.txt'), `${flown('10', 'QTAB')}\nMVT\nQT11/99.QTAB.QXA\nAD9999\n`);
  await expect.poll(() => inside('done'), PATIENT).toContain('mixed.txt');
  const { entries } = await dispatcher.get<Shapes['MovementTray']>('/api/movements/tray');
  expect(entries.filter(({ text }) => text.includes('QT11'))).toMatchObject([{ cameBy: 'file', sentBy: null }]);
});

it('what could not be handed in stays where it is and is tried again', async () => {
  for (const watched of watching.splice(0)) await watched.stop();
  const folder = await layOut(root, ['QT', 'QU']);
  let tries = 0;
  const take: RunningServer['movementFiles']['take'] = (file) => {
    tries += 1;
    return tries < 3 ? Promise.reject(new Error('the database is away')) : server.movementFiles.take(file);
  };
  const onError = (error: unknown) => errors.push(error);
  const largestBytes = 1000;
  watching.push(await watchFolder({ folder, take, largestBytes, settleMs: 100, retryMs: 100, onError }));
  await writeFile(join(root, 'patient.txt'), flown('12', 'QTAB'));
  await expect.poll(() => inside('done'), PATIENT).toContain('patient.txt');
  expect([tries, errors.length]).toEqual([3, 2]);
});
