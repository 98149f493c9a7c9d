/**
 * Four flights, honestly counted (first-week story 4, DERIVED; row P-12 of T1, SEEN-Q).
 *
 * The auxiliary power unit is deferred for four flights. A return to the ramp uses none of them; a flight that lands back
 * where it left from uses one, so does one that is diverted, and so does going on from there. Told through HTTP alone,
 * by messages as they come in.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import {
  deferApu,
  loadPublishedRows,
  movementsOperator,
  type MovementsOperator,
  nameAt,
  plan,
  SECRET,
} from './movements-operator.js';

let clock = '2026-05-14T06:10:00.000Z';
let server: RunningServer;
let operator: MovementsOperator;
let aircraft: string;
let flights: Record<string, string>;
let defect: string;

const ROLES = ['technician', 'commander', 'dispatcher', 'maintenance-control', 'mel-engineer'] as const;
type Role = (typeof ROLES)[number];
const people = new Map<Role, ApiClient>();
const as = (role: Role): ApiClient => people.get(role) as ApiClient;

/** A session ends after twelve hours, so everybody signs in again on the second day. */
async function signIn(): Promise<void> {
  for (const role of ROLES) people.set(role, await server.signIn(nameAt('QB', role)));
}

/** Sends messages as plain text at an instant of the story. */
async function receive(at: string, text: string): Promise<Shapes['MovementsReceived']> {
  clock = `${at}:00.000Z`;
  const headers = { 'content-type': 'text/plain' };
  return (await as('dispatcher').post<Shapes['MovementsReceived']>('/api/movements', text, { headers })).body;
}

const legs = (): Promise<Shapes['AircraftLegs']> =>
  as('maintenance-control').get(`/api/aircraft/${aircraft}/legs?from=2026-05-14T00:00:00Z`);
const answerFor = (flight: string): Promise<Shapes['Verdict']> =>
  as('maintenance-control').get(`/api/aircraft/${aircraft}/answer?flight=${flights[flight]}`);
const flightsLeft = async (): Promise<string | undefined> =>
  (await as('technician').get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect.deadline?.words;
const etops = (flight: string, value: number) =>
  as('dispatcher').put(`/api/aircraft/${aircraft}/facts`, {
    key: 'flight.etopsMinutes',
    value,
    flight: flights[flight],
    source: 'flight plan',
    observedAt: clock,
  });

/** Before -> after of the one open item. */
function flightsUsed({ items }: Shapes['MovementsReceived']): string {
  expect(items.map(({ number }) => number)).toEqual(['Q-ABD/1']);
  return `${items[0]?.before.used?.flights} -> ${items[0]?.after.used?.flights}`;
}

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  operator = await movementsOperator(server, { code: 'QB', marks: ['Q-ABD', 'Q-ABE'] });
  aircraft = operator.aircraft['Q-ABD'] as string;
  const planned = (number: string, from: string, to: string, day: number, hours: [string, string]) => {
    const [offBlockAt, onBlockAt] = hours.map((hour) => `2026-05-${day}T${hour}:00Z`) as [string, string];
    return { number, from, to, offBlockAt, onBlockAt };
  };
  flights = await plan(server.store, operator, 'Q-ABD', [
    planned('QB 410', 'QXA', 'QXB', 14, ['07:00', '08:30']),
    planned('QB 411', 'QXB', 'QXA', 15, ['07:00', '08:30']),
    planned('QB 412', 'QXA', 'QXB', 15, ['11:00', '12:30']),
  ]);
  await signIn();
  await loadPublishedRows(as('mel-engineer'));
});

afterAll(() => server.stop());

