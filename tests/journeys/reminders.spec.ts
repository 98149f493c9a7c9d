/**
 * Reminders told in order: what is noticed once reaches everybody who watches, by mail (read back by another reader) and
 * by signed message (Standard Webhooks, verified by its reference verifier; CloudEvents 1.0, from memory).
 */
import { Webhook } from 'standardwebhooks';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import type { MessageArrived } from '../support/endpoint.js';
import { withClient } from '../support/with-client.js';
import { PATIENT, RemindersScene } from './reminders.scene.js';

const scene = new RemindersScene();
let mailbox: Shapes['ReminderAddressEntered'];
let program: Shapes['ReminderAddressEntered'];
let item: Shapes['DefectLine'];

beforeAll(async () => {
  await scene.open();
  mailbox = await scene.add('email', 'sorra@engineers.example', { label: 'at work' });
  program = await scene.add('webhook', scene.endpoint.url, { label: 'planning', of: 'operator' });
  item = await scene.deferred('Q-ABA', '33-11-01');
});

afterAll(() => scene.close());

const mails = () => scene.mail.arrived.map(({ mail }) => mail);
const messages = () => scene.endpoint.arrived;
const event = (body: string) => JSON.parse(body) as Record<string, unknown> & { data: Record<string, unknown> };
const states = async (defect = item.id) => {
  const all = await scene.remindersOf(defect);
  return all.map(({ share, to, state }) => `${share} ${to.split(' ')[0]} ${state}`).toSorted();
};

describe('half of the interval is left', () => {
  it('and it is noticed then and not before, once for each address', async () => {
    await scene.goTo('2026-01-28T11:50:00.000Z');
    await scene.goTo('2026-01-28T12:00:00.000Z');
    await expect.poll(() => states(), PATIENT).toEqual(['50 at sent', '50 planning sent']);
    const noticed = (await scene.remindersOf(item.id)).map(({ noticedAt }) => noticedAt);
    expect(noticed.filter((at) => at < '2026-01-28T12:00')).toEqual([]);
  });

  it('by a mail that says what, how much, until when, and what it is not', () => {
    const [mail, ...more] = mails();
    expect(more).toEqual([]);
    expect(mail?.subject).toBe('[invented] Q-ABA/1 Reading light 33-11-01: 50 % left, last day 29 Jan 2026');
    expect(mail?.text).toContain('Deferred under MEL 33-11-01 row 1 (category B).');
    expect(mail?.text).toContain('To be rectified before 30 Jan 2026 00:00 UTC.');
    expect(mail?.text).toContain('this is the latest, not the plan');
    expect(mail?.text).toContain('never replaces, the approved MEL');
    expect(mail?.headers.get('auto-submitted')).toBe('auto-generated');
    expect(scene.mail.arrived[0]).toMatchObject({
      from: 'reminders@proviso.example',
      to: ['sorra@engineers.example'],
    });
  });

  it('by an event that the reference verifier accepts, and that names itself as the standard asks', async () => {
    const [message, ...more] = messages();
    expect(more).toEqual([]);
    const { headers = {}, body = '' } = message ?? {};
    expect(read(program.secret, message, '2026-01-28T12:02:00Z')).toEqual(event(body));
    expect(headers['content-type']).toBe('application/cloudevents+json; charset=utf-8');
    expect(event(body)).toMatchObject({
      specversion: '1.0',
      id: headers['webhook-id'],
      source: '/operators/QPR/deferrals',
      type: 'proviso.deferral.share-reached',
      subject: item.id,
      datacontenttype: 'application/json',
      data: { number: 'Q-ABA/1', share: 50, leftPercent: 50, lastDay: '2026-01-29', endsAt: '2026-01-30T00:00:00Z' },
    });
    const reminders = await scene.remindersOf(item.id);
    expect(reminders.map(({ id }) => id)).toContain(headers['webhook-id']);
    const ids = mails().map(({ messageId }) => messageId);
    expect(ids).toEqual(
      reminders.filter(({ to }) => to.startsWith('at work')).map(({ id }) => `<${id}@proviso.example>`),
    );
  });
});

