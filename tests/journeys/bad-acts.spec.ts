/** Acts that the trade does not allow, or that name what is not there: refused, and nothing is changed by them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { type Attempt, Attempts } from '../support/attempts.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:12:00.000Z';
const LIGHT = { entry: '33-42-11', units: ['L'] };
const NOBODY = '00000000-0000-4000-8000-000000000000';
let server: RunningServer;
let attempts: Attempts;
const people: Record<string, ApiClient> = {};
const aircraft: Record<string, string> = {};
const flights: Record<string, string> = {};
let defect: string;

const person = (name: string): ApiClient => people[name] as ApiClient;
const technician = () => person('odrin');

const writeUp = (changes: object = {}): Promise<Attempt> => {
  const body = {
    aircraft: aircraft['Q-KEA'],
    origin: 'technician',
    description: 'Left landing light out.',
    recordedAt: '2026-01-15T12:00:00Z',
    ...changes,
  };
  return attempts.refused(technician(), 'POST', '/api/defects', { body });
};

/** An act on the defect under test, signed as the server shows it, with one thing changed. */
async function act(
  name: string,
  address: string,
  query: Record<string, string>,
  body: object,
  sign: object = {},
): Promise<Attempt> {
  const client = person(name);
  const signature = { ...(await client.signature(defect, query)), ...sign };
  const ifMatch = await client.seen(defect);
  return attempts.refused(client, 'POST', `/api/defects/${defect}/${address}`, {
    ifMatch,
    body: { ...body, sign: signature },
  });
}

const defer = (name: string, body: object = { row: '1' }, sign: object = {}): Promise<Attempt> =>
  act(name, 'deferral', { act: 'defer', row: String((body as { row?: string }).row ?? '1') }, body, sign);

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  for (const name of ['odrin', 'dalm', 'ressa', 'hebba', 'wenna', 'brask', 'tamsel', 'kesh']) {
    people[name] = await server.signIn(name);
  }
  for (const client of [technician(), person('kesh')]) {
    const fleet = await client.get<Shapes['Fleet']>('/api/fleet');
    for (const { id, registration } of fleet.aircraft) {
      aircraft[registration] = id;
      const view = await client.get<Shapes['AircraftView']>(`/api/aircraft/${id}`);
      for (const flight of view.flights) flights[flight.number] = flight.id;
    }
  }
  const written = await technician().post<Shapes['ActDone']>('/api/defects', {
    aircraft: aircraft['Q-KEA'],
    origin: 'technician',
    description: 'Left landing light out.',
    recordedAt: '2026-01-15T12:00:00Z',
    item: LIGHT,
  });
  defect = written.body.defect.id;
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(() => server.stop());

describe('a write-up', () => {
  it('needs an aircraft of this operator', async () => {
    for (const id of [NOBODY, aircraft['Q-SBA']]) {
      const attempt = await writeUp({ aircraft: id });
      expect(attempt).toMatchObject({ status: 404, code: 'not-found', changed: [] });
      expect(attempt.detail).toContain(id);
    }
    expect(await writeUp({ aircraft: 'Q-KEA' })).toMatchObject({ status: 422, at: ['/aircraft'], changed: [] });
  });

  it.each([
    ['99-99-99', 'the MEL has no entry 99-99-99'],
    ['28-22-11', 'entry 28-22-11 is not for the configuration of Q-KEA'],
    ['__proto__', 'the MEL has no entry __proto__'],
  ])('names an item that the MEL lists for this aircraft, not %s', async (entry, reason) => {
    const attempt = await writeUp({ item: { entry, units: ['L'] } });
    expect(attempt).toMatchObject({ status: 422, code: 'invalid-input', at: ['/item/entry'], changed: [] });
    expect(attempt.detail).toBe(reason);
  });

  it('names a unit that is installed, and says which are', async () => {
    const attempt = await writeUp({ item: { entry: '33-42-11', units: ['3'] } });
    expect(attempt).toMatchObject({ status: 422, code: 'unit-not-installed', changed: [] });
    expect(attempt.detail).toContain('L; R');
    for (const units of [[], ['L', 'L']]) {
      const none = await writeUp({ item: { entry: '33-42-11', units } });
      expect(none).toMatchObject({ status: 422, at: ['/item/units'], changed: [] });
    }
  });

  it.each([
    ['in the future', { recordedAt: '2026-01-15T12:12:01Z' }, 'recorded-in-the-future'],
    ['in the future by its offset', { recordedAt: '2026-01-15T12:00:00-01:00' }, 'recorded-in-the-future'],
    ['long ago without a reason', { recordedAt: '2026-01-15T11:11:00Z' }, 'late-entry-needs-reason'],
    ['long ago with a blank reason', { recordedAt: '2026-01-10T11:00:00Z', lateReason: '  ' }, 'invalid-input'],
    ['before it occurred', { occurredAt: '2026-01-15T12:00:01Z' }, 'occurred-after-recorded'],
    ['on a day that does not exist', { recordedAt: '2026-02-30T12:00:00Z' }, 'invalid-input'],
    ['at an hour that does not exist', { recordedAt: '2026-01-15T24:00:00Z' }, 'invalid-input'],
    ['without an offset', { recordedAt: '2026-01-15T12:00:00' }, 'invalid-input'],
    ['with an offset that no place uses', { recordedAt: '2026-01-15T12:00:00+19:00' }, 'invalid-input'],
    ['in a year that nobody means', { recordedAt: '0026-01-15T12:00:00Z' }, 'invalid-input'],
  ])('is not recorded %s', async (_says, changes, code) => {
    expect(await writeUp(changes)).toMatchObject({ status: 422, code, changed: [] });
  });

  it('names a system by two digits and an origin that there is', async () => {
    for (const system of ['8', '8x', '080', '']) {
      expect(await writeUp({ system })).toMatchObject({ status: 422, at: ['/system'], changed: [] });
    }
    expect(await writeUp({ origin: 'robot' })).toMatchObject({ status: 422, at: ['/origin'], changed: [] });
  });
});

