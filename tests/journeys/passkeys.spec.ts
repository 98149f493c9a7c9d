/**
 * Passkeys: made by somebody who proved to be that person, used to sign in and under signatures, and removed (WebAuthn
 * level 3). Each thing that a thief could send instead is refused, and nothing is signed.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { demoSecret } from '../support/running-server.js';
import { type Asked, type Lies, SoftAuthenticator } from '../support/soft-authenticator.js';
import { SignatureScene, WORK } from './signatures-scene.js';

const ORIGIN = 'https://proviso.example';
let clock = '2026-01-15T12:12:00.000Z';
let scene: SignatureScene;
let defect: string;
let key: SoftAuthenticator;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'wick'], { publicUrl: ORIGIN });
  defect = await scene.written();
});

afterAll(() => scene.server.stop());

const passkeysOf = (client: ApiClient) => client.get<Shapes['Passkeys']>('/api/passkeys');

async function added(client: ApiClient, label: string, lies: Lies = {}): Promise<SoftAuthenticator> {
  const { statement } = await passkeysOf(client);
  const made = new SoftAuthenticator(ORIGIN);
  const { body } = await client.post<Asked>('/api/passkeys/challenge', { secret: demoSecret(), statement });
  await client.post('/api/passkeys', { label, passkey: made.create(body, lies) });
  return made;
}

/** Signs the work with a passkey; `lies` are told by the authenticator. */
async function signing(client: ApiClient, by: SoftAuthenticator, lies: Lies = {}, more: object = {}) {
  const { statement } = await client.signature(defect, { act: 'rectify' });
  const { body: asked } = await client.post<Asked>('/api/passkeys/signature', { statement });
  const body = { ...WORK, sign: { statement, passkey: by.get(asked, lies), ...more } };
  return { body, ifMatch: await client.seen(defect) };
}

/** Far beyond what was counted so far, so that it is the lie alone that is refused. */
const FAR: Lies = { counter: 100 };

const address = (): string => `/api/defects/${defect}/rectification`;

async function refused(by: SoftAuthenticator, lies: Lies = {}, more: object = {}): Promise<string> {
  const before = await scene.count('signature');
  const client = scene.person('odrin');
  const { code } = await client.refused('POST', address(), await signing(client, by, lies, more));
  expect(await scene.count('signature')).toBe(before);
  return code;
}

describe('a passkey', () => {
  it('is added by somebody who proves anew to be that person, not by whoever sits at the open session', async () => {
    const client = scene.person('odrin');
    const { statement } = await passkeysOf(client);
    const attempt = (body: object) => client.refused('POST', '/api/passkeys/challenge', { body });
    expect(await attempt({ secret: 'guess', statement })).toMatchObject({ code: 'secret-wrong' });
    expect(await attempt({ statement })).toMatchObject({ code: 'invalid-input' });
    expect(await attempt({ secret: demoSecret(), statement: 'x' })).toMatchObject({ code: 'statement-not-shown' });
    key = await added(client, 'telephone');
    expect((await passkeysOf(client)).passkeys).toMatchObject([{ label: 'telephone', createdAt: clock }]);
    expect((await client.get<Shapes['SessionView']>('/api/session')).means.passkey).toBe(true);
  });

  it.each<[string, Lies]>([
    ['made at another site', { origin: 'https://proviso.example.attacker.example' }],
    ['made for another name', { rpId: 'attacker.example' }],
    ['made without looking who holds it', { unverified: true }],
    ['made for another challenge', { challenge: 'AAAA' }],
    ['that signs in instead of being made', { type: 'webauthn.get' }],
  ])('is not one that was %s', async (_, lies) => {
    await expect(added(scene.person('wick'), 'x', lies)).rejects.toThrow(/passkey-wrong/);
    expect((await passkeysOf(scene.person('wick'))).passkeys).toEqual([]);
  });

  it('signs somebody in who gives no name, each time by a fresh challenge', async () => {
    const visitor = scene.server.visitor();
    const { body: asked } = await visitor.post<Asked>('/api/session/passkey-challenge', {});
    const answer = key.get(asked);
    await visitor.post('/api/session/passkey', answer);
    expect(await visitor.get('/api/session')).toMatchObject({ person: { name: 'Odrin Vask' } });
    const thief = scene.server.visitor();
    expect(await thief.refused('POST', '/api/session/passkey', { body: answer })).toMatchObject({
      code: 'challenge-over',
    });
    const stranger = new SoftAuthenticator(ORIGIN);
    const { body: again } = await thief.post<Asked>('/api/session/passkey-challenge', {});
    expect(await thief.refused('POST', '/api/session/passkey', { body: stranger.get(again) })).toMatchObject({
      code: 'passkey-wrong',
    });
  });
});