describe('an attempt in vain', () => {
  it('is repeated after a growing pause under the same id, and shown as not delivered meanwhile', async () => {
    scene.mail.answers.push(451, 451);
    scene.endpoint.answers.push({ status: 500 }, { status: 302, headers: { location: 'http://127.0.0.1:1/' } });
    const [mailsBefore, messagesBefore] = [mails().length, messages().length];
    await scene.goTo('2026-01-29T06:00:00.000Z');
    await expect.poll(async () => (await scene.view()).undelivered, PATIENT).toBe(2);
    await expect
      .poll(() => states(), PATIENT)
      .toEqual(['25 at sent', '25 planning sent', '50 at sent', '50 planning sent']);
    const tries = scene.mail.arrived.slice(mailsBefore);
    expect(tries.map(({ accepted }) => accepted)).toEqual([false, false, true]);
    expect(new Set(tries.map(({ mail }) => mail.messageId)).size).toBe(1);
    expect(new Set(tries.map(({ mail }) => mail.text)).size).toBe(1);
    const repeats = messages().slice(messagesBefore);
    expect(repeats).toHaveLength(3);
    expect(new Set(repeats.map(({ headers }) => headers['webhook-id'])).size).toBe(1);
    expect(new Set(repeats.map(({ body }) => body)).size).toBe(1);
    const pauses = repeats.slice(1).map(({ at }, index) => at - (repeats[index]?.at ?? 0));
    expect(pauses[0]).toBeGreaterThanOrEqual(900);
    expect(pauses[1]).toBeGreaterThanOrEqual(1900);
    const words = (await scene.remindersOf(item.id)).map((one) => one.words);
    expect(words.filter((one) => one === 'Handed over at the 3rd attempt.')).toHaveLength(2);
  });

  it('is not repeated before the endpoint asked for it', async () => {
    scene.endpoint.answers.push({ status: 429, headers: { 'retry-after': '600' } });
    await scene.goTo('2026-01-29T17:00:00.000Z');
    await expect.poll(() => states(), PATIENT).toContain('10 planning not delivered');
    const [waits] = (await scene.remindersOf(item.id)).filter(({ state }) => state === 'not delivered');
    expect(waits?.words).toBe('Tried once. The endpoint answered 429.');
    expect(Date.parse(waits?.nextAt ?? '') - Date.parse(waits?.triedAt ?? '')).toBeGreaterThanOrEqual(600_000);
  });
});

describe('what was reached while nobody looked', () => {
  let other: Shapes['DefectLine'];

  it('is told once, for the smallest share; the larger ones are passed over and stay to be seen', async () => {
    const onlyOne = { label: 'wrong', aircraft: scene.airline.aircraft['Q-ABB'] };
    await scene.add('email', 'nobody@engineers.example', onlyOne);
    scene.mail.refuses.add('nobody@engineers.example');
    other = await scene.deferred('Q-ABB', '33-11-01');
    await scene.goTo('2026-02-02T00:00:00.000Z');
    await expect.poll(() => states(other.id), PATIENT).toContain('0 at sent');
    const atWork = (await states(other.id)).filter((one) => one.includes(' at '));
    expect(atWork).toEqual(['0 at sent', '10 at passed over', '25 at passed over', '50 at passed over']);
    const told = mails().filter(({ subject }) => subject?.includes('Q-ABB/1'));
    expect(told.map(({ subject }) => subject)).toEqual([
      '[invented] Q-ABB/1 Reading light 33-11-01: its interval is over, last day 1 Feb 2026',
    ]);
  });

  it('to a mailbox that the mail server refuses for good is tried once and shown as refused', async () => {
    await expect.poll(() => states(other.id), PATIENT).toContain('0 wrong refused');
    const [refused] = (await scene.remindersOf(other.id)).filter(({ state }) => state === 'refused');
    expect(refused?.words).toMatch(/^The mail server refuses this mailbox: 550/);
    expect((await scene.remindersOf(item.id)).filter(({ to }) => to.startsWith('wrong'))).toEqual([]);
  });

  it('of an interval in flights is told when they were flown', async () => {
    const flights = await scene.deferred('Q-ABA', '33-11-03');
    await scene.flown('Q-ABA', '2026-02-02T09:00:00.000Z', '2026-02-02T11:00:00.000Z');
    await scene.goTo('2026-02-02T13:00:00.000Z');
    await expect.poll(() => states(flights.id), PATIENT).toContain('50 at sent');
    const told = mails().filter(({ subject }) => subject?.includes('Q-ABA/2'));
    expect(told.map(({ subject }) => subject)).toEqual(['[invented] Q-ABA/2 Reading light 33-11-03: 50 % left']);
    expect(told[0]?.text).toContain('What is left: 2 of 4 flights left.');
  });
});

