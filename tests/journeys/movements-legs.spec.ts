/** Legs as people enter and correct them, beside what messages tell; and two servers that are told the same at once. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import {
  deferApu,
  loadPublishedRows,
  movementsOperator,
  type MovementsOperator,
  nameAt,
  plan,
  rowsStored,
  SECRET,
} from './movements-operator.js';

let clock = '2026-05-14T06:10:00.000Z';
let server: RunningServer;
let operator: MovementsOperator;
let dispatcher: ApiClient;
let engineer: ApiClient;
let technician: ApiClient;

type Received = Shapes['MovementsReceived'];
type Written = Shapes['LegWritten'];
type Leg = Shapes['LegLine'];

const pathOf = (mark: string, leg?: string) =>
  `/api/aircraft/${operator.aircraft[mark]}/legs${leg === undefined ? '' : `/${leg}`}`;
const shown = (mark: string) => dispatcher.get<Shapes['AircraftLegs']>(pathOf(mark));
const send = async (text: string, receivedAt = clock): Promise<Received> =>
  (await dispatcher.post<Received>('/api/movements', { text, receivedAt })).body;
const stored = () => rowsStored(server.store, operator);

/** A leg as a person tells it: 07:00 off, 08:20 on blocks. */
const told = (changes: object = {}) => ({
  flight: 'QL 701',
  scheduledOn: '2026-05-14',
  from: 'QXA',
  to: 'QXB',
  ending: 'arrived',
  offBlockAt: '2026-05-14T07:00:00Z',
  airborneAt: '2026-05-14T07:10:00Z',
  landedAt: '2026-05-14T08:15:00Z',
  onBlockAt: '2026-05-14T08:20:00Z',
  delays: [],
  reason: 'No messages from this station.',
  ...changes,
});

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  operator = await movementsOperator(server, { code: 'QL', marks: ['Q-LEA', 'Q-LEB', 'Q-LEC', 'Q-LED'] });
  dispatcher = await server.signIn(nameAt('QL', 'dispatcher'));
  engineer = await server.signIn(nameAt('QL', 'engineer'));
  technician = await server.signIn(nameAt('QL', 'technician'));
  const commander = await server.signIn(nameAt('QL', 'commander'));
  await loadPublishedRows(await server.signIn(nameAt('QL', 'mel-engineer')));
  for (const mark of ['Q-LEA', 'Q-LED'])
    await deferApu({ technician, commander }, operator.aircraft[mark] as string, '2026-05-14T06:10:00Z');
  clock = '2026-05-14T16:00:00.000Z';
});

afterAll(() => server.stop());

describe('a leg entered by hand', () => {
  let leg: Leg;

  it('counts like one that messages tell, with the name of who entered it and why', async () => {
    const { body, status, etag } = await engineer.post<Written>(pathOf('Q-LEA'), told());
    ({ leg } = body);
    expect({ status, etag }).toEqual({ status: 201, etag: '"1"' });
    expect(leg).toMatchObject({
      flight: 'QL701',
      source: 'person',
      by: nameAt('QL', 'engineer'),
      reason: 'No messages from this station.',
      blockMinutes: 80,
      flightMinutes: 65,
      cycles: 1,
      landings: 1,
    });
    expect(body.items).toMatchObject([{ before: { used: { flights: 0 } }, after: { used: { flights: 1 } } }]);
    expect((await shown('Q-LEA')).counters).toMatchObject({ flights: 1, flightMinutes: 65, blockMinutes: 80 });
  });

  it('is corrected by another version, with a reason; what stood before stays readable', async () => {
    const correction = told({ landedAt: '2026-05-14T08:16:00Z', landings: 3, reason: 'Read off the sheet again.' });
    const path = pathOf('Q-LEA', leg.id);
    const { body, etag } = await engineer.put<Written>(path, correction, { ifMatch: '"1"' });
    expect(etag).toBe('"2"');
    expect(body.leg).toMatchObject({ id: leg.id, version: 2, flightMinutes: 66, landings: 3, cycles: 1 });
    expect(body.items).toMatchObject([
      { before: { used: { flightMinutes: 65 } }, after: { used: { flightMinutes: 66 } } },
    ]);
    const { legs } = await shown('Q-LEA');
    expect(legs).toHaveLength(1);
    expect(legs[0]?.history).toEqual([leg]);
  });

  it('is not corrected by somebody who has not seen its newest version, nor without saying which', async () => {
    const path = pathOf('Q-LEA', leg.id);
    const before = await stored();
    expect((await engineer.refused('PUT', path, { body: told(), ifMatch: '"1"' })).code).toBe('changed-meanwhile');
    expect((await engineer.refused('PUT', path, { body: told() })).code).toBe('precondition-required');
    const elsewhere = pathOf('Q-LEB', leg.id);
    expect((await engineer.refused('PUT', elsewhere, { body: told(), ifMatch: '"2"' })).code).toBe('not-found');
    expect(await stored()).toEqual(before);
  });

  it('stands against a message that comes afterwards and says otherwise, and a person is asked', async () => {
    clock = '2026-05-14T16:05:00.000Z';
    const received = await send(
      'MVT\nQL701/14.QLEA.QXA\nAD0701/0711 EA0815 QXB\n\nMVT\nQL701/14.QLEA.QXB\nAA0816/0821',
    );
    expect(received.legs).toEqual([]);
    expect(received.tray).toMatchObject([{ reason: 'differs-from-person', inUse: true }]);
    expect((await shown('Q-LEA')).counters).toMatchObject({ flights: 1, blockMinutes: 80 });
  });

  it('is withdrawn when it was none, and then counts nothing', async () => {
    const body = { ...told({ ending: 'withdrawn', reason: 'Entered for the wrong aircraft.' }) };
    const { body: done } = await engineer.put<Written>(pathOf('Q-LEA', leg.id), body, { ifMatch: '"2"' });
    expect(done.leg).toMatchObject({ ending: 'withdrawn', flightMinutes: 0, cycles: 0 });
    expect(done.items).toMatchObject([{ before: { used: { flights: 1 } }, after: { used: { flights: 0 } } }]);
    expect((await shown('Q-LEA')).legs).toEqual([]);
  });
});