describe('14 May', () => {
  it('the APU is deferred at 06:10 for four flights, none of them used', async () => {
    const both = { technician: as('technician'), commander: as('commander') };
    defect = await deferApu(both, aircraft, '2026-05-14T06:10:00Z');
    expect(await flightsLeft()).toBe('4 of 4 flights left.');
    expect((await answerFor('QB 410')).verdict).toBe('may-fly');
  });

  it('off blocks 07:00 and back on the ramp 07:12: block time, and no flight used', async () => {
    const received = await receive(
      '2026-05-14T07:15',
      'MVT\nQB410/14.QABD.QXA\nAD0700 RR0712\nDL41/0012\nSI ENG 2 BLEED',
    );
    expect(received.messages).toMatchObject([
      { state: 'read', type: 'MVT', flight: 'QB410', scheduledOn: '2026-05-14', registration: 'QABD', aircraft },
    ]);
    expect(received.legs).toMatchObject([
      {
        ending: 'ramp',
        from: 'QXA',
        to: 'QXA',
        blockMinutes: 12,
        flightMinutes: 0,
        cycles: 0,
        planned: flights['QB 410'],
      },
    ]);
    expect(received.tray).toEqual([]);
    expect(flightsUsed(received)).toBe('0 -> 0');
    expect(received.items[0]?.after.used).toMatchObject({ blockMinutes: 12, flightMinutes: 0, cycles: 0 });
    expect(received.answers).toEqual([]);
    expect(await flightsLeft()).toBe('4 of 4 flights left.');
  });

  it('airborne at 07:40 and landed back at 07:55: one flight used', async () => {
    const out = await receive('2026-05-14T07:41', 'MVT\nQB410/14.QABD.QXA\nAD0730/0740 EA0900 QXB');
    expect(flightsUsed(out)).toBe('0 -> 1');
    expect(out.legs).toMatchObject([{ ending: 'under-way', from: 'QXA', to: 'QXB', flightMinutes: 0 }]);
    const back = await receive('2026-05-14T08:05', 'MVT\nQB410/14.QABD.QXA\nFR0755/0803\nSI SMOKE SMELL');
    expect(flightsUsed(back)).toBe('1 -> 1');
    expect(back.legs).toMatchObject([
      { version: 2, sequence: 2, ending: 'returned', to: 'QXA', blockMinutes: 33, flightMinutes: 15, cycles: 1 },
    ]);
    expect(await flightsLeft()).toBe('3 of 4 flights left.');
  });

  it('out again, diverted to another airport: two flights used', async () => {
    await receive('2026-05-14T09:13', 'MVT\nQB410/14.QABD.QXA\nAD0900/0912 EA1030 QXB\nDL41/0200');
    await receive('2026-05-14T09:50', 'DIV\nQB410/14.QABD.QXB\nEA1025 QXC\nDR71');
    const landed = await receive('2026-05-14T10:31', 'MVT\nQB410/14.QABD.QXC\nAA1022/1030');
    expect(landed.legs).toMatchObject([
      {
        sequence: 3,
        ending: 'arrived',
        from: 'QXA',
        to: 'QXC',
        diverted: { from: 'QXB', reason: '71' },
        flightMinutes: 70,
        blockMinutes: 90,
      },
    ]);
    expect(await flightsLeft()).toBe('2 of 4 flights left.');
  });

  it('onward from there to where it was bound: three flights used', async () => {
    const onward = await receive(
      '2026-05-14T12:20',
      'MVT\nQB410/14.QABD.QXC\nAD1130/1140 EA1215 QXB\n\nMVT\nQB410/14.QABD.QXB\nAA1212/1218',
    );
    expect(flightsUsed(onward)).toBe('2 -> 3');
    expect(onward.legs).toMatchObject([{ sequence: 4, from: 'QXC', to: 'QXB', planned: null, flightMinutes: 32 }]);
    expect(await flightsLeft()).toBe('1 of 4 flights left.');
  });

  it('the legs of the day add up in whole minutes, on one flight-day', async () => {
    const { counters, legs: flown } = await legs();
    expect(flown.map(({ ending, from, to }) => `${from}-${to} ${ending}`)).toEqual([
      'QXA-QXA ramp',
      'QXA-QXA returned',
      'QXA-QXC arrived',
      'QXC-QXB arrived',
    ]);
    expect(counters).toEqual({
      flights: 3,
      flightDays: 1,
      blockMinutes: 12 + 33 + 90 + 48,
      flightMinutes: 15 + 70 + 32,
      cycles: 3,
      landings: 3,
      incomplete: 0,
    });
  });

  it('the flight that has flown is no longer next, though its plan still lies ahead of an early departure', async () => {
    const view = await as('technician').get<Shapes['AircraftView']>(`/api/aircraft/${aircraft}`);
    expect(view.flights.map(({ number }) => number)).toEqual(['QB 411', 'QB 412']);
  });

  it('delays for aircraft defects stand beside the defects that may be why', async () => {
    const { delayed } = await legs();
    expect(delayed.map(({ minutes, defects }) => [minutes, defects.map(({ number }) => number)])).toEqual([
      [12, ['Q-ABD/1']],
      [120, ['Q-ABD/1']],
    ]);
  });
});