describe('an endpoint', () => {
  let slow: Shapes['DefectLine'];
  const messageAt = (share: number) =>
    messages().find(({ body }) => event(body).subject === slow.id && event(body).data['share'] === share);

  it('gets a second secret: both sign for a day, and a reader of either is right', async () => {
    await change('reminderShares', ['90 %', '75 %', '50 %', 'at the end']);
    slow = await scene.deferred('Q-ABB', '33-11-02');
    await scene.goTo('2026-02-03T22:00:00.000Z');
    const address = `/api/reminder-addresses/${program.address.id}/secret`;
    const renewed = await scene.engineer.post<Shapes['ReminderAddressEntered']>(address, {});
    expect(renewed.body.address.twoSecretsUntil).toMatch(/^2026-02-04T22:00/);
    await scene.goTo('2026-02-04T00:00:00.000Z');
    await expect.poll(() => states(slow.id), PATIENT).toContain('90 planning sent');
    const message = messageAt(90);
    for (const secret of [program.secret, renewed.body.secret]) {
      expect(read(secret, message, '2026-02-04T00:02:00Z')).toMatchObject({ subject: slow.id });
      expect(() => read(secret, message, '2026-02-04T00:10:00Z')).toThrow('Message timestamp too old');
    }
    program = { ...renewed.body, address: { ...renewed.body.address, label: program.secret ?? '' } };
  });

  it('and after that day the new one signs alone', async () => {
    await scene.goTo('2026-02-05T12:00:00.000Z');
    await expect.poll(() => states(slow.id), PATIENT).toContain('75 planning sent');
    expect(read(program.secret, messageAt(75), '2026-02-05T12:02:00Z')).toMatchObject({ subject: slow.id });
    const former = program.address.label;
    expect(() => read(former, messageAt(75), '2026-02-05T12:02:00Z')).toThrow('No matching signature found');
  });

  it('that answers 410 is turned off for good', async () => {
    scene.endpoint.answers.push({ status: 410 });
    const before = messages().length;
    await scene.goTo('2026-02-08T00:00:00.000Z');
    const address = async () => (await scene.view()).addresses.find(({ id }) => id === program.address.id);
    await expect.poll(async () => (await address())?.endedBecause, PATIENT).toMatch(/answered 410: it is gone/);
    expect(await states(slow.id)).toContain('50 planning refused');
    expect(messages()).toHaveLength(before + 1);
  });
});

describe('a reminder is no longer sent', () => {
  it('once its item was closed, or its address turned off', async () => {
    const one = await scene.deferred('Q-ABC', '33-11-01');
    const second = await scene.add('email', 'planning@engineers.example', { label: 'second', of: 'operator' });
    scene.mail.answers.push(...Array.from({ length: 100 }, () => 451));
    await scene.goTo('2026-02-10T12:00:00.000Z');
    await expect
      .poll(() => states(one.id), PATIENT)
      .toEqual([
        '50 at not delivered',
        '50 second not delivered',
        '75 at passed over',
        '75 second passed over',
        '90 at passed over',
        '90 second passed over',
      ]);
    await scene.engineer.send('DELETE', `/api/reminder-addresses/${mailbox.address.id}`);
    await expect.poll(() => states(one.id), PATIENT).toContain('50 at dropped');
    await scene.closed(one.id);
    await expect.poll(() => states(one.id), PATIENT).toContain('50 second dropped');
    scene.mail.answers.length = 0;
    const words = (await scene.remindersOf(one.id)).filter(({ state }) => state === 'dropped').map((r) => r.words);
    expect(words.toSorted()).toEqual([
      'Its address is no longer in use: turned off',
      'The item was closed before it could be sent.',
    ]);
    expect(second.secret).toBeNull();
  });
});