describe('a signature by passkey', () => {
  it('E-17: stands as such, and leads back to the session and the passkey', async () => {
    const client = scene.person('odrin');
    const { body, ifMatch } = await signing(client, key);
    const done = await client.post<Shapes['ActDone']>(address(), body, { ifMatch });
    expect(done.body.signed).toMatchObject({ by: 'Odrin Vask', method: 'passkey' });
    const [{ id } = { id: '' }] = (await passkeysOf(client)).passkeys;
    expect(await scene.newest('odrin')).toMatchObject({
      method: 'passkey',
      evidence: expect.stringMatching(new RegExp(`^session .*, passkey ${id}$`)),
      verifies: true,
    });
  });

  it.each<[string, Lies]>([
    ['given at another site', { origin: 'https://attacker.example' }],
    ['given for another name', { rpId: 'attacker.example' }],
    ['given without looking who holds it', { unverified: true }],
    ['over another challenge', { challenge: Buffer.alloc(32).toString('base64url') }],
    ['of a copy whose counter stood still', { counter: 1 }],
  ])('is refused when %s', async (_, lies) => {
    expect(await refused(key, { ...FAR, ...lies })).toBe('passkey-wrong');
  });

  it('is refused with the passkey of somebody else, and with one that nobody holds', async () => {
    const other = await added(scene.person('wick'), 'key ring');
    expect(await refused(other)).toBe('passkey-wrong');
    expect(await refused(new SoftAuthenticator(ORIGIN))).toBe('passkey-wrong');
  });

  it('is bound to the statement that was shown, and good once', async () => {
    const client = scene.person('odrin');
    const { statement } = await client.signature(defect, { act: 'rectify' });
    const { body: forAnother } = await client.post<Asked>('/api/passkeys/signature', { statement: 'I looked.' });
    const ifMatch = await client.seen(defect);
    const crossed = { ...WORK, sign: { statement, passkey: key.get(forAnother, { counter: 201 }) } };
    expect(await client.refused('POST', address(), { ifMatch, body: crossed })).toMatchObject({
      code: 'challenge-over',
    });
    const { body } = await signing(client, key, { counter: 202 });
    await client.post(address(), body, { ifMatch });
    expect(await client.refused('POST', address(), { ifMatch: await client.seen(defect), body })).toMatchObject({
      code: 'challenge-over',
    });
  });

  it('is bound to the session it was asked for in, and to five minutes', async () => {
    const client = scene.person('odrin');
    const { body, ifMatch } = await signing(client, key, { counter: 301 });
    const elsewhere = await scene.server.signIn('odrin');
    expect(await elsewhere.refused('POST', address(), { ifMatch, body })).toMatchObject({ code: 'challenge-over' });
    const late = await signing(client, key, { counter: 302 });
    clock = new Date(Date.parse(clock) + 5 * 60_000).toISOString();
    expect(await client.refused('POST', address(), late)).toMatchObject({ code: 'challenge-over' });
  });

  it('needs one proof, and only one', async () => {
    expect(await refused(key, { counter: 401 }, { secret: demoSecret() })).toBe('invalid-input');
  });

  it('is answered as before when it is sent again under its key with a fresh touch', async () => {
    const client = scene.person('odrin');
    const sending = { key: 'the-same-request-twice', ifMatch: await client.seen(defect) };
    const first = await signing(client, key, { counter: 501 });
    const done = await client.post<Shapes['ActDone']>(address(), first.body, sending);
    const again = await signing(client, key, { counter: 502 });
    expect((await client.post<Shapes['ActDone']>(address(), again.body, sending)).body).toEqual(done.body);
  });
});

describe('several passkeys', () => {
  it('are held by one person, and one is removed without the others', async () => {
    const client = scene.person('odrin');
    const second = await added(client, 'key ring');
    const { passkeys } = await passkeysOf(client);
    expect(passkeys.map(({ label }) => label)).toEqual(['telephone', 'key ring']);
    const ofAnother = (await passkeysOf(scene.person('wick'))).passkeys[0]?.id ?? '';
    expect(await client.refused('DELETE', `/api/passkeys/${ofAnother}`)).toMatchObject({ status: 404 });
    await client.send('DELETE', `/api/passkeys/${passkeys[0]?.id}`);
    expect(await refused(key, { counter: 601 })).toBe('passkey-wrong');
    const { body, ifMatch } = await signing(client, second);
    expect((await client.post<Shapes['ActDone']>(address(), body, { ifMatch })).body.signed?.method).toBe('passkey');
  });
});
