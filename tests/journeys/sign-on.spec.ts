/**
 * Coming in by a sign-on of somebody else, tried against a real OpenID provider: authorization code with PKCE, state and
 * nonce (OpenID Connect Core 1.0; RFC 7636; RFC 9700: FROM MEMORY). Linked are issuer and subject, by the person alone.
 */
import { generateKeyPairSync } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { demoSecret } from '../support/running-server.js';
import { type Forgery, SignOnProvider } from '../support/sign-on-provider.js';
import { SignatureScene, WORK } from './signatures-scene.js';

const ORIGIN = 'https://proviso.example';
const REDIRECT = `${ORIGIN}/api/sign-on/callback`;
let provider: SignOnProvider;
let scene: SignatureScene;

beforeAll(async () => {
  const clients = ['proviso', 'another-client'].map((id) => ({ id, redirect: REDIRECT }));
  provider = await SignOnProvider.start(clients);
  const signOn = {
    name: 'Staff sign-on',
    issuer: provider.issuer,
    clientId: 'proviso',
    clientSecret: 'secret of proviso',
    fetch: provider.fetch,
  };
  const now = () => new Date().toISOString();
  scene = await SignatureScene.begin(now, ['odrin', 'wick'], { publicUrl: ORIGIN, signOn });
});

afterEach(() => {
  provider.forgery = null;
});

afterAll(async () => {
  await scene.server.stop();
  await provider.stop();
});

type Begun = Shapes['SignOnBegun'];

/** What the browser does with the answer of the provider. @returns where it ends */
async function arrive(client: ApiClient, returned: string): Promise<string> {
  const { pathname, search } = new URL(returned);
  const response = await client.page(`${pathname}${search}`, {}, 'manual');
  expect(response.status).toBe(303);
  return response.headers.get('location') ?? '';
}

async function begin(client: ApiClient): Promise<string> {
  return (await client.post<Begun>('/api/sign-on', {})).body.address;
}

/** One whole sign-on. @returns where the browser ends, and whom the session is of */
async function signOn(account: string): Promise<{ place: string; name: string | null }> {
  const client = scene.server.visitor();
  provider.account = account;
  const place = await arrive(client, await provider.walk(await begin(client)));
  const { status, body } = await client.send<Shapes['SessionView']>('GET', '/api/session');
  return { place, name: status === 200 ? body.person.name : null };
}

const refusedAs = (code: string) => ({ place: `/signed-on?problem=${code}`, name: null });

async function link(client: ApiClient, account: string): Promise<string> {
  const { statement } = await client.get<Shapes['SignOn']>('/api/sign-on');
  provider.account = account;
  const { body } = await client.post<Begun>('/api/sign-on/link', { secret: demoSecret(), statement });
  return arrive(client, await provider.walk(body.address));
}

describe('an account at the sign-on', () => {
  it('opens nothing before it is linked, and enters nobody', async () => {
    const before = await scene.count('person');
    expect(await signOn('account-of-odrin')).toEqual(refusedAs('sign-on-unlinked'));
    expect(await scene.count('person')).toBe(before);
  });

  it('is linked by somebody who proves to be that person, once', async () => {
    const client = scene.person('odrin');
    const { statement } = await client.get<Shapes['SignOn']>('/api/sign-on');
    const wrong = { body: { secret: 'guess', statement } };
    expect(await client.refused('POST', '/api/sign-on/link', wrong)).toMatchObject({ code: 'secret-wrong' });
    expect(await link(client, 'account-of-odrin')).toBe('/signed-on');
    expect(await link(scene.person('wick'), 'account-of-odrin')).toBe('/signed-on?problem=sign-on-taken');
  });

  it('lets its person in, and no account that looks like it', async () => {
    expect(await signOn('account-of-odrin')).toEqual({ place: '/', name: 'Odrin Vask' });
    for (const account of ['Account-of-odrin', 'account-of-odrin ', 'odrin', 'odrin@proviso.example']) {
      expect(await signOn(account), account).toEqual(refusedAs('sign-on-unlinked'));
    }
  });
});

describe('an answer of the sign-on', () => {
  const other = generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey;
  const past = (claims: { iat: number }) => ({ exp: claims.iat - 600, iat: claims.iat - 1200 });
  it.each<[string, Forgery]>([
    ['with another nonce', () => ({ claims: { nonce: 'another' } })],
    ['of another client', () => ({ claims: { aud: 'another-client' } })],
    ['of another issuer', () => ({ claims: { iss: 'http://127.0.0.1:1' } })],
    ['that has run out', (claims) => ({ claims: past(claims) })],
    ['signed with another key', () => ({ key: other })],
    ['that says it needs no signature', () => ({ header: { alg: 'none' } })],
    ['signed with what is no key of the provider', () => ({ header: { alg: 'HS256' } })],
    ['about somebody else, unsigned', ({ nonce }) => ({ raw: unsigned({ nonce, sub: 'account-of-odrin' }) })],
  ])('opens nothing when it is one %s', async (_, forgery) => {
    provider.forgery = forgery;
    expect(await signOn('account-of-odrin')).toEqual(refusedAs('sign-on-failed'));
  });

  it('lets in when it passes through the same hands unchanged', async () => {
    provider.forgery = () => ({});
    expect(await signOn('account-of-odrin')).toEqual({ place: '/', name: 'Odrin Vask' });
  });

  it('opens nothing when it is the token of an earlier sign-on', async () => {
    await signOn('account-of-odrin');
    const raw = provider.lastToken;
    provider.forgery = () => ({ raw });
    expect(await signOn('account-of-odrin')).toEqual(refusedAs('sign-on-failed'));
  });

  it('opens nothing under another state, and a second time', async () => {
    provider.account = 'account-of-odrin';
    const client = scene.server.visitor();
    const returned = new URL(await provider.walk(await begin(client)));
    const kept = client.cookie;
    const crossed = new URL(returned);
    crossed.searchParams.set('state', 'another');
    expect(await arrive(client, crossed.href)).toBe('/signed-on?problem=sign-on-failed');
    client.cookie = kept;
    expect(await arrive(client, returned.href)).toBe('/signed-on?problem=challenge-over');
  });

  it('opens nothing in a browser that did not begin it, so that nobody is let into the session of another', async () => {
    provider.account = 'account-of-odrin';
    const attacker = scene.server.visitor();
    const returned = await provider.walk(await begin(attacker));
    const victim = scene.server.visitor();
    expect(await arrive(victim, returned)).toBe('/signed-on?problem=challenge-over');
    await begin(victim);
    expect(await arrive(victim, returned)).toBe('/signed-on?problem=sign-on-failed');
    expect(await victim.refused('GET', '/api/session')).toMatchObject({ status: 401 });
  });
});

