/** What somebody sends who writes requests by hand: bytes that no client sends, slowly, doubled, packed, or out of any range. */
import { randomUUID } from 'node:crypto';
import { connect } from 'node:net';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { Attempts } from '../support/attempts.js';
import { demoSecret, runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let attempts: Attempts;
let client: ApiClient;
let control: ApiClient;
let plane: string;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true, outside: { arrivesWithinMs: 2000 } });
  [client, control] = [await server.signIn('odrin'), await server.signIn('brask')];
  plane = (await client.get<Shapes['Fleet']>('/api/fleet')).aircraft[0]?.id ?? '';
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(() => server.stop());

/** Sends bytes as they are, some and then nothing. @returns everything that came back until the server hung up */
function bytes(...sent: (string | Buffer)[]): Promise<string> {
  const { hostname, port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    let text = '';
    const socket = connect(Number(port), hostname, () => sent.forEach((one) => socket.write(one)));
    socket.setEncoding('utf8').on('data', (part: string) => (text += part));
    socket.on('close', () => resolve(text)).on('error', reject);
  });
}

const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1]);

describe('a request that never arrives whole', () => {
  it.each([
    ['its headers', 'GET /api/fleet HTTP/1.1\r\nHost: x\r\nX-Slow: '],
    [
      'its body',
      'POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{',
    ],
    [
      'a part of a body in parts',
      'POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n5\r\n{"na',
    ],
  ])('is hung up on, and its connection is free again: %s', async (_, begun) => {
    expect([408, 400, Number.NaN]).toContain(statusOf(await bytes(begun)));
  });
});

describe('a request that says two things', () => {
  it.each([
    ['two lengths', 'POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}'],
    [
      'a length and parts',
      'POST /api/session HTTP/1.1\r\nHost: x\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    ],
    ['a line end in a header', 'GET /api/fleet HTTP/1.1\r\nHost: x\r\nX-A: a\nb: c\r\n\r\n'],
    ['a name for a host that is none', 'POST /api/sign-on HTTP/1.1\r\nHost: [::\r\nConnection: close\r\n\r\n'],
    ['a blank in the host', 'POST /api/session/passkey-challenge HTTP/1.1\r\nHost: a b\r\nConnection: close\r\n\r\n'],
  ])('is refused: %s', async (_, request) => {
    expect([400, 403, 404, 409, 422]).toContain(statusOf(await bytes(request)));
  });
});

describe('a body that was packed', () => {
  it.each(['gzip', 'deflate', 'br', 'identity, gzip'])('is not unpacked: %s', async (encoding) => {
    const bomb = gzipSync(Buffer.from(`{"name":"${'x'.repeat(20_000_000)}","secret":"x"}`));
    expect(bomb.length).toBeLessThan(64 * 1024);
    const head = `POST /api/session HTTP/1.1\r\nHost: x\r\nConnection: close\r\nContent-Type: application/json\r\nContent-Encoding: ${encoding}\r\nContent-Length: ${bomb.length}\r\n\r\n`;
    expect([400, 415]).toContain(statusOf(await bytes(head, bomb)));
  });
});

describe('an address with what no address holds', () => {
  it.each([
    ['GET', '/api/mel/revisions/a%00'],
    ['DELETE', '/api/passkeys/%00'],
    ['GET', '/api/problems/%00'],
    ['GET', '/api/calendar/%00.ics'],
    ['GET', '/api/aircraft/PLANE/entries?q=a%00b'],
    ['GET', '/api/aircraft/PLANE/entries?q%00=a'],
    ['GET', '/api/aircraft/PLANE/entries?q=a&q=b'],
    ['GET', '/api/aircraft/PLANE/entries?q[]=a&q[x]=b'],
  ])('is refused, and nothing fails inside: %s %s', async (method, path) => {
    const attempt = await attempts.refused(client, method, path.replace('PLANE', plane));
    expect(attempt.changed).toEqual([]);
    expect([400, 404, 422], attempt.detail).toContain(attempt.status);
  });
});

describe('a number out of any range', () => {
  const leg = (landings: string) =>
    `{"flight":"QOF 1","scheduledOn":"2026-01-15","from":"QXA","to":"QXB","ending":"arrived","offBlockAt":"2026-01-15T08:00:00Z","airborneAt":"2026-01-15T08:10:00Z","landedAt":"2026-01-15T09:00:00Z","onBlockAt":"2026-01-15T09:10:00Z","delays":[],"landings":${landings},"reason":"x"}`;
  const tell = (landings: string) => [`/api/aircraft/${plane}/legs`, { body: leg(landings) }] as const;

  it.each(['1e999', '-1e999', '1.5', '9007199254740993', '-1', '"1"', '[1]', 'null', 'true'])(
    'is not counted: %s',
    async (number) => {
      const attempt = await attempts.refused(control, 'POST', ...tell(number));
      expect(attempt, attempt.detail).toMatchObject({ status: 422, at: ['/landings'], changed: [] });
    },
  );

  it('is not even JSON where it is NaN, and one that is none of these is counted', async () => {
    expect((await attempts.refused(control, 'POST', ...tell('NaN'))).status).toBe(400);
    const counted = await control.send('POST', ...tell('1'));
    expect(counted.status, JSON.stringify(counted.body)).toBe(201);
    await attempts.changed();
  });

  it.each([
    '9999-12-31T23:59:59Z',
    '9999-12-31T23:59:59-23:59',
    '0000-01-01T00:00:00Z',
    '-000001-01-01T00:00:00Z',
    '+010000-01-01T00:00:00Z',
    '2026-01-15T24:00:00Z',
    '2026-01-15T12:00:60Z',
    '2026-02-30T12:00:00Z',
    '2026-01-15T12:00:00',
    '2026-01-15',
    '1768478400000',
  ])('is no time: %s', async (recordedAt) => {
    const body = { aircraft: plane, origin: 'technician', description: 'Light out.', recordedAt };
    const attempt = await attempts.refused(client, 'POST', '/api/defects', { body });
    expect(attempt).toMatchObject({ status: 422, changed: [] });
  });
});

it('the version that was seen is one number of one kind: no list, no sign, no fraction', async () => {
  const { defects } = await client.get<Shapes['DefectList']>('/api/defects');
  const path = `/api/defects/${defects[0]?.id}/identification`;
  const body = { entry: '73-33-11', units: ['1'] };
  for (const ifMatch of [
    '"1", "2"',
    '"2", *',
    '"+2"',
    '"2.0"',
    '"0x2"',
    '" 2"',
    '"2e0"',
    '""',
    '"-0"',
    '"9999999999999999"',
  ]) {
    const attempt = await attempts.refused(client, 'POST', path, { body, ifMatch });
    expect(attempt, ifMatch).toMatchObject({ status: 412, changed: [] });
  }
});

it('a second member of one name counts for nothing beside what is checked: the one that is read is the one that is judged', async () => {
  const two = `{"name":"odrin","secret":"${demoSecret()}","name":"nobody"}`;
  const headers = { 'idempotency-key': randomUUID() };
  const answer = await server.visitor().refused('POST', '/api/session', { body: two, headers });
  expect(answer).toMatchObject({ status: 401, code: 'sign-in-failed' });
});