describe('a deferral', () => {
  it('needs a row that this entry has, and says that there is none', async () => {
    for (const row of ['9', 'o1', '__proto__', 'constructor']) {
      const attempt = await defer('odrin', { row });
      expect(attempt).toMatchObject({ status: 409, code: 'row-not-available', at: ['/row'], changed: [] });
      expect(attempt.detail).toContain(`row ${row}`);
    }
  });

  it('takes its category from the MEL, never from the request', async () => {
    expect(await defer('odrin', { row: '1', category: 'D' })).toMatchObject({
      status: 422,
      at: ['/category'],
      changed: [],
    });
  });

  it('stands on one basis', async () => {
    const document = { kind: 'permit', reference: 'PF-12', issuedBy: 'Authority', limit: 'one flight' };
    expect(await defer('odrin', { row: '1', document })).toMatchObject({
      status: 422,
      at: ['/document'],
      changed: [],
    });
    expect(await defer('odrin', {}, { statement: 'I defer' })).toMatchObject({ status: 409, changed: [] });
  });

  it('is not signed with another secret, nor under another statement than the one shown', async () => {
    const wrong = await defer('odrin', { row: '1' }, { secret: 'copper lantern meadoW' });
    expect(wrong).toMatchObject({ status: 403, code: 'secret-wrong' });
    // The attempt stands in the record, and in nothing else.
    expect(wrong.changed.filter((table) => !/^(record|tree)_/.test(table))).toEqual([]);
    const other = await defer('odrin', { row: '1' }, { statement: 'I looked at it.' });
    expect(other).toMatchObject({ status: 409, code: 'statement-not-shown', changed: [] });
    expect(other.problem['statement']).toContain('on the basis of MEL 33-42-11 row 1');
  });

  it.each([
    ['dalm', 403, 'authorisation-not-valid-then', 'whose authorisation has run out'],
    ['ressa', 403, 'authorisation-does-not-cover', 'who is authorised for another type'],
    ['hebba', 403, 'authorisation-does-not-cover', 'who may sign procedures only'],
    ['wenna', 403, 'no-authorisation', 'who holds no authorisation'],
  ])('is not for %s', async (name, status, code) => {
    expect(await defer(name)).toMatchObject({ status, code, changed: [] });
  });
});

describe('what belongs to a deferral', () => {
  it('is refused before there is one', async () => {
    const work = '33-42-11/1/M1';
    const body = { work, doneAt: clock, leaves: [] };
    expect(await act('odrin', 'procedures', { act: 'procedure', work }, body)).toMatchObject({
      status: 409,
      changed: [],
    });
    for (const [address, query, more] of [
      ['undone', 'undo', { items: ['nothing'] }],
      ['test', 'test', { test: 'Lamp test.', result: 'good' }],
      ['inspection', 'inspect', { findings: 'Good.' }],
      ['restoration', 'restore', { reference: 'K-AMM' }],
      ['release', 'release', {}],
    ] as const) {
      const attempt = await act('odrin', address, { act: query }, more);
      expect(attempt, address).toMatchObject({ status: 409, changed: [] });
      expect(['no-open-work', 'left-item-unknown'], address).toContain(attempt.code);
    }
  });

  it('a flight that is not of this aircraft is refused where it is named', async () => {
    const work = '33-42-11/1/M1';
    for (const forFlight of [NOBODY, flights['QOF 312']]) {
      const body = { work, doneAt: clock, leaves: [], forFlight };
      expect(await act('odrin', 'procedures', { act: 'procedure', work }, body)).toMatchObject({
        status: 404,
        code: 'not-found',
        changed: [],
      });
    }
  });
});