describe('a leg told by messages', () => {
  it('is corrected by a person, whose word stands when the messages are read again', async () => {
    const text = 'MVT\nQL702/14.QLEB.QXA\nAD0900/0910 EA1000 QXB\n\nMVT\nQL702/14.QLEB.QXB\nAA1000/1010';
    const [leg] = (await send(text)).legs;
    const correction = told({
      flight: 'QL702',
      offBlockAt: '2026-05-14T09:00:00Z',
      airborneAt: '2026-05-14T09:10:00Z',
      landedAt: '2026-05-14T12:00:00Z',
      onBlockAt: '2026-05-14T12:10:00Z',
      reason: 'The arrival was two hours later.',
    });
    const path = pathOf('Q-LEB', leg?.id);
    await engineer.put<Written>(path, correction, { ifMatch: '"1"' });
    clock = '2026-05-14T16:10:00.000Z';
    const next = await send('MVT\nQL703/14.QLEB.QXB\nAD1300/1310 EA1400 QXA');
    expect(next.legs.map(({ flight }) => flight)).toEqual(['QL703']);
    expect(next.tray).toEqual([]);
    const { legs, counters } = await shown('Q-LEB');
    expect(legs.map(({ flight, source, version }) => [flight, source, version])).toEqual([
      ['QL702', 'person', 2],
      ['QL703', 'messages', 1],
    ]);
    expect(counters).toMatchObject({ flights: 2, blockMinutes: 190, flightMinutes: 170 });
  });
});

