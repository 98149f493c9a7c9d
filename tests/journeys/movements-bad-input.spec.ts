/** What no honest sender of movements sends, or not in this way: refused clearly, with nothing half-stored. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { movementsOperator, type MovementsOperator, nameAt, rowsStored, SECRET } from './movements-operator.js';

const clock = '2026-05-14T18:00:00.000Z';
let server: RunningServer;
let operator: MovementsOperator;
let neighbour: MovementsOperator;
let dispatcher: ApiClient;

const NOON = '2026-05-14T12:00:00Z';

type Received = Shapes['MovementsReceived'];

const stored = () => rowsStored(server.store, operator);
const tray = async () => (await dispatcher.get<Shapes['MovementTray']>('/api/movements/tray')).entries;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  operator = await movementsOperator(server, { code: 'QT', marks: ['Q-TAB', 'Q-TAD'] });
  neighbour = await movementsOperator(server, { code: 'QU', marks: ['Q-UAA'] });
  dispatcher = await server.signIn(nameAt('QT', 'dispatcher'));
});

afterAll(() => server.stop());

describe('hostile and mistaken input', () => {
  const plain = { 'content-type': 'text/plain' };
  const message = 'MVT\nQT20/14.QTAB.QXA\nAD1600/1610';

  it('envelope, control characters and line ends of a teleprinter are read through and kept', async () => {
    const text = `\u0001QU QXAOWQT\r.QXBOWQT 141611\r\n\u0002${message.replaceAll('\n', '\r\r\n')}\u0007 \r\n\u0003`;
    const { body } = await dispatcher.post<Received>('/api/movements', text, { headers: plain });
    expect(body.messages).toMatchObject([{ state: 'read', flight: 'QT20', text: message }]);
    const kept = await server.store.withOperator(operator.id, null, (tx) =>
      tx.movements.delivery(body.delivery ?? ''),
    );
    expect(kept).toMatchObject({ text, cameBy: 'text' });
  });

  it.each([
    ['a text of one megabyte', `${message}\nSI ${'X'.repeat(1024 * 1024)}`, plain, 413, 'body-too-large'],
    ['the same as JSON', { text: 'M'.repeat(1024 * 1024) }, {}, 413, 'body-too-large'],
    ['a NUL character', `${message}\u0000`, plain, 422, 'invalid-input'],
    ['a blank text', ' \r\n\u0003', plain, 422, 'invalid-input'],
    ['no text', {}, {}, 422, 'invalid-input'],
    ['a text that is a number', { text: 7 }, {}, 422, 'invalid-input'],
    ['a list', [{ text: message }], {}, 422, 'invalid-input'],
    ['a key that nobody knows', { text: message, aircraft: 'x' }, {}, 422, 'invalid-input'],
    ['a receipt that is no instant', { text: message, receivedAt: 'yesterday' }, {}, 422, 'invalid-input'],
    [
      'a receipt that has not come yet',
      { text: message, receivedAt: '2026-05-15T00:00:00Z' },
      {},
      422,
      'invalid-input',
    ],
    [
      'more messages than are taken at once',
      Array.from({ length: 1001 }, (_, n) => `x${n}\n\n`).join(''),
      plain,
      422,
      'invalid-input',
    ],
    ['another kind of body', message, { 'content-type': 'application/xml' }, 415, 'unsupported-media-type'],
    ['a form', 'text=MVT', { 'content-type': 'application/x-www-form-urlencoded' }, 415, 'unsupported-media-type'],
  ] as const)('%s is refused and nothing is stored', async (_, body, headers, status, code) => {
    const before = await stored();
    const refusal = await dispatcher.refused('POST', '/api/movements', { body, headers });
    expect({ status: refusal.status, code: refusal.code }).toEqual({ status, code });
    expect(await stored()).toEqual(before);
  });

  it('a receipt in the future inside the text goes to the tray', async () => {
    const text = 'RECEIVED 2027-01-01T00:00:00Z\nMVT\nQT21/01.QTAB.QXA\nAD0000';
    const { tray: opened, legs } = (await dispatcher.post<Received>('/api/movements', { text })).body;
    expect(opened).toMatchObject([{ reason: 'receipt-in-future' }]);
    expect(legs).toEqual([]);
  });

  it('plain text is taken at this one address', async () => {
    const refusal = await dispatcher.refused('POST', '/api/defects', { body: 'text', headers: plain });
    expect(refusal).toMatchObject({ status: 415, code: 'unsupported-media-type' });
  });

  it('needs an Idempotency-Key, and is done once under it', async () => {
    const path = '/api/movements';
    const missing = await dispatcher.refused('POST', path, { body: message, headers: plain, key: null });
    expect(missing.code).toBe('idempotency-key-missing');
    const key = 'one-and-the-same-key';
    const text = 'MVT\nQT22/14.QTAD.QXC\nED142200';
    const first = await dispatcher.post<Received>(path, text, { headers: plain, key });
    const second = await dispatcher.post<Received>(path, text, { headers: plain, key });
    expect(second.body).toEqual(first.body);
    const other = await dispatcher.refused('POST', path, { body: `${text}9`, headers: plain, key });
    expect(other.code).toBe('idempotency-key-reused');
  });

  it.each(['technician', 'commander', 'mel-engineer'] as const)(
    'a %s may read the tray and not send',
    async (role) => {
      const person = await server.signIn(nameAt('QT', role));
      const refusal = await person.refused('POST', '/api/movements', { body: message, headers: plain });
      expect(refusal).toMatchObject({ status: 403, code: 'role-missing' });
      const { entries } = await person.get<Shapes['MovementTray']>('/api/movements/tray');
      const body = { reason: 'mine' };
      const mending = await person.refused('POST', `/api/movements/tray/${entries[0]?.id}/mended`, { body });
      expect(mending.code).toBe('role-missing');
    },
  );

  it('somebody who is not signed in sees nothing', async () => {
    const refusal = await server.visitor().refused('GET', '/api/movements/tray');
    expect(refusal).toMatchObject({ status: 401, code: 'not-signed-in' });
  });

  it('the tray of another operator cannot be mended', async () => {
    const other = await server.signIn(nameAt('QU', 'dispatcher'));
    const [entry] = await tray();
    const body = { reason: 'not mine' };
    const refusal = await other.refused('POST', `/api/movements/tray/${entry?.id}/mended`, { body });
    expect(refusal).toMatchObject({ status: 404, code: 'not-found' });
    expect((await other.get<Shapes['MovementTray']>('/api/movements/tray')).entries).toEqual([]);
  });
});

describe('a message that cannot be true', () => {
  it.each([
    ['of a day that there is not', 'MVT\nQT71/31.QTAD.QXA\nAD0700/0710', '2026-05-01T09:00:00Z', /31/],
    ['of an hour that there is not', 'MVT\nQT72/14.QTAD.QXA\nAD2561/2570', NOON, /2561/],
    ['of a leg over a day', 'MVT\nQT73/14.QTAD.QXA\nAD120700/140800', NOON, /QT73|12|24/],
    ['about a registration that nobody flies', 'MVT\nQT74/14.QZZZ.QXA\nAD0700/0710', NOON, /marked QZZZ/],
    ['about an aircraft of another operator', 'MVT\nQT75/14.QUAA.QXA\nAD0700/0710', NOON, /marked QUAA/],
  ])(
    '%s waits in the tray with the reason, and no leg comes of it anywhere',
    async (_, text, receivedAt, sentence) => {
      const before = await rowsStored(server.store, neighbour);
      const { body } = await dispatcher.post<Received>('/api/movements', { text, receivedAt });
      expect(body.legs).toEqual([]);
      expect(body.tray.map((one) => one.sentence)).toEqual([expect.stringMatching(sentence)]);
      const legs = (of: MovementsOperator) =>
        server.store.withOperator(of.id, null, (tx) => tx.query("select 1 from leg where flight like 'QT7%'"));
      expect([await legs(operator), await legs(neighbour)]).toEqual([[], []]);
      expect(await rowsStored(server.store, neighbour)).toEqual(before);
    },
  );
});