describe('an answer to a question', () => {
  const fact = (changes: object, name = 'brask'): Promise<Attempt> =>
    attempts.refused(person(name), 'PUT', `/api/aircraft/${aircraft['Q-KEA']}/facts`, {
      body: {
        key: 'flight.groundAirAtStation',
        value: true,
        flight: flights['QOF 109'],
        source: 'telephone',
        observedAt: clock,
        ...changes,
      },
    });

  it.each([
    ['a fact that nobody knows', { key: 'flight.colour' }, '/key'],
    ['a fact of the prototype', { key: 'constructor' }, '/key'],
    ['a fact that is computed', { key: 'entry.up[21-50-11]' }, '/key'],
    ['work, which is signed and not answered', { key: 'work.done[80-12-11/1/M1]' }, '/key'],
    ['a text for a yes or no', { value: 'yes' }, '/value'],
    ['nothing', { value: null }, '/value'],
    ['an object', { value: { yes: true } }, '/value'],
    ['a flight level in feet', { key: 'flight.level', value: 31_000 }, '/value'],
    ['a flight level below the ground', { key: 'flight.level', value: -1 }, '/value'],
    ['a choice that there is not', { key: 'flight.icing', value: 'a little' }, '/value'],
    ['a number for a choice', { key: 'flight.icing', value: 1 }, '/value'],
    ['an observation still to come', { observedAt: '2026-01-15T12:12:01Z' }, '/observedAt'],
    ['an end before the observation', { validUntil: '2026-01-15T12:00:00Z' }, '/validUntil'],
    ['a day that does not exist', { observedAt: '2025-02-29T12:00:00Z' }, '/observedAt'],
  ])('%s is refused where it stands', async (_says, changes, at) => {
    const attempt = await fact(changes);
    expect(attempt, attempt.detail).toMatchObject({ status: 422, code: 'invalid-input', at: [at], changed: [] });
  });

  it('about a flight names a flight of this aircraft', async () => {
    const body = { key: 'flight.groundAirAtStation', value: true, source: 'telephone', observedAt: clock };
    const path = `/api/aircraft/${aircraft['Q-KEA']}/facts`;
    expect(await attempts.refused(person('brask'), 'PUT', path, { body })).toMatchObject({
      at: ['/flight'],
      changed: [],
    });
    for (const flight of [NOBODY, flights['QOF 312'], flights['QSB 23']]) {
      expect(await fact({ flight })).toMatchObject({ status: 404, code: 'not-found', changed: [] });
    }
  });

  it('is given by a role that may give it', async () => {
    const attempt = await fact({}, 'odrin');
    expect(attempt).toMatchObject({ status: 403, code: 'role-missing', changed: [] });
    expect(attempt.problem['mayAnswer']).toEqual(['dispatcher', 'maintenance-control']);
  });
});

describe('a judgement', () => {
  const path = () => `/api/aircraft/${aircraft['Q-KEA']}/judgements`;
  const sign = { secret: 'copper lantern meadow', statement: 'x' };

  it('that no row asks for is not found', async () => {
    for (const judgement of ['22-11-11/2/J9', '99-99-99/1/J1', 'nonsense', '__proto__/1/2']) {
      const body = { judgement, accepted: true, sign };
      expect(await attempts.refused(person('brask'), 'POST', path(), { body })).toMatchObject({
        status: 404,
        changed: [],
      });
    }
  });

  it('of the combination is for maintenance control, under the statement shown', async () => {
    const body = { judgement: 'combination', accepted: true, sign };
    expect(await attempts.refused(technician(), 'POST', path(), { body })).toMatchObject({
      status: 403,
      code: 'role-missing',
      changed: [],
    });
    expect(await attempts.refused(person('brask'), 'POST', path(), { body })).toMatchObject({
      status: 409,
      code: 'statement-not-shown',
      changed: [],
    });
  });
});

it('after all that the deferral is done as it should be', async () => {
  const done = await technician().sign(defect, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  expect(done.defect.state).toBe('open under deferral');
  expect(await attempts.changed()).toContain('defect');
});
