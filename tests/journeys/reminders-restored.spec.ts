/**
 * Jobs are not in a backup; what is to be told stands in rows that are. So after a restore what waited is handed over,
 * once, under the id it had, and what was handed over before is not handed over again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { makeBackup, restoreBackup } from '#store';
import { type FreshDatabase, freshDatabase } from '../support/postgres.js';
import { runningServer } from '../support/running-server.js';
import { FROM, PATIENT, RemindersScene, SECRET_KEYS } from './reminders.scene.js';

const scene = new RemindersScene();
const folder = mkdtempSync(join(tmpdir(), 'proviso-reminders-'));
let restored: FreshDatabase;

beforeAll(async () => {
  restored = await freshDatabase();
  await scene.open();
});

afterAll(async () => {
  await scene.close();
  await restored.drop();
  rmSync(folder, { recursive: true, force: true });
});

it('after a restore no reminder is lost and none is sent twice', async () => {
  await scene.add('email', 'sorra@engineers.example', { label: 'at work' });
  await scene.add('webhook', scene.endpoint.url, { label: 'planning', of: 'operator' });
  const { id } = await scene.deferred('Q-ABA', '33-11-01');
  const states = async () => {
    const all = await scene.remindersOf(id);
    return all.map(({ share, to, state }) => `${share} ${to.split(' ')[0]} ${state}`).toSorted();
  };
  scene.endpoint.answers.push({ status: 429, headers: { 'retry-after': '600' } });
  await scene.goTo('2026-01-28T12:00:00.000Z');
  await expect.poll(states, PATIENT).toEqual(['50 at sent', '50 planning not delivered']);
  const path = join(folder, 'backup');
  await makeBackup(scene.server.ownerUrl, path, scene.now());
  await scene.server.stop();

  await restoreBackup(restored.ownerUrl, path);
  scene.server = await runningServer({
    database: restored,
    now: scene.now,
    watch: {
      mail: { url: scene.mail.url, from: FROM },
      endpointsInside: true,
      secretKeys: SECRET_KEYS,
      lookEverySeconds: 1,
      firstPauseSeconds: 1,
      everyMs: 30,
    },
  });
  await scene.goTo('2026-01-28T12:20:00.000Z');
  await expect.poll(states, PATIENT).toEqual(['50 at sent', '50 planning sent']);
  await scene.goTo('2026-01-28T12:40:00.000Z');
  await expect.poll(async () => (await scene.view()).undelivered, PATIENT).toBe(0);
  expect(scene.mail.arrived).toHaveLength(1);
  expect(scene.endpoint.arrived).toHaveLength(2);
  expect(new Set(scene.endpoint.arrived.map(({ headers }) => headers['webhook-id'])).size).toBe(1);
});
