/** Who comes in, how long they stay, and what a thief or a guesser gets. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { demoSecret, runningServer, type RunningServer } from '../support/running-server.js';

const START = '2026-01-15T12:00:00.000Z';
let clock = START;
let server: RunningServer;

const later = (minutes: number): string => new Date(Date.parse(clock) + minutes * 60_000).toISOString();
const tries = (name: string, secret: string) =>
  server.visitor().send<Shapes['Problem']>('POST', '/api/session', { body: { name, secret } });
const isIn = async (client: ApiClient): Promise<boolean> => (await client.send('GET', '/api/session')).status === 200;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
});

afterAll(() => server.stop());

describe('a guesser', () => {
  it('learns nothing from the answer: no such name and a wrong secret read the same', async () => {
    const [nobody, wrong] = [await tries('nobody', 'x'), await tries('wenna', 'x')];
    expect(nobody.status).toBe(401);
    expect(wrong.body).toEqual(nobody.body);
  });

  it('is locked out after five wrong secrets, the right one included, and the name is free after five minutes', async () => {
    for (let n = 1; n <= 5; n += 1) expect((await tries('jorik', `guess ${n}`)).status).toBe(401);
    const locked = await tries('jorik', demoSecret());
    expect({ status: locked.status, type: locked.body.type }).toEqual({
      status: 429,
      type: '/api/problems/sign-in-locked',
    });
    expect(locked.body.lockedUntil).toBe('2026-01-15T12:05:00.000Z');
    clock = '2026-01-15T12:04:59.999Z';
    expect((await tries('jorik', demoSecret())).status).toBe(429);
    clock = '2026-01-15T12:05:00.000Z';
    expect((await tries('jorik', demoSecret())).status).toBe(204);
    for (let n = 1; n <= 4; n += 1) expect((await tries('jorik', `guess ${n}`)).status).toBe(401);
    expect((await tries('jorik', demoSecret())).status).toBe(204);
  });

  it.each([
    ['a name that somebody has', 'mabbet'],
    ['a name that nobody has', 'mabbett'],
  ])('gains nothing by asking at once: of thirty together exactly five are looked at, for %s', async (_, name) => {
    const thirty = Array.from({ length: 30 }, (__, n) => tries(name, `guess ${n}`));
    // The first that is turned away says that the name is locked, while others are still on their way.
    const turnedAway = thirty.map(async (one) =>
      (await one).status === 429 ? 'locked' : Promise.reject(new Error()),
    );
    await Promise.any(turnedAway);
    expect((await tries(name, demoSecret())).body.type).toBe('/api/problems/sign-in-locked');
    const statuses = (await Promise.all(thirty)).map(({ status }) => status);
    expect(statuses.toSorted((one, other) => one - other)).toEqual([
      ...Array<number>(5).fill(401),
      ...Array<number>(25).fill(429),
    ]);
  });

  it('who sits at an open session is locked out by wrong secrets under signatures too', async () => {
    const { client, id, attempt } = await atTheGate();
    for (let n = 1; n <= 5; n += 1) expect((await attempt(`guess ${n}`)).code).toBe('secret-wrong');
    expect((await attempt(demoSecret())).code).toBe('sign-in-locked');
    expect((await tries('odrin', demoSecret())).status).toBe(429);
    clock = later(5);
    const done = await client.sign(id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    expect(done.defect.state).toBe('open under deferral');
  });

  it('who sits at an open session gains nothing by signing at once', async () => {
    const { client, id } = await atTheGate();
    const ifMatch = await client.seen(id);
    const sign = await client.signature(id, { act: 'procedure', work: '73-33-11/1/m' });
    const codes = await Promise.all(
      Array.from({ length: 30 }, async (_, n) => {
        const body = { work: '73-33-11/1/m', doneAt: clock, leaves: [], sign: { ...sign, secret: `guess ${n}` } };
        return (await client.refused('POST', `/api/defects/${id}/procedures`, { ifMatch, body })).code;
      }),
    );
    expect(codes.toSorted()).toEqual([
      ...Array<string>(5).fill('secret-wrong'),
      ...Array<string>(25).fill('sign-in-locked'),
    ]);
    clock = later(5);
  });

  it('who repeats a signed request under its key, but without the secret, is not told how it was answered', async () => {
    const { client, id } = await atTheGate();
    const sign = await client.signature(id, { act: 'placard' });
    const body = { text: 'VALVE INOP', where: 'overhead', tag: 'P-1' };
    const sending = { ifMatch: await client.seen(id), key: randomUUID() };
    const address = `/api/defects/${id}/placard`;
    const first = await client.post<Shapes['ActDone']>(address, { ...body, sign }, sending);
    const wrong = { ...sending, body: { ...body, sign: { ...sign, secret: 'guess' } } };
    expect((await client.refused('POST', address, wrong)).code).toBe('secret-wrong');
    const again = await client.post<Shapes['ActDone']>(address, { ...body, sign }, sending);
    expect(again.body).toEqual(first.body);
  });
});

/** Odrin at the gate, with a defect that can be deferred or is. */
async function atTheGate() {
  const client = await server.signIn('odrin');
  const { defects } = await client.get<Shapes['DefectList']>('/api/defects');
  const { id, state } = defects.find(({ number }) => number === 'Q-KEB/1') as Shapes['DefectLine'];
  if (state !== 'open under deferral') {
    const item = { entry: '73-33-11', units: ['1'] };
    await client.post(`/api/defects/${id}/identification`, item, { ifMatch: await client.seen(id) });
  }
  const attempt = async (secret: string) => {
    const sign = await client.signature(id, { act: 'defer', row: '1' });
    const body = { row: '1', sign: { ...sign, secret } };
    return client.refused('POST', `/api/defects/${id}/deferral`, { ifMatch: await client.seen(id), body });
  };
  return { client, id, attempt };
}

