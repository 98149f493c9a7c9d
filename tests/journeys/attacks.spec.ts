/**
 * What somebody who means harm tries over HTTP: each is tried, and does nothing. Reading another operator's data by id
 * stands in two-operators.spec.ts, guessing secrets in sign-in.spec.ts, bodies that no client sends in bad-requests.spec.ts,
 * alterations under a signature in signatures.spec.ts. Ids in
 * capitals, names and locks stand in attacks-on-people.spec.ts, odd bytes in attacks-on-the-wire.spec.ts.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, mkdir, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { Attempts } from '../support/attempts.js';
import { EventReader } from '../support/event-reader.js';
import { demoSecret, runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let attempts: Attempts;
let folder: string;
let ours: ApiClient;
let theirs: ApiClient;
let technician: ApiClient;
let plane: string;
let theirPlane: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'proviso-attacks-'));
  await mkdir(join(folder, 'pages'));
  await writeFile(join(folder, 'pages', 'index.html'), '<!doctype html><title>pages</title>');
  await writeFile(join(folder, 'hidden.txt'), 'hidden');
  server = await runningServer({ now: () => clock, demo: true, pages: join(folder, 'pages') });
  [ours, theirs, technician] = [
    await server.signIn('wenna'),
    await server.signIn('kesh'),
    await server.signIn('odrin'),
  ];
  const first = async (client: ApiClient) => (await client.get<Shapes['Fleet']>('/api/fleet')).aircraft[0]?.id ?? '';
  [plane, theirPlane] = [await first(ours), await first(theirs)];
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(async () => {
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

const writeUp = (description = 'Left landing light out.') => ({
  aircraft: plane,
  origin: 'technician',
  description,
  recordedAt: clock,
});

describe("another operator's data", () => {
  it('is in no export', async () => {
    const own = JSON.stringify(await ours.get(`/api/aircraft/${plane}/history.json`));
    for (const trace of ['Q-SBA', 'QSB', 'Sallowby', theirPlane]) expect(own).not.toContain(trace);
    const exports = ['history.json', 'history.pdf'].map((name) => `/api/aircraft/${theirPlane}/${name}`);
    for (const path of [...exports, `/api/record?aircraft=${theirPlane}`]) {
      expect(await ours.refused('GET', path), path).toMatchObject({ status: 404 });
    }
    const { entries } = await theirs.get<Shapes['RecordEntries']>(`/api/record?aircraft=${theirPlane}`);
    expect(await ours.refused('GET', `/api/record/proof?entry=${entries[0]?.id}`)).toMatchObject({
      status: expect.toSatisfy((status: number) => status === 404 || status === 422),
    });
  });

  it('is in no calendar whose address was turned to it', async () => {
    const feed = await technician.post<Shapes['CalendarFeedMade']>('/api/calendar-feeds', { label: 'telephone' });
    const address = new URL(feed.body.address ?? '', server.url).pathname;
    const [operator, other] = await Promise.all(
      [technician, theirs].map(
        async (client) => (await client.get<Shapes['SessionView']>('/api/session')).operator?.id,
      ),
    );
    const token = /\/([^/]+)\.ics$/.exec(address)?.[1] ?? '';
    const bytes = Buffer.from(token, 'base64url');
    const [id, id2] = [operator, other].map((one) => Buffer.from((one ?? '').replaceAll('-', ''), 'hex'));
    const at = bytes.indexOf(id ?? '');
    const turned = at < 0 ? token.replace(operator ?? '', other ?? '') : swapped(bytes, at, id2 ?? Buffer.alloc(0));
    expect(turned).not.toBe(token);
    expect((await technician.page(address)).status).toBe(200);
    expect((await technician.page(address.replace(token, turned))).status).toBe(404);
  });

  it('is told in no stream of events, whatever number it is asked from', async () => {
    // They follow first: what is followed is looked for once for all who follow, and must not be the same for both.
    const other = new EventReader(await theirs.page('/api/events'));
    await other.next();
    const reader = new EventReader(await ours.page('/api/events', { 'last-event-id': '0' }));
    await reader.next();
    const { size } = await ours.get<Shapes['RecordHead']>('/api/record/head');
    await theirs.post('/api/defects', { ...writeUp(), aircraft: theirPlane });
    await technician.post('/api/defects', writeUp('The last that is told.'));
    const seen = new Set<unknown>();
    for (let last = 0; last <= size && !seen.has(theirPlane);) {
      const { id, data } = await reader.next();
      seen.add(data['aircraft']);
      if (id > last) last = id;
    }
    expect(seen).toContain(plane);
    await Promise.all([reader.close(), other.close()]);
    expect(seen).not.toContain(theirPlane);
  });
});

function swapped(bytes: Buffer, at: number, other: Buffer): string {
  const copy = Buffer.from(bytes);
  other.copy(copy, at);
  return copy.toString('base64url');
}

describe('a forged or replayed request', () => {
  it.each([
    ['a token that was never given', () => `proviso_session=${'A'.repeat(43)}`],
    ['SQL in place of a token', () => `proviso_session=' or true --`],
    ['two tokens, the first one wrong', () => `proviso_session=x; ${technician.cookie}`],
  ])('is nobody: %s', async (_, cookie) => {
    const answer = await raw('GET', '/api/fleet', { cookie: cookie() });
    expect(answer.status).toBe(401);
  });

  it('under the token of a session that ended is nobody', async () => {
    const client = await server.signIn('odrin');
    const token = client.cookie;
    await client.send('DELETE', '/api/session');
    client.cookie = token;
    expect(await client.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
  });

  it('does nothing twice, sent again as it was caught', async () => {
    const sending = { key: randomUUID() };
    const first = await technician.post<Shapes['ActDone']>('/api/defects', writeUp(), sending);
    await attempts.changed();
    const again = await technician.post<Shapes['ActDone']>('/api/defects', writeUp(), sending);
    expect(again.body).toEqual(first.body);
    expect(await attempts.changed()).toEqual([]);
  });
});

describe('a stolen Idempotency-Key', () => {
  it('gives nobody else the answer that was kept, nor keeps the owner from it', async () => {
    const sending = { key: randomUUID() };
    const first = await technician.post<Shapes['ActDone']>('/api/defects', writeUp('Seen by odrin alone.'), sending);
    const thief = await server.signIn('tamsel');
    const taken = await thief.post<Shapes['ActDone']>('/api/defects', writeUp('Seen by odrin alone.'), sending);
    expect(taken.body.defect.id).not.toBe(first.body.defect.id);
    const again = await technician.post<Shapes['ActDone']>('/api/defects', writeUp('Seen by odrin alone.'), sending);
    expect(again.body).toEqual(first.body);
  });
});

describe('a request from the page of another site', () => {
  it.each([
    ['another Origin', { origin: 'https://attacker.example' }],
    ['an Origin that is hidden', { origin: 'null' }],
    ['an Origin that begins like ours', { origin: 'http://127.0.0.1.attacker.example' }],
    ['Sec-Fetch-Site: cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['Sec-Fetch-Site: same-site', { 'sec-fetch-site': 'same-site' }],
  ])('is refused: %s', async (_, headers) => {
    await attempts.changed();
    const attempt = await attempts.refused(technician, 'POST', '/api/defects', { body: writeUp(), headers });
    expect(attempt).toMatchObject({ status: 403, code: 'foreign-origin', changed: [] });
    const signIn = { body: { name: 'odrin', secret: demoSecret() }, headers };
    expect(await server.visitor().refused('POST', '/api/session', signIn)).toMatchObject({ status: 403 });
  });

  it('is refused as a form, and another site is allowed to read nothing', async () => {
    for (const type of ['application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'text/plain']) {
      const headers = { 'content-type': type, cookie: technician.cookie, 'idempotency-key': randomUUID() };
      expect((await raw('POST', '/api/defects', headers, JSON.stringify(writeUp()))).status, type).toBe(415);
    }
    const asks = { origin: 'https://attacker.example', 'access-control-request-method': 'POST' };
    const preflight = await raw('OPTIONS', '/api/defects', asks);
    const read = await raw('GET', '/api/fleet', { ...asks, cookie: technician.cookie });
    for (const { headers } of [preflight, read]) {
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
    }
    expect(read.headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(read.headers['x-frame-options'] ?? read.headers['content-security-policy']).toMatch(
      /SAMEORIGIN|DENY|none/,
    );
  });
});

describe('session fixation', () => {
  it('fails: signing in and choosing an operator each give a fresh token, and none that was brought is taken', async () => {
    const brought = 'proviso_session=chosen-by-the-attacker';
    const victim = server.visitor();
    victim.cookie = brought;
    await victim.signIn('ilva');
    const [signedIn, attacker] = [victim.cookie, server.visitor()];
    expect(signedIn).not.toBe(brought);
    await victim.put('/api/session/operator', {
      operator: (await victim.get<Shapes['SessionView']>('/api/session')).operators[0]?.id,
    });
    expect(victim.cookie).not.toBe(signedIn);
    for (const cookie of [brought, signedIn]) {
      attacker.cookie = cookie;
      expect(await attacker.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    }
  });

  it('fails with a session of the attacker that the victim is led into: what was begun there signs for nobody else', async () => {
    const led = await server.signIn('tamsel');
    const { body } = await led.post<Shapes['ActDone']>('/api/defects', writeUp());
    const sign = await led.signature(body.defect.id, { act: 'no-fault-found' });
    const answer = { words: 'Lamp good.', reference: 'K-AMM 33', sign };
    const ifMatch = await led.seen(body.defect.id);
    const done = await led.post<Shapes['ActDone']>(`/api/defects/${body.defect.id}/no-fault-found`, answer, {
      ifMatch,
    });
    expect(done.body.signed).toMatchObject({ by: 'Tamsel Quorry' });
  });
});

describe('an escape from the folder of the pages', () => {
  it.each([
    '/../hidden.txt',
    '/%2e%2e/hidden.txt',
    '/..%2fhidden.txt',
    '/..%5chidden.txt',
    '/%252e%252e/hidden.txt',
    '/....//hidden.txt',
    '/index.html/../../hidden.txt',
    '//etc/passwd',
    '/hidden.txt%00.html',
  ])('leads nowhere: %s', async (path) => {
    const { status, text } = await raw('GET', path, {});
    expect(text).not.toContain('hidden\n');
    expect(text).not.toBe('hidden');
    expect(text).not.toContain('root:');
    expect([200, 400, 403, 404]).toContain(status);
    if (status === 200) expect(text).toContain('<title>pages</title>');
  });

  it.each(['..%2f..%2fetc%2fpasswd', '%00', '..', 'history.json%2f..'])('is no id: %s', async (id) => {
    for (const path of [`/api/aircraft/${id}/history.json`, `/api/defects/${id}`, `/api/calendar/${id}.ics`]) {
      const { status } = await raw('GET', path, { cookie: ours.cookie });
      expect([400, 404], path).toContain(status);
    }
  });
});

describe('what is left behind', () => {
  it('is nothing that a browser or a proxy keeps, and no answer says what the server is made of', async () => {
    for (const path of ['/api/fleet', '/api/session', `/api/aircraft/${plane}`, '/api/passkeys']) {
      const { headers } = await technician.page(path);
      expect(headers.get('cache-control'), path).toBe('no-store');
      for (const name of ['server', 'x-powered-by']) expect(headers.get(name), path).toBeNull();
    }
    expect((await technician.page('/api/fleet')).headers.get('strict-transport-security')).toContain('max-age');
  });

  it('is a cookie that travels over TLS alone, where the pages are opened by it', async () => {
    const other = await runningServer({ demo: true, outside: { publicUrl: 'https://proviso.example' } });
    const body = { name: 'odrin', secret: demoSecret() };
    const { headers } = await other.visitor().send('POST', '/api/session', { body });
    expect(headers.getSetCookie()[0]).toMatch(/; HttpOnly; Secure; SameSite=Strict$/);
    await other.stop();
  });
});

describe('a body that is too large or nested too deep', () => {
  const deep = `${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`;
  it.each([
    ['/api/session', () => server.visitor()],
    ['/api/session/passkey', () => server.visitor()],
    ['/api/sign-on/signature', () => technician],
    ['/api/passkeys/signature', () => technician],
    ['/api/passkeys', () => technician],
  ])('is refused before anything reads it, by somebody unknown too: %s', async (path, client) => {
    const body = (value: string) => `{"challenge":"${randomUUID()}","response":${value}}`;
    const nested = await client().refused('POST', path, { body: body(deep) });
    expect(nested).toMatchObject({ status: 422, code: 'invalid-input' });
    expect(nested.detail).toContain('nested deeper');
    const large = await client().refused('POST', path, { body: body(JSON.stringify('x'.repeat(70_000))) });
    expect(large).toMatchObject({ status: 413 });
  });
});

/** Sends what no client library would: the path as it is written. */
function raw(
  method: string,
  path: string,
  headers: Record<string, string>,
  body = '',
): Promise<{ status: number; headers: Record<string, unknown>; text: string }> {
  const { hostname, port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, method, path, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    sent.on('error', reject).end(body);
  });
}