describe('15 May', () => {
  it('before the fourth flight 120 minutes of ETOPS are allowed and 121 are not', async () => {
    clock = '2026-05-15T05:00:00.000Z';
    await signIn();
    await etops('QB 411', 120);
    expect((await answerFor('QB 411')).verdict).toBe('may-fly');
    clock = '2026-05-15T05:01:00.000Z';
    await etops('QB 411', 121);
    const refused = await answerFor('QB 411');
    expect(refused.verdict).toBe('may-not-fly');
    expect(refused.reasons[0]).toContain('ETOPS');
    clock = '2026-05-15T05:02:00.000Z';
    await etops('QB 411', 0);
  });

  it('the fourth flight uses the last one, and the answer for the fifth changes', async () => {
    const out = await receive('2026-05-15T07:16', 'MVT\nQB411/15.QABD.QXB\nAD0700/0712 EA0820 QXA');
    expect(flightsUsed(out)).toBe('3 -> 4');
    expect(out.items[0]).toMatchObject({
      before: { words: '1 of 4 flights left.', over: false },
      after: { words: '0 of 4 flights left.', over: true },
    });
    expect(out.answers).toMatchObject([
      {
        number: 'QB 412',
        flight: flights['QB 412'],
        before: { verdict: 'may-fly' },
        after: { verdict: 'may-not-fly' },
      },
    ]);
    await receive('2026-05-15T08:28', 'MVT\nQB411/15.QABD.QXA\nAA0818/0826');
  });

  it('the fifth flight is refused, with the count', async () => {
    const fifth = await answerFor('QB 412');
    expect(fifth).toMatchObject({ verdict: 'may-not-fly', lo: 'may-not-fly', hi: 'may-not-fly' });
    expect(fifth.reasons[0]).toContain('4 of 4 flights are used up');
  });

  it('and no extension is offered for it (V-14, SEEN-Q)', async () => {
    const asked = await as('maintenance-control').get<Shapes['ExtensionOffer']>(`/api/defects/${defect}/extension`);
    expect(asked).toMatchObject({ offer: null, refused: { type: '/api/problems/category-a-not-extendable' } });
  });

  it('is not escaped by the row without ETOPS: the write-up is answered, and cannot be answered a second time', async () => {
    const query = { act: 'defer', entry: '49-10-01', row: '1' };
    const refusal = await as('technician').signRefused(defect, 'deferral', query, { row: '1' });
    expect(refusal).toMatchObject({ code: 'write-up-already-answered', status: 409 });
    expect(await flightsLeft()).toBe('0 of 4 flights left.');
  });

  it('a correction that makes a return to the ramp of the flight that landed back gives one flight back', async () => {
    const corrected = await receive('2026-05-15T09:00', 'COR MVT\nQB410/14.QABD.QXA\nAD0730 RR0803');
    expect(corrected.messages).toMatchObject([{ state: 'read', correction: true, scheduledOn: '2026-05-14' }]);
    expect(corrected.legs).toMatchObject([
      { version: 3, sequence: 2, ending: 'ramp', blockMinutes: 33, flightMinutes: 0, cycles: 0, landings: 0 },
    ]);
    expect(flightsUsed(corrected)).toBe('4 -> 3');
    expect(corrected.items[0]).toMatchObject({
      before: { words: '0 of 4 flights left.', over: true },
      after: { words: '1 of 4 flights left.', over: false },
    });
    expect(corrected.answers).toMatchObject([
      { number: 'QB 412', before: { verdict: 'may-not-fly' }, after: { verdict: 'may-fly' } },
    ]);
    expect((await answerFor('QB 412')).verdict).toBe('may-fly');
  });

  it('what was told before the correction stays readable', async () => {
    const leg = (await legs()).legs.find(
      ({ sequence, scheduledOn }) => sequence === 2 && scheduledOn === '2026-05-14',
    );
    expect(leg?.history.map(({ version, ending, flightMinutes }) => ({ version, ending, flightMinutes }))).toEqual([
      { version: 1, ending: 'under-way', flightMinutes: 0 },
      { version: 2, ending: 'returned', flightMinutes: 15 },
    ]);
  });

  it('the record holds every message and every version of a leg, names nobody, and verifies', async () => {
    let entries: Shapes['RecordEntries']['entries'] = [];
    await expect
      .poll(async () => {
        const path = `/api/record?aircraft=${aircraft}`;
        ({ entries } = await as('technician').get<Shapes['RecordEntries']>(path));
        return entries.every(({ number }) => number !== null);
      })
      .toBe(true);
    const told = entries.filter(({ what }) => what.startsWith('leg.') || what.startsWith('movements.'));
    const many = (what: string) => told.filter((entry) => entry.what === what).length;
    expect([many('movements.received'), many('leg.reported')]).toEqual([10, 10]);
    expect(told.every(({ by }) => by === nameAt('QB', 'dispatcher'))).toBe(true);
    expect(JSON.stringify(told.map(({ payload }) => payload))).not.toContain('dree');
    const [finding] = await verifyRecord(server.ownerUrl, 'QB');
    expect(finding).toMatchObject({ misfit: null, waiting: 0 });
  });
});
