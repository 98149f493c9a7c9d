/** What cannot be read, or not settled, waits for a person; nothing is lost and nothing is half-stored. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { movementsOperator, type MovementsOperator, nameAt, rowsStored, SECRET } from './movements-operator.js';

let clock = '2026-05-14T12:00:00.000Z';
let server: RunningServer;
let operator: MovementsOperator;
let dispatcher: ApiClient;

type Received = Shapes['MovementsReceived'];

const send = async (text: string, receivedAt = clock): Promise<Received> =>
  (await dispatcher.post<Received>('/api/movements', { text, receivedAt })).body;
const tray = async (state = 'open') =>
  (await dispatcher.get<Shapes['MovementTray']>(`/api/movements/tray?state=${state}`)).entries;
const mend = async (id: string, body: object) =>
  (await dispatcher.post<Shapes['MovementMended']>(`/api/movements/tray/${id}/mended`, body)).body;
const legsOf = async (mark: string) =>
  (await dispatcher.get<Shapes['AircraftLegs']>(`/api/aircraft/${operator.aircraft[mark]}/legs`)).legs;

const stored = () => rowsStored(server.store, operator);

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  const marks = ['Q-TAA', 'Q-TAB', 'Q-TAC', 'Q-TAD', 'Q-TAE', 'Q-TAF', 'Q-TX1', 'QT-X1'];
  operator = await movementsOperator(server, { code: 'QT', marks, settings: { airlineCodes: { QTQ: 'QT' } } });
  dispatcher = await server.signIn(nameAt('QT', 'dispatcher'));
});

afterAll(() => server.stop());

describe('what no message can be read from', () => {
  it('waits in the tray with its reason and its text, and what stands beside it is read', async () => {
    const text = 'WEATHER QXA FINE\n\nMVT\nQT1/14.QTAA.QXA\nAD1100/1110 EA1200 QXB\n\nMVT\nQT2 14 QTAA\nAD1100';
    const received = await send(text);
    expect(received.messages.map(({ line, state }) => [line, state])).toEqual([
      [1, 'tray'],
      [3, 'read'],
      [7, 'tray'],
    ]);
    expect(received.tray.map(({ reason, text: kept, state }) => [reason, kept, state])).toEqual([
      ['no-message', 'WEATHER QXA FINE', 'open'],
      ['flight-line', 'MVT\nQT2 14 QTAA\nAD1100', 'open'],
    ]);
    expect(received.legs).toMatchObject([{ flight: 'QT1', ending: 'under-way' }]);
    expect(await tray()).toEqual(received.tray);
  });

  it('does not wait twice when it comes again within the days, nor does the message count twice', async () => {
    const before = await stored();
    clock = '2026-05-14T12:05:00.000Z';
    const again = await send('WEATHER QXA FINE\n\nMVT\nQT1/14.QTAA.QXA\nAD1100/1110 EA1200 QXB', clock);
    expect(again).toMatchObject({ delivery: null, legs: [], tray: [], items: [], answers: [] });
    expect(again.messages.map(({ state }) => state)).toEqual(['duplicate', 'duplicate']);
    const after = await stored();
    expect(after.slice(0, 5)).toEqual(before.slice(0, 5));
  });

  it('can be set aside by a person, with a reason', async () => {
    const [weather] = await tray();
    const reply = await mend(weather?.id ?? '', { reason: 'A weather report, sent here by mistake.' });
    expect(reply).toMatchObject({ id: weather?.id, received: null });
    const mended = await tray('mended');
    expect(mended).toMatchObject([
      {
        text: 'WEATHER QXA FINE',
        closedBy: nameAt('QT', 'dispatcher'),
        why: 'A weather report, sent here by mistake.',
      },
    ]);
    const refusal = await dispatcher.refused('POST', `/api/movements/tray/${weather?.id}/mended`, {
      body: { reason: 'once more' },
    });
    expect(refusal).toMatchObject({ code: 'changed-meanwhile', status: 412 });
  });

  it('is mended by a corrected text, and the original stays as it came', async () => {
    const [entry] = await tray();
    const text = 'MVT\nQT2/14.QTAB.QXA\nAD1100';
    const { received } = await mend(entry?.id ?? '', { text, reason: 'Stops missing in the flight line.' });
    expect(received?.messages).toMatchObject([{ state: 'read', registration: 'QTAB' }]);
    expect(received?.legs).toMatchObject([{ flight: 'QT2', aircraft: operator.aircraft['Q-TAB'] }]);
    expect(await tray()).toEqual([]);
    const original = (await tray('mended')).find(({ id }) => id === entry?.id);
    expect(original).toMatchObject({
      text: 'MVT\nQT2 14 QTAA\nAD1100',
      inUse: false,
      mendedWith: received?.delivery,
      why: 'Stops missing in the flight line.',
    });
  });
});

describe('an aircraft that this operator does not have', () => {
  it('goes to the tray: of another operator, of nobody, or one of two that read alike', async () => {
    await movementsOperator(server, { code: 'QU', marks: ['Q-UAA'] });
    const text = ['QUAA', 'QZZZ', 'QTX1'].map((mark) => `MVT\nQT3/14.${mark}.QXA\nAD1100/1110`).join('\n\n');
    const received = await send(text);
    expect(received.messages.map(({ state, aircraft }) => [state, aircraft])).toEqual([
      ['tray', null],
      ['tray', null],
      ['tray', null],
    ]);
    expect(received.tray.map(({ reason, sentence }) => [reason, sentence])).toEqual([
      ['unknown-registration', 'No aircraft of this operator is marked QUAA.'],
      ['unknown-registration', 'No aircraft of this operator is marked QZZZ.'],
      ['unknown-registration', expect.stringMatching(/^QTX1 may be any of (Q-TX1, QT-X1|QT-X1, Q-TX1)\.$/)],
    ]);
    expect(received.legs).toEqual([]);
  });

  it('is mended only by an aircraft it does have', async () => {
    const [entry] = await tray();
    const path = `/api/movements/tray/${entry?.id}/mended`;
    const before = await stored();
    const body = { text: 'MVT\nQT3/14.QYYY.QXA\nAD1100/1110', reason: 'Another mark.' };
    const refusal = await dispatcher.refused('POST', path, { body });
    expect(refusal).toMatchObject({ code: 'invalid-input', status: 422 });
    expect(refusal.errors).toEqual([{ pointer: '/text', reason: 'No aircraft of this operator is marked QYYY.' }]);
    const garbage = await dispatcher.refused('POST', path, { body: { text: 'see telephone call', reason: 'r' } });
    expect(garbage.code).toBe('invalid-input');
    expect(await stored()).toEqual(before);
    for (const { id } of await tray()) await mend(id, { reason: 'Not ours.' });
  });
});

describe('what other messages settle', () => {
  it('an arrival before its departure waits, and no longer once that comes', async () => {
    clock = '2026-05-14T14:00:00.000Z';
    const arrival = await send('MVT\nQT5/14.QTAC.QXB\nAA1330/1340');
    expect(arrival.tray).toMatchObject([{ reason: 'no-departure', inUse: true }]);
    expect(arrival.legs).toMatchObject([{ from: null, to: 'QXB', cycles: 1, missing: ['off-block', 'airborne'] }]);
    const departure = await send('MVT\nQT5/14.QTAC.QXA\nAD1200/1210 EA1330 QXB', '2026-05-14T12:11:00Z');
    expect(departure.tray).toEqual([]);
    expect(departure.settled).toMatchObject([{ reason: 'no-departure', state: 'settled', closedBy: null }]);
    expect(departure.legs).toMatchObject([{ id: arrival.legs[0]?.id, version: 2, from: 'QXA', flightMinutes: 80 }]);
    expect(await tray()).toEqual([]);
  });

  it('a departure that was lost is sent by a person, and the arrival stays in use', async () => {
    const { tray: opened } = await send('MVT\nQT6/14.QTAC.QXC\nAA1350/1358');
    const id = opened[0]?.id ?? '';
    const path = `/api/movements/tray/${id}/mended`;
    const wrong = { text: 'MVT\nQT6/14.QTAC.QXB\nED141500', reason: 'From the phone.' };
    const refusal = await dispatcher.refused('POST', path, { body: wrong });
    expect(refusal.detail).toMatch(/^With this text it still says: QT6 of 2026-05-14, QTAC at QXC, has no departure/);
    const text = 'MVT\nQT6/14.QTAC.QXB\nAD1341/1345 EA1350 QXC';
    const { received } = await mend(id, { text, reason: 'Read out by the station.' });
    expect(received?.legs).toMatchObject([{ from: 'QXB', to: 'QXC', ending: 'arrived', flightMinutes: 5 }]);
    const [entry] = (await tray('mended')).filter((one) => one.id === id);
    expect(entry).toMatchObject({ inUse: true, closedBy: nameAt('QT', 'dispatcher') });
  });

  it('an element that does not read waits, while the rest of its message stands', async () => {
    const received = await send('MVT\nQT7/14.QTAD.QXA\nAD1300/1375\nDL41/0010');
    expect(received.messages).toMatchObject([{ state: 'read' }]);
    expect(received.tray).toMatchObject([{ reason: 'element', sentence: '"AD1300/1375" has 75 minutes.' }]);
    const id = received.tray[0]?.id ?? '';
    const { received: after } = await mend(id, {
      text: 'MVT\nQT7/14.QTAD.QXA\nAD1300/1315\nDL41/0010',
      reason: 'typed wrong',
    });
    expect(after?.legs).toMatchObject([
      { airborneAt: '2026-05-14T13:15:00.000Z', delays: [{ code: '41', minutes: 10 }] },
    ]);
    expect(await tray()).toEqual([]);
  });

  it('the flight before is counted as flown to its end once the aircraft departs again', async () => {
    clock = '2026-05-14T18:00:00.000Z';
    await send('MVT\nQT8/14.QTAE.QXA\nAD1300/1310 EA1400 QXB', '2026-05-14T13:11:00Z');
    const next = await send('MVT\nQT9/14.QTAE.QXB\nAD1500/1510 EA1600 QXA', '2026-05-14T15:11:00Z');
    expect(next.tray).toMatchObject([{ reason: 'no-arrival', flight: 'QT8' }]);
    expect((await legsOf('Q-TAE')).map(({ flight, cycles }) => [flight, cycles])).toEqual([
      ['QT8', 1],
      ['QT9', 0],
    ]);
    const late = await send('MVT\nQT8/14.QTAE.QXB\nAA1402/1408', '2026-05-14T17:00:00Z');
    expect(late.settled).toMatchObject([{ reason: 'no-arrival' }]);
    expect((await legsOf('Q-TAE'))[0]).toMatchObject({ flightMinutes: 52, cycles: 1, missing: [] });
  });

  it('a correction of the registration moves the leg to the other aircraft', async () => {
    const { legs: first } = await send('MVT\nQT10/14.QTAE.QXA\nAD1700/1710 EA1800 QXB', '2026-05-14T17:11:00Z');
    const { legs: moved } = await send('COR MVT\nQT10/14.QTAF.QXA\nAD1700/1710 EA1800 QXB', '2026-05-14T17:20:00Z');
    const ids = (of: typeof moved) => of.map(({ flight, id, version }) => `${flight} ${id} ${version}`);
    const [qt9, qt10] = first;
    expect(ids(first)).toEqual([`QT9 ${qt9?.id} 2`, `QT10 ${qt10?.id} 1`]);
    // Q-TAE did not depart again after all, so whether QT9 landed is open once more.
    expect(ids(moved)).toEqual([`QT9 ${qt9?.id} 3`, `QT10 ${qt10?.id} 2`]);
    expect(moved).toMatchObject([{ cycles: 0 }, { aircraft: operator.aircraft['Q-TAF'] }]);
    expect((await legsOf('Q-TAE')).map(({ flight }) => flight)).not.toContain('QT10');
    expect((await legsOf('Q-TAF')).map(({ flight }) => flight)).toEqual(['QT10']);
  });

  it('a message counts from its first receipt, also when the second delivery of it came in before the first', async () => {
    const [early, late] = ['MVT\nQT11/14.QTAF.QXA\nAD1000/1010', 'MVT\nQT11/14.QTAF.QXA\nAD1002/1010'];
    await send(early, '2026-05-14T11:00:00Z');
    const conflicts = (entries: Shapes['TrayLine'][]) =>
      entries.filter(({ reason }) => reason === 'conflict').map(({ text }) => text);
    expect(conflicts((await send(late, '2026-05-14T10:30:00Z')).tray)).toEqual([late]);
    const first = await send(early, '2026-05-14T10:12:00Z');
    expect(first.messages).toMatchObject([{ state: 'duplicate', receivedAt: '2026-05-14T10:12:00.000Z' }]);
    expect(first.legs).toMatchObject([{ offBlockAt: '2026-05-14T10:02:00.000Z' }]);
    expect([conflicts(first.tray), conflicts(first.settled)]).toEqual([[early], [late]]);
  });

  it('a code of three letters is the same airline where the operator says so', async () => {
    const { legs } = await send('MVA\nQTQ0010/14.Q-TAF.QXB\nAA1755/1759', '2026-05-14T18:00:00Z');
    expect(legs).toMatchObject([{ flight: 'QT10', ending: 'arrived', flightMinutes: 45, version: 3 }]);
  });
});
