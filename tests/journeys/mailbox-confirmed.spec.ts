/** A mailbox gets nothing but a code before somebody who reads it has told that code. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { PATIENT, RemindersScene } from './reminders.scene.js';

const scene = new RemindersScene();
const BOX = 'somebody@engineers.example';
let id: string;
let item: Shapes['DefectLine'];

beforeAll(async () => {
  await scene.open();
  item = await scene.deferred('Q-ABA', '33-11-01');
  const body = { kind: 'email', address: BOX, label: 'at work' };
  id = (await scene.engineer.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', body)).body.address.id;
});

afterAll(() => scene.close());

const address = async () => (await scene.view()).addresses.find((one) => one.id === id);
const tell = (code: string, by = scene.engineer) =>
  by.send<Shapes['ReminderAddressConfirmed']>('POST', `/api/reminder-addresses/${id}/confirmation`, {
    body: { code },
  });
const refused = async (code: string) =>
  (await scene.engineer.refused('POST', `/api/reminder-addresses/${id}/confirmation`, { body: { code } })).code;
const another = () => scene.engineer.send('POST', `/api/reminder-addresses/${id}/code`, { body: {} });

describe('a mailbox that was entered', () => {
  it('gets a code, and no reminder, however much of an interval is gone', async () => {
    const code = await scene.codeSentTo(BOX);
    expect(code).toMatch(/^\d{4} \d{4}$/);
    await scene.goTo('2026-01-28T12:01:00.000Z');
    expect(await address()).toMatchObject({ confirmedAt: null, endedAt: null });
    expect(await scene.remindersOf(item.id)).toEqual([]);
  });

  it('takes no code that is wrong, nor the right one after five wrong ones, nor an older one', async () => {
    expect((await another()).status).toBe(200);
    const first = await scene.codeSentTo(BOX);
    const wrong = first.replace(/^./, (digit) => String((Number(digit) + 1) % 10));
    for (let tries = 0; tries < 5; tries += 1) expect(await refused(wrong)).toBe('code-not-right');
    expect(await refused(first)).toBe('no-code-to-tell');
    expect((await another()).status).toBe(200);
    const next = await scene.codeSentTo(BOX);
    if (next !== first) expect(await refused(first)).toBe('code-not-right');
    await scene.goTo('2026-01-29T12:03:00.000Z');
    expect(await refused(next)).toBe('no-code-to-tell');
    expect(await address()).toMatchObject({ confirmedAt: null, waitsForCode: false });
  });

  it('is nobody else’s to confirm', async () => {
    await another();
    const code = await scene.codeSentTo(BOX);
    expect((await tell(code, scene.technician)).status).toBe(404);
    expect((await tell(code)).body.address).toMatchObject({ confirmedAt: expect.any(String), codeSentAt: null });
    expect((await tell(code)).status).toBe(200);
  });

  it('is reminded from then on', async () => {
    await expect.poll(async () => (await scene.remindersOf(item.id)).length, PATIENT).toBeGreaterThan(0);
    await expect.poll(() => scene.mail.arrived.length, PATIENT).toBe(1);
    expect(scene.mail.arrived[0]?.to).toEqual([BOX]);
    expect((await scene.engineer.refused('POST', `/api/reminder-addresses/${id}/code`, { body: {} })).code).toBe(
      'no-code-to-tell',
    );
  });
});

it('no mailbox is sent more than five codes', async () => {
  const body = { kind: 'email', address: 'other@engineers.example', label: 'other' };
  const entered = await scene.engineer.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', body);
  const path = `/api/reminder-addresses/${entered.body.address.id}/code`;
  for (let asked = 1; asked < 5; asked += 1) {
    expect((await scene.engineer.send('POST', path, { body: {} })).status).toBe(200);
  }
  expect((await scene.engineer.refused('POST', path, { body: {} })).code).toBe('too-many-codes');
});

it('one that the mail server refuses for good is turned off with what it said', async () => {
  scene.mail.refuses.add('nobody@engineers.example');
  const body = { kind: 'email', address: 'nobody@engineers.example', label: 'gone' };
  const entered = await scene.engineer.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', body);
  const because = async () =>
    (await scene.view()).addresses.find((one) => one.id === entered.body.address.id)?.endedBecause;
  await expect.poll(because, PATIENT).toMatch(/refuses this mailbox: 550/);
});

it('nobody has this server write to a mailbox over and over by entering it anew, nor to many of them', async () => {
  const enter = (address: string, by = scene.engineer) =>
    by.send<Shapes['ReminderAddressEntered']>('POST', '/api/reminder-addresses', {
      body: { kind: 'email', address, label: 'x' },
    });
  const off = async ({ body }: Awaited<ReturnType<typeof enter>>, by = scene.engineer) =>
    void (await by.send('DELETE', `/api/reminder-addresses/${body.address.id}`));
  const victim = 'victim@elsewhere.example';
  for (const written of [victim, 'Victim@elsewhere.example', victim]) await off(await enter(written));
  for (const by of [scene.engineer, scene.technician]) expect((await enter(victim, by)).status).toBe(429);
  let entered = 0;
  while (entered < 30) {
    const made = await enter(`victim${entered}@elsewhere.example`, scene.technician);
    if (made.status === 429) break;
    entered += 1;
    await off(made, scene.technician);
  }
  expect(entered).toBe(20);
});