describe('an address', () => {
  const entering = { kind: 'webhook', label: 'x', address: 'https://example.org/reminders' };

  it('is refused where it is none, or where this person may not enter it', async () => {
    const refused = (body: object, by = scene.technician) =>
      by.refused('POST', '/api/reminder-addresses', { body: { ...entering, ...body } });
    for (const address of ['file:///etc/passwd', 'ftp://example.org/', 'https://a:b@example.org/', 'no address']) {
      expect(await refused({ address })).toMatchObject({ code: 'invalid-input', errors: [{ pointer: '/address' }] });
    }
    for (const address of ['nobody', 'a@b', 'a@b.example, c@d.example', 'a@b.example\r\nBcc: c@d.example']) {
      expect((await refused({ kind: 'email', address })).code).toBe('invalid-input');
    }
    expect((await refused({ of: 'operator' })).code).toBe('role-missing');
    expect((await refused({ aircraft: scene.airline.operator })).code).toBe('not-found');
    expect((await refused({ kind: 'pigeon' })).code).toBe('invalid-input');
  });

  it('tells its secret once; what is kept of the answer does not hold it', async () => {
    const key = 'the-address-of-a-program';
    const send = () =>
      scene.engineer.post<Shapes['ReminderAddressEntered']>('/api/reminder-addresses', entering, { key });
    const [first, again] = [(await send()).body, (await send()).body];
    expect(first.secret).toMatch(/^whsec_[A-Za-z0-9+/]{43}=$/);
    expect(again).toEqual({ ...first, secret: null });
    expect(JSON.stringify(await scene.view())).not.toContain((first.secret ?? 'none').slice(6));
  });

  it('lies in the database with a secret that nobody reads there, the one before it too', async () => {
    const { rows } = await withClient(scene.server.database.adminUrl, (client) =>
      client.query<{ secret: string; former_secret: string | null }>(
        "select secret, former_secret from reminder_address where kind = 'webhook'",
      ),
    );
    const stored = rows.flatMap(({ secret, former_secret: former }) => [
      secret,
      ...(former === null ? [] : [former]),
    ]);
    expect(stored.length).toBeGreaterThan(2);
    expect(stored.filter((one) => !one.startsWith('sealed:1:'))).toEqual([]);
  });

  it('of a person is seen and turned off by that person or an administrator; of the operator by those who watch', async () => {
    const own = await scene.add('email', 'yorvin@apron.example', {}, scene.technician);
    expect((await scene.view()).addresses.map(({ id }) => id)).not.toContain(own.address.id);
    const path = `/api/reminder-addresses/${own.address.id}`;
    expect((await scene.engineer.refused('DELETE', path)).code).toBe('not-found');
    expect((await scene.view(scene.administrator)).addresses.map(({ id }) => id)).toContain(own.address.id);
    const ended = await scene.administrator.send<Shapes['ReminderAddressEnded']>('DELETE', path);
    expect(ended.body.address).toMatchObject({ endedBecause: 'turned off', mine: false });
    const seen = (await scene.view(scene.technician)).addresses;
    expect(seen.find(({ label }) => label === 'second')).toMatchObject({ forAll: true, mayEnd: false });
  });

  it('is one of at most twenty of a person', async () => {
    const add = () => scene.technician.send('POST', '/api/reminder-addresses', { body: entering });
    for (let made = 0; made < 20; made += 1) expect((await add()).status).toBe(201);
    const refused = await scene.technician.refused('POST', '/api/reminder-addresses', { body: entering });
    expect(refused.code).toBe('too-many-addresses');
  });
});

/** As a reader of messages does it at that moment, with the reference verifier. */
function read(secret: string | null | undefined, message: MessageArrived | undefined, at: string): unknown {
  vi.useFakeTimers({ toFake: ['Date'], now: Date.parse(at) });
  try {
    return new Webhook(secret ?? '').verify(message?.body ?? '', message?.headers ?? {});
  } finally {
    vi.useRealTimers();
  }
}

async function change(key: string, value: unknown): Promise<void> {
  const { etag } = await scene.administrator.send('GET', '/api/settings');
  const changes = [{ key, value, reason: 'asked for by planning' }];
  await scene.administrator.put('/api/settings', { changes }, { ifMatch: etag });
}
