/**
 * Attempts in vain are recorded and logged, and told to the owner of the name: on the next page and by mail. Never the
 * secret, and never a name that nobody has: people enter their secret there by mistake. OWASP ASVS 4.0.3, 2.2.3 and 7.2.1
 * (FROM MEMORY).
 */
import { Writable } from 'node:stream';
import { pino } from 'pino';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { mailServer, type MailServer } from '../support/mail-server.js';
import { demoSecret, runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';

const GUESS = 'a guess that is wrong';
const NOBODY = 'secret-typed-as-name';
let clock = '2026-01-15T12:00:00.000Z';
let log = '';
let server: RunningServer;
let mail: MailServer;

beforeAll(async () => {
  mail = await mailServer();
  const logger = pino(new Writable({ write: (chunk, _, done) => ((log += String(chunk)), done()) }));
  const watch = {
    mail: { url: mail.url, from: 'Proviso <proviso@proviso.invalid>' },
    endpointsInside: false,
    everyMs: 30,
  };
  server = await runningServer({ now: () => clock, demo: true, logger, watch });
});

afterAll(async () => {
  await server.stop();
  await mail.stop();
});

const tries = async (name: string, secret: string): Promise<number> =>
  (await server.visitor().send('POST', '/api/session', { body: { name, secret } })).status;

interface Told {
  what: string;
  who: string | null;
  payload: { person: string; lockedUntil: string | null };
}

async function recorded(): Promise<Told[]> {
  return withClient(server.database.adminUrl, async (client) => {
    const { rows } = await client.query<{ text: string }>(
      `select convert_from(canonical, 'UTF8') as text from record_entry where what = 'sign-in.failed' order by seq`,
    );
    return rows.map(({ text }) => JSON.parse(text) as Told);
  });
}

async function until<T>(read: () => Promise<T[]> | T[], many: number): Promise<T[]> {
  for (;;) {
    const found = await read();
    if (found.length >= many) return found;
    await new Promise((go) => setTimeout(go, 20));
  }
}

it('a wrong secret under a name that somebody has is recorded by reference, without the secret', async () => {
  expect(await tries('odrin', GUESS)).toBe(401);
  const [told] = await until(recorded, 1);
  expect(told).toMatchObject({ who: null, payload: { lockedUntil: null } });
  expect(told?.payload.person).toMatch(/^[0-9a-f]{64}$/);
  expect(JSON.stringify(told)).not.toContain(GUESS);
});

it('a name that nobody has is logged, and neither the name nor the secret', async () => {
  const before = (await recorded()).length;
  expect(await tries(NOBODY, GUESS)).toBe(401);
  expect(log).toContain('An attempt to sign in under a name that nobody has.');
  for (const text of [NOBODY, GUESS]) expect(log).not.toContain(text);
  expect((await recorded()).length).toBe(before);
});

it('its owner is told at the next sign-in, how often, until it is seen', async () => {
  const owner = await server.signIn('odrin');
  const told = async () => (await owner.get<{ failedAttempts: number }>('/api/session')).failedAttempts;
  expect(await told()).toBe(1);
  expect(await tries('odrin', GUESS)).toBe(401);
  await server.signIn('odrin');
  expect(await told()).toBe(2);
  const other = await server.signIn('brask');
  expect((await other.get<{ failedAttempts: number }>('/api/session')).failedAttempts).toBe(0);
  await other.send('DELETE', '/api/session/failed-attempts');
  expect(await told()).toBe(2);
  expect((await owner.send('DELETE', '/api/session/failed-attempts')).status).toBe(204);
  expect(await told()).toBe(0);
});

it('when the name is locked its owner gets a mail, and one only', async () => {
  const owner = await server.signIn('odrin');
  const entered = { kind: 'email', address: 'odrin@proviso.invalid', label: 'at work' };
  const { body } = await owner.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', entered);
  const [asked] = await until(() => mail.arrived, 1);
  const code = /\d{4} \d{4}/.exec(asked?.mail.text ?? '')?.[0];
  await owner.post(`/api/reminder-addresses/${body.address.id}/confirmation`, { code });
  for (let n = 1; n <= 5; n += 1) await tries('odrin', `${GUESS} ${n}`);
  expect(await tries('odrin', demoSecret())).toBe(429);
  const [, arrived] = await until(() => mail.arrived, 2);
  expect(arrived?.to).toEqual(['odrin@proviso.invalid']);
  expect(arrived?.mail.subject).toBe('Your name is locked after attempts to sign in');
  expect(arrived?.mail.text).toContain('locked until 2026-01-15T12:05:00.000Z');
  expect(arrived?.mail.text).not.toContain(GUESS);
  clock = '2026-01-15T12:06:00.000Z';
  await server.signIn('odrin');
  expect(mail.arrived).toHaveLength(2);
  expect((await recorded()).at(-1)?.payload.lockedUntil).toBe('2026-01-15T12:05:00.000Z');
});