describe('a signature after a fresh sign-on', () => {
  let defect: string;
  let client: ApiClient;

  beforeAll(async () => {
    defect = await scene.written();
    client = await scene.server.signIn('odrin');
  });

  async function signedOn(statement: string, account = 'account-of-odrin'): Promise<string> {
    provider.account = account;
    const { body } = await client.post<Begun>('/api/sign-on/signature', { statement });
    expect(Object.fromEntries(new URL(body.address).searchParams)).toMatchObject({ max_age: '0', prompt: 'login' });
    return arrive(client, await provider.walk(body.address));
  }

  const attempt = async (id: string, statement: string) =>
    client.send<Shapes['ActDone']>('POST', `/api/defects/${defect}/rectification`, {
      ifMatch: await client.seen(defect),
      body: { ...WORK, sign: { signedOn: id, statement } },
    });

  it('E-17: stands as such, bound to the statement, with when and where the signer signed on', async () => {
    const { statement } = await client.signature(defect, { act: 'rectify' });
    const place = await signedOn(statement);
    const id = place.replace('/signed-on?id=', '');
    expect((await attempt(id, statement)).status).toBe(200);
    expect((await attempt(id, statement)).status).toBe(403);
    expect(await scene.newest('odrin')).toMatchObject({
      method: 'single-sign-on',
      evidence: expect.stringMatching(new RegExp(`^session .*, sign-on ${provider.issuer} at 20..-..-..T`)),
    });
  });

  it('is refused for another statement, for another account, and for a sign-on from before', async () => {
    const { statement } = await client.signature(defect, { act: 'rectify' });
    const forAnother = (await signedOn('I looked at it.')).replace('/signed-on?id=', '');
    expect((await attempt(forAnother, statement)).status).toBe(403);
    expect(await signedOn(statement, 'account-of-nobody')).toBe('/signed-on?problem=sign-on-unlinked');
    await link(scene.person('wick'), 'account-of-wick');
    expect(await signedOn(statement, 'account-of-wick')).toBe('/signed-on?problem=sign-on-failed');
    provider.forgery = ({ auth_time = 0 }) => ({ claims: { auth_time: auth_time - 20 } });
    expect(await signedOn(statement)).toBe('/signed-on?problem=sign-on-failed');
  });

  it('is how somebody without a secret of their own releases', async () => {
    await scene.tamper("delete from credential where sign_in_name = 'odrin' returning 1", []);
    client = scene.server.visitor();
    provider.account = 'account-of-odrin';
    await arrive(client, await provider.walk(await begin(client)));
    const { means } = await client.get<Shapes['SessionView']>('/api/session');
    expect(means).toEqual({ first: false, secret: false, passkey: false, signOn: 'Staff sign-on' });
    const { statement } = await client.signature(defect, { act: 'release' });
    const body = { sign: { secret: demoSecret(), statement } };
    const path = `/api/defects/${defect}/release`;
    const ifMatch = await client.seen(defect);
    expect(await client.refused('POST', path, { ifMatch, body })).toMatchObject({ code: 'secret-wrong' });
    const id = (await signedOn(statement)).replace('/signed-on?id=', '');
    const restored = await signedAfter('restore', 'restoration', { reference: 'K-AMM 33-42-11' });
    expect(restored).toBe(200);
    expect((await client.send('POST', path, { ifMatch, body: { sign: { signedOn: id, statement } } })).status).toBe(
      412,
    );
    const all = { toolsAccounted: true, panelsClosed: true, registerChecked: true };
    expect(await signedAfter('verify', 'verification', all)).toBe(200);
    expect(await signedAfter('release', 'release', {})).toBe(200);
  });

  async function signedAfter(act: string, last: string, body: object): Promise<number> {
    const { statement } = await client.signature(defect, { act });
    const id = (await signedOn(statement)).replace('/signed-on?id=', '');
    const ifMatch = await client.seen(defect);
    const sending = { ifMatch, body: { ...body, sign: { signedOn: id, statement } } };
    return (await client.send('POST', `/api/defects/${defect}/${last}`, sending)).status;
  }
});

function unsigned(claims: object): string {
  const part = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
  return `${part({ alg: 'none' })}.${part(claims)}.`;
}
