/**
 * Two servers as two processes on one database and one mail server, and one of them is killed while it sends. What was
 * noticed is sent all the same, and nothing twice but what the killed one had at hand, under the same Message-ID.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newId } from '#store';
import { mailServer, type MailServer } from '../support/mail-server.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type ServerProcess, serverProcess } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';
import { anAirline } from './an-airline.js';
import { FROM, MEL } from './reminders.scene.js';
import type { Shapes } from '../support/api-client.js';

const ITEMS = 4;
const MAILBOXES = 20;
/** How many one server has at hand at once. */
const AT_HAND = 4;
const PATIENCE = { interval: 100, timeout: 90_000 };

let database: FreshDatabase;
let mail: MailServer;
let servers: ServerProcess[] = [];

beforeAll(async () => {
  database = await freshDatabase();
  mail = await mailServer({ delayMs: 40 });
  await deferredLongAgo();
  const env = { SMTP_URL: mail.url, MAIL_FROM: FROM, LOOK_EVERY_SECONDS: '1', LEASE_SECONDS: '8' };
  servers = await Promise.all([1, 2].map(() => serverProcess({ databaseUrl: database.ownerUrl, env })));
});

afterAll(async () => {
  await Promise.all(servers.map((server) => server.stop()));
  await mail.stop();
  await database.drop();
});

/** Items whose interval is over by now, and mailboxes that watch them. */
async function deferredLongAgo(): Promise<void> {
  let clock = '2026-02-02T08:00:00.000Z';
  const server = await runningServer({ database, now: () => clock });
  const { operator, aircraft } = await anAirline(server, {
    code: 'QPT',
    base: 'UTC',
    aircraftType: 'Ambrel',
    settings: { preset: 'easa', combinationNeedsAcceptance: false },
    people: [
      { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
      { signIn: 'yorvin', name: 'Yorvin Tesk', roles: ['technician'], privileges: ['write-up', 'defer'] },
    ],
    aircraft: Array.from({ length: ITEMS }, (_, n) => `Q-AB${n}`),
  });
  await (await server.signIn('ullo')).post('/api/mel', { file: 'ambrel.yaml', text: MEL('Operator QPT') });
  const technician = await server.signIn('yorvin');
  for (const on of Object.values(aircraft)) {
    const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: on,
      origin: 'crew',
      description: 'Light does not come on.',
      recordedAt: clock,
      item: { entry: '33-11-01', units: ['1'] },
    });
    await technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  }
  await server.store.withOperator(operator, null, async (tx) => {
    const [member] = await tx.people.members();
    for (let n = 0; n < MAILBOXES; n += 1) {
      const to = { kind: 'email' as const, address: `box-${n}@engineers.example`, label: `box ${n}` };
      const address = { ...to, confirmedAt: clock };
      await tx.reminderAddresses.add({ id: newId(), personId: member?.personId ?? '', ...address, createdAt: clock });
    }
  });
  clock = '2026-02-02T08:00:01.000Z';
  await server.stop();
}

async function sent(): Promise<string[]> {
  return withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>("select id from reminder where state = 'sent'");
    return rows.map(({ id }) => `<${id}@proviso.example>`);
  });
}

it('every reminder is sent, and none twice but what the killed server had at hand', async () => {
  const all = ITEMS * MAILBOXES;
  await expect.poll(() => mail.arrived.length, PATIENCE).toBeGreaterThan(all / 4);
  await servers.shift()?.kill();
  const before = new Set(await sent());
  expect(before.size).toBeLessThan(all);
  await expect.poll(async () => (await sent()).length, PATIENCE).toBe(all);

  const times = new Map<string, number>();
  const texts = new Map<string, Set<string>>();
  for (const { mail: one, to } of mail.arrived) {
    const id = one.messageId ?? 'none';
    times.set(id, (times.get(id) ?? 0) + 1);
    texts.set(id, (texts.get(id) ?? new Set()).add(`${to.join()} ${one.subject} ${one.text}`));
  }
  expect([...times.keys()].toSorted()).toEqual((await sent()).toSorted());
  const twice = [...times].filter(([, count]) => count > 1);
  expect(twice.length).toBeLessThanOrEqual(AT_HAND);
  expect(twice.filter(([id, count]) => count > 2 || before.has(id))).toEqual([]);
  expect([...texts.values()].every((said) => said.size === 1)).toBe(true);
});