describe('a leg that cannot be', () => {
  it.each([
    ['over in 24 hours or more', { onBlockAt: '2026-05-15T07:00:00Z' }, '/onBlockAt'],
    ['of a day that does not exist', { scheduledOn: '2026-02-30' }, '/scheduledOn'],
    ['of another week than its flight', { scheduledOn: '2026-05-04' }, '/scheduledOn'],
    ['landing before it left', { landedAt: '2026-05-14T07:05:00Z' }, '/landedAt'],
    ['landing as it left the ground', { landedAt: '2026-05-14T07:10:00Z' }, '/landedAt'],
    ['airborne before its off-block', { airborneAt: '2026-05-14T06:59:00Z' }, '/airborneAt'],
    ['still to come', { onBlockAt: '2026-05-14T17:00:00Z' }, '/onBlockAt'],
    ['told in seconds', { offBlockAt: '2026-05-14T07:00:30Z' }, '/offBlockAt'],
    ['arrived without a landing time', { landedAt: undefined }, '/landedAt'],
    ['arrived nowhere', { to: undefined }, '/to'],
    ['flown and back on the ramp', { ending: 'ramp', to: 'QXA' }, '/airborneAt'],
    ['returned to another place', { ending: 'returned' }, '/to'],
    ['without a landing', { landings: 0 }, '/landings'],
    ['of no flight', { flight: 'seven' }, '/flight'],
    ['from no station', { from: 'qx' }, '/from'],
    ['withdrawn before it was entered', { ending: 'withdrawn' }, '/ending'],
  ])('%s is refused, and nothing is stored', async (_, changes, pointer) => {
    const before = await stored();
    const refusal = await engineer.refused('POST', pathOf('Q-LEC'), { body: told(changes) });
    expect({ status: refusal.status, code: refusal.code }).toEqual({ status: 422, code: 'invalid-input' });
    expect(refusal.errors?.map((error) => error.pointer)).toContain(pointer);
    expect(await stored()).toEqual(before);
  });

  it('is one in the time of another of the same aircraft', async () => {
    await engineer.post(pathOf('Q-LEC'), told());
    const during = told({ flight: 'QL799', offBlockAt: '2026-05-14T06:00:00Z' });
    const refusal = await engineer.refused('POST', pathOf('Q-LEC'), { body: during });
    expect(refusal.detail).toContain('QL701 is known to have been on its way from 2026-05-14T07:00:00.000Z');
    const after = { offBlockAt: '2026-05-14T08:20:00Z', airborneAt: '2026-05-14T08:30:00Z' };
    const ends = { landedAt: '2026-05-14T09:00:00Z', onBlockAt: '2026-05-14T09:05:00Z' };
    const { status } = await engineer.post(pathOf('Q-LEC'), told({ flight: 'QL798', ...after, ...ends }));
    expect(status).toBe(201);
  });

  it('needs a role that may enter it, and an aircraft of the operator', async () => {
    const refusal = await technician.refused('POST', pathOf('Q-LEC'), { body: told() });
    expect(refusal).toMatchObject({ status: 403, code: 'role-missing' });
    const nobody = '/api/aircraft/00000000-0000-4000-8000-000000000000/legs';
    expect((await engineer.refused('POST', nobody, { body: told() })).code).toBe('not-found');
    expect((await engineer.refused('GET', nobody)).code).toBe('not-found');
  });
});

describe('two servers on one database', () => {
  it('told the same at once do it once', async () => {
    const second = await runningServer({ now: () => clock, secret: SECRET, database: server.database });
    const other = await second.signIn(nameAt('QL', 'engineer'));
    const before = await stored();
    const text = 'MVT\nQL704/14.QLED.QXA\nAD1000/1010 EA1100 QXB\n\nNO MESSAGE AT ALL';
    const ask = (client: ApiClient) =>
      client.post<Received>('/api/movements', { text, receivedAt: '2026-05-14T10:11:00Z' });
    const answers = (await Promise.all([dispatcher, other, dispatcher, other].map(ask))).map(({ body }) => body);
    await second.stop();
    const states = answers.map(({ messages }) => messages.map(({ state }) => state).join(' ')).sort();
    expect(states).toEqual(['duplicate duplicate', 'duplicate duplicate', 'duplicate duplicate', 'read tray']);
    const after = await stored();
    // One delivery, its two messages, one tray entry, one leg; in the record the delivery, the leg and the tray.
    expect(after.map((count, n) => count - (before[n] ?? 0)).slice(0, 5)).toEqual([1, 2, 1, 1, 3]);
    expect(answers.flatMap(({ items }) => items)).toMatchObject([{ after: { used: { flights: 1 } } }]);
    expect((await shown('Q-LED')).counters).toMatchObject({ flights: 1 });
  });
});

describe('what the plan says was flown', () => {
  it('counts until a leg speaks of it, and is not counted twice', async () => {
    const left = async () =>
      (await technician.get<Shapes['DefectList']>('/api/defects')).defects.find(
        ({ registration }) => registration === 'Q-LED',
      )?.deadline?.words;
    expect(await left()).toBe('3 of 4 flights left.');
    await plan(server.store, operator, 'Q-LED', [
      {
        number: 'QL 705',
        from: 'QXB',
        to: 'QXA',
        offBlockAt: '2026-05-14T12:00:00Z',
        onBlockAt: '2026-05-14T13:00:00Z',
        state: 'flown',
      },
    ]);
    expect(await left()).toBe('2 of 4 flights left.');
    await send('MVT\nQL705/14.QLED.QXB\nAD1240/1250 EA1340 QXA', '2026-05-14T12:51:00Z');
    expect(await left()).toBe('2 of 4 flights left.');
  });
});