describe('a session', () => {
  it('travels in a cookie that no script and no other site can use', async () => {
    const { headers } = await tries('hebba', demoSecret());
    const [cookie = ''] = headers.getSetCookie();
    expect(cookie).toMatch(/^proviso_session=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
  });

  it('ends at sign-out, that one alone', async () => {
    const [one, other] = [await server.signIn('hebba'), await server.signIn('hebba')];
    const token = one.cookie;
    expect((await one.send('DELETE', '/api/session')).status).toBe(204);
    expect(one.cookie).toBe('');
    one.cookie = token;
    expect(await one.refused('GET', '/api/fleet')).toMatchObject({ status: 401, code: 'not-signed-in' });
    expect(await isIn(other)).toBe(true);
  });

  it('ends after twelve hours', async () => {
    const client = await server.signIn('hebba');
    const begun = clock;
    clock = new Date(Date.parse(begun) + 12 * 3_600_000 - 1).toISOString();
    expect(await isIn(client)).toBe(true);
    clock = new Date(Date.parse(begun) + 12 * 3_600_000).toISOString();
    expect(await isIn(client)).toBe(false);
    clock = begun;
  });

  it('of somebody with two operators opens nothing before one is chosen', async () => {
    const client = await server.signIn('ilva');
    const { operator, operators } = await client.get<Shapes['SessionView']>('/api/session');
    expect({ operator, codes: operators.map(({ code }) => code) }).toEqual({ operator: null, codes: ['QOF', 'QSB'] });
    expect(await client.refused('GET', '/api/fleet')).toMatchObject({ status: 409, code: 'no-operator-chosen' });
  });

  it('gets a new token at the choice, so that a token seen before it opens nothing after it', async () => {
    const client = await server.signIn('ilva');
    const thief = server.visitor();
    thief.cookie = client.cookie;
    const { operators } = await client.get<Shapes['SessionView']>('/api/session');
    await client.put('/api/session/operator', { operator: operators[0]?.id });
    expect(client.cookie).not.toBe(thief.cookie);
    expect(await isIn(client)).toBe(true);
    expect(await thief.refused('GET', '/api/session')).toMatchObject({ status: 401, code: 'not-signed-in' });
    const before = client.cookie;
    await client.put('/api/session/operator', { operator: operators[1]?.id });
    expect(client.cookie).not.toBe(before);
  });

  it('is not for an operator that one does not work for', async () => {
    const client = await server.signIn('hebba');
    const visitor = await server.signIn('kesh');
    const { operator } = await visitor.get<Shapes['SessionView']>('/api/session');
    const body = { operator: operator?.id };
    expect(await client.refused('PUT', '/api/session/operator', { body })).toMatchObject({ status: 403 });
    expect((await client.get<Shapes['SessionView']>('/api/session')).operator?.code).toBe('QOF');
  });

  it('of somebody who left shows nothing from that moment on', async () => {
    const client = await server.signIn('ulla');
    const { person, operator } = await client.get<Shapes['SessionView']>('/api/session');
    await server.store.withOperator(operator?.id ?? '', null, async (tx) => {
      const member = await tx.people.member(person.id);
      await tx.people.changeMembership(person.id, member?.version ?? 0, { validUntil: clock });
    });
    expect(await client.refused('GET', '/api/fleet')).toMatchObject({ status: 403, code: 'role-missing' });
  });
});

describe('a secret', () => {
  const change = (client: ApiClient, secret: string, fresh: string) =>
    client.send<Shapes['Problem']>('PUT', '/api/session/secret', { body: { secret, fresh } });

  it('is changed by somebody who has the old one, and ends every other session', async () => {
    const [one, other] = [await server.signIn('sennet'), await server.signIn('sennet')];
    expect((await change(one, 'guess', 'willow basket harbour')).body.type).toBe('/api/problems/secret-wrong');
    const weak = await change(one, demoSecret(), 'sennet-sennet');
    expect(weak.body.errors).toMatchObject([{ pointer: '/fresh' }]);
    expect((await change(one, demoSecret(), demoSecret())).status).toBe(422);
    const before = one.cookie;
    expect((await change(one, demoSecret(), 'willow basket harbour')).status).toBe(204);
    expect(one.cookie).not.toBe(before);
    expect((await one.send('GET', '/api/fleet')).status).toBe(200);
    expect((await other.send('GET', '/api/session')).status).toBe(401);
    expect((await tries('sennet', demoSecret())).status).toBe(401);
    expect((await tries('sennet', 'willow basket harbour')).status).toBe(204);
  });
});

it('an address that asks too often waits, and is told so', async () => {
  const slow = await runningServer({ demo: true, requestsPerMinute: 200 });
  const visitor = slow.visitor();
  const statuses: number[] = [];
  // Each time another name, so that no name is locked.
  const ask = (n: number) => visitor.send('POST', '/api/session', { body: { name: `nobody ${n}`, secret: 'x' } });
  for (let n = 0; n < 12; n += 1) statuses.push((await ask(n)).status);
  expect(statuses).toEqual([...Array<number>(10).fill(401), 429, 429]);
  const { headers } = await ask(12);
  expect(Number(headers.get('retry-after'))).toBeGreaterThan(0);
  const elsewhere = async () => (await visitor.send('GET', '/api/problems')).status;
  expect(await elsewhere()).toBe(200);
  let status = 200;
  for (let n = 0; n < 220 && status === 200; n += 1) status = await elsewhere();
  expect(status).toBe(429);
  await slow.stop();
});
