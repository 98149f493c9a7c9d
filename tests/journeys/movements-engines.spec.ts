/**
 * Counters kept apart for each engine: what a person read and signed, what the aircraft flew since, and what an engine
 * used that no leg tells. A deferral of one engine counts its own. Everything is invented; that the greater use counts is
 * our own rule, and that counters are of an engine with its serial number is common practice, no source.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import { flownLegs, flownLegsOfAll } from '../../apps/server/src/movements/flown-legs.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { ENGINES_MEL } from './movements-engines-mel.js';
import { movementsOperator, type MovementsOperator, nameAt, SECRET } from './movements-operator.js';

let clock = '2026-05-14T06:00:00.000Z';
let server: RunningServer;
let operator: MovementsOperator;
let neighbour: MovementsOperator;
let aircraft: string;
let technician: ApiClient;
let dispatcher: ApiClient;
const deferred: Record<string, string> = {};

type Counted = Shapes['EngineCounted'];
const of = (id = aircraft) => `/api/aircraft/${id}/engines`;
const view = () => technician.get<Shapes['EnginesView']>(of());
const minutes = (text: string) => Number(text.split(':')[0]) * 60 + Number(text.split(':')[1]);

async function body(act: 'reading' | 'run' | 'withdrawn', said: object, client = technician): Promise<object> {
  const { statement } = await client.get<Shapes['Statement']>(`${of()}/statement?act=${act}`);
  const kind = act === 'withdrawn' ? {} : { kind: act };
  return { ...kind, reason: 'log of the engine', ...said, sign: { secret: SECRET, statement } };
}
const reading = (position: string, serial: string, at: string, hours: string, cycles: number) =>
  body('reading', { position, serial, at, minutes: minutes(hours), cycles });
const counters = async () =>
  (await view()).counters.map(({ position, serial, minutes: now, cycles }) => [position, serial, now, cycles]);
const left = async (defect: string) =>
  (await technician.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect.deadline?.words;

async function receive(at: string, text: string): Promise<Shapes['MovementsReceived']> {
  clock = `${at}:00.000Z`;
  const headers = { 'content-type': 'text/plain' };
  return (await dispatcher.post<Shapes['MovementsReceived']>('/api/movements', text, { headers })).body;
}

async function writeUp(unit: string, entry = '73-21-01'): Promise<string> {
  const written = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft,
    origin: 'technician',
    description: `Control channel B of engine ${unit} failed.`,
    recordedAt: clock,
    item: { entry, units: [unit] },
  });
  return written.body.defect.id;
}
const sign = (defect: string, more: object = {}) =>
  technician.sign(defect, 'deferral', { act: 'defer', entry: '73-21-01', row: '1' }, { row: '1', ...more });

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  operator = await movementsOperator(server, { code: 'QE', marks: ['Q-EAA'] });
  neighbour = await movementsOperator(server, { code: 'QU', marks: ['Q-UAA'] });
  aircraft = operator.aircraft['Q-EAA'] as string;
  technician = await server.signIn(nameAt('QE', 'technician'));
  dispatcher = await server.signIn(nameAt('QE', 'dispatcher'));
  const melEngineer = await server.signIn(nameAt('QE', 'mel-engineer'));
  await melEngineer.post('/api/mel', { file: 'engines.json', text: JSON.stringify(ENGINES_MEL) });
});

afterAll(() => server.stop());

describe('the counters of an engine', () => {
  it('are not known until somebody has read them, and then are what was read, with a signature', async () => {
    expect(await counters()).toEqual([]);
    for (const [position, serial, hours, cycles] of [
      ['1', 'K-101', '74000:10', 9000],
      ['2', 'K-202', '120:00', 60],
    ] as const) {
      const sent = await reading(position, serial, '2026-05-14T05:30:00Z', hours, cycles);
      await technician.post<Counted>(of(), sent);
    }
    expect(await counters()).toEqual([
      ['1', 'K-101', minutes('74000:10'), 9000],
      ['2', 'K-202', minutes('120:00'), 60],
    ]);
    expect((await view()).counts).toMatchObject([{ by: nameAt('QE', 'technician') }, { version: 1, history: [] }]);
  });

  it('go on with every leg that messages tell, and with a correction of it', async () => {
    for (const unit of ['1', '2']) {
      const defect = await writeUp(unit);
      if (unit === '1') await sign(defect);
      deferred[unit] = defect;
    }
    await receive('2026-05-14T09:10', 'MVT\nQE1/14.QEAA.QXA\nAD0700/0710\n\nMVT\nQE1/14.QEAA.QXB\nAA0900/0905');
    expect(await counters()).toEqual([
      ['1', 'K-101', minutes('74002:00'), 9001],
      ['2', 'K-202', minutes('121:50'), 61],
    ]);
    expect(await left(deferred['1'] as string)).toBe(
      '123 h 10 min of 125 h of the engine left; 39 of 40 engine-cycles left.',
    );
    const { items } = await receive('2026-05-14T09:30', 'COR MVT\nQE1/14.QEAA.QXB\nAA0840/0905');
    expect(items).toMatchObject([
      { before: { used: { engineMinutes: 110 } }, after: { used: { engineMinutes: 90 } } },
    ]);
    expect((await counters())[0]).toEqual(['1', 'K-101', minutes('74001:40'), 9001]);
  });

  it('differ once an engine alone is started: the deferral of that engine uses it, and says that it changed', async () => {
    clock = '2026-05-14T10:30:00.000Z';
    const ran = await body('run', { position: '1', at: '2026-05-14T10:00:00Z', minutes: 20, cycles: 2 });
    const { counters: after, items, version } = (await technician.post<Counted>(of(), ran)).body;
    expect(after.map(({ minutes: now, cycles }) => [now, cycles])).toEqual([
      [minutes('74002:00'), 9003],
      [minutes('121:30'), 61],
    ]);
    expect([version, items.map(({ number, before, after: is }) => [number, before.words, is.words])]).toEqual([
      1,
      [
        [
          'Q-EAA/1',
          '123 h 30 min of 125 h of the engine left; 39 of 40 engine-cycles left.',
          '123 h 10 min of 125 h of the engine left; 37 of 40 engine-cycles left.',
        ],
      ],
    ]);
  });

  it('are corrected by another signed version; what stood before stays readable', async () => {
    const count = (await view()).counts.find(({ kind }) => kind === 'run')!;
    const better = await body('run', {
      position: '1',
      at: '2026-05-14T10:00:00Z',
      minutes: 20,
      cycles: 1,
      reason: 'one start only',
    });
    const path = `${of()}/${count.id}`;
    expect(await technician.refused('PUT', path, { body: better, ifMatch: '"7"' })).toMatchObject({
      code: 'changed-meanwhile',
    });
    await technician.put(path, better, { ifMatch: `"${count.version}"` });
    expect((await counters())[0]).toEqual(['1', 'K-101', minutes('74002:00'), 9002]);
    const history = [{ version: 1, cycles: 2, reason: 'log of the engine' }];
    const corrected = (await view()).counts.find(({ id }) => id === count.id);
    expect(corrected).toMatchObject({ version: 2, reason: 'one start only', history });
    await technician.post(`${path}/withdrawn`, await body('withdrawn', { reason: 'it was engine 2' }), {
      ifMatch: '"2"',
    });
    expect((await counters())[0]).toEqual(['1', 'K-101', minutes('74001:40'), 9001]);
  });

  it('read higher than counted use up the difference, and read lower give nothing back', async () => {
    const high = await reading('1', 'K-101', '2026-05-14T11:00:00Z', '74001:55', 9001);
    clock = '2026-05-14T11:30:00.000Z';
    await technician.post<Counted>(of(), high);
    expect((await view()).counters[0]).toMatchObject({ differed: { minutes: 15, cycles: 0 } });
    expect(await left(deferred['1'] as string)).toBe(
      '123 h 15 min of 125 h of the engine left; 39 of 40 engine-cycles left.',
    );
  });

  it('are those of the engine that is fitted: another serial number begins with its own reading', async () => {
    const fitted = await reading('2', 'K-303', '2026-05-14T11:15:00Z', '0:00', 0);
    const { counters: after, items } = (await technician.post<Counted>(of(), fitted)).body;
    expect(after[1]).toMatchObject({ serial: 'K-303', minutes: 0, cycles: 0, differed: null });
    expect(items).toEqual([]);
  });
});

describe('a start that a document states', () => {
  const start = { counter: minutes('120:00'), reading: minutes('121:30'), readAt: '2026-05-14T11:15:00Z' };
  const refusedToSign = async (defect: string, more: object, entry = '73-21-01') => {
    const query = { act: 'defer', entry, row: '1' };
    return technician.signRefused(defect, 'deferral', query, { row: '1', ...more });
  };

  it.each([
    ['with two counters beside it, of which one alone is meant', { ...start, document: 'fault report 7' }],
    ['that is later than row and policy count', { at: '2026-05-14T11:45:00Z', document: 'fault report 7' }],
    ['that is half a counter', { counter: 5, document: 'fault report 7' }],
    ['that is an instant and a counter', { at: '2026-05-14T05:00:00Z', counter: 5, document: 'fault report 7' }],
    ['of no document', { at: '2026-05-14T05:00:00Z', document: ' ' }],
  ])('%s is refused, and nothing is signed', async (_, stated) => {
    const before = await technician.get<Shapes['DefectView']>(`/api/defects/${deferred['2']}`);
    const refusal = await refusedToSign(deferred['2'] as string, { start: stated });
    expect(refusal.status).toBe(422);
    const after = await technician.get<Shapes['DefectView']>(`/api/defects/${deferred['2']}`);
    expect(after.defect.state).toBe(before.defect.state);
  });

  it('is refused where calendar days count', async () => {
    const light = await writeUp('1', '33-42-01');
    const stated = { at: '2026-05-14T05:00:00Z', document: 'fault report 7' };
    const refusal = await refusedToSign(light, { start: stated }, '33-42-01');
    expect(refusal).toMatchObject({ status: 422, code: 'start-of-days-stated' });
  });

  it('counts from an instant before the deferral: what was flown since then is used', async () => {
    const stated = { at: '2026-05-14T06:30:00Z', document: 'fault report 7' };
    const { explanation } = await sign(deferred['2'] as string, { start: stated });
    expect(explanation).toContain('counted from the stated instant, 14 May 2026 06:30 UTC');
    expect(await left(deferred['2'] as string)).toBe(
      '123 h 30 min of 125 h of the engine left; 39 of 40 engine-cycles left.',
    );
  });

  it('counts from a counter under another document, with what it read since', async () => {
    const defect = await writeUp('1', '33-42-01');
    const document = {
      kind: 'approved-data',
      reference: 'EO 12',
      issuedBy: 'the design organisation',
      limit: '100 engine-hours',
      interval: '100 engine-hours',
    };
    const stated = { ...start, readAt: '2026-05-14T09:40:00Z', document: 'EO 12' };
    const query = { act: 'defer', document: 'approved data EO 12' };
    await technician.sign(defect, 'deferral', query, { document, start: stated });
    expect(await left(defect)).toBe('98 h 15 min of 100 h of the engine left.');
  });
});

it('a start stated long before the record counts what was flown since, also weeks ago', async () => {
  const text =
    'RECEIVED 2026-04-20T12:00:00Z\nMVT\nQE9/20.QEAA.QXA\nAD0700/0710\n\nMVT\nQE9/20.QEAA.QXB\nAA0840/0850';
  await receive('2026-05-14T11:50', text);
  const defect = await writeUp('2', '33-42-01');
  const document = { kind: 'approved-data', reference: 'EO 13', issuedBy: 'a design organisation', limit: '90 h' };
  const query = { act: 'defer', document: 'approved data EO 13' };
  const start = { at: '2026-04-20T06:00:00Z', document: 'EO 13' };
  await technician.sign(defect, 'deferral', query, { document: { ...document, interval: '90 flight-hours' }, start });
  expect(await left(defect)).toBe('87 h of 90 h of flight left.');
});

describe('what cannot be so', () => {
  it.each([
    ['an instant that has not come', { at: '2026-05-15T00:00:00Z' }, /has not come/],
    ['a day that there is not', { at: '2026-02-30T00:00:00Z' }, /real date/],
    ['no whole minute', { at: '2026-05-14T08:00:30Z' }, /whole minute/],
    ['a reading of no engine', { serial: undefined }, /serial/],
    ['counters that run back', { at: '2026-05-14T11:20:00Z', minutes: 5 }, /cannot read/],
    ['half a minute', { minutes: 1.5 }, /integer/],
    ['less than nothing', { cycles: -1 }, /cycles/],
  ])('%s is refused and nothing is stored', async (_, wrong, reason) => {
    const before = await view();
    const said = { position: '1', serial: 'K-101', at: '2026-05-14T10:30:00Z', minutes: 4_440_200, cycles: 9001 };
    const sent = await body('reading', { ...said, ...wrong });
    const refusal = await technician.refused('POST', of(), { body: sent });
    expect(refusal).toMatchObject({ status: 422, code: 'invalid-input' });
    expect(JSON.stringify(refusal)).toMatch(reason);
    expect({ ...(await view()), at: '' }).toEqual({ ...before, at: '' });
  });

  it('a run of more than a day, or that used nothing, is none', async () => {
    for (const used of [
      { minutes: 1500, cycles: 1 },
      { minutes: 0, cycles: 0 },
    ]) {
      const sent = await body('run', { position: '1', at: '2026-05-14T10:00:00Z', ...used });
      expect((await technician.refused('POST', of(), { body: sent })).status).toBe(422);
    }
  });

  it('needs an authorisation and a statement that was shown, and an aircraft of the operator', async () => {
    const said = { position: '1', serial: 'K-101', at: '2026-05-14T11:20:00Z', minutes: 4_440_200, cycles: 9100 };
    const unauthorised = await dispatcher.refused('POST', of(), { body: await body('reading', said, dispatcher) });
    expect(unauthorised.status).toBe(403);
    const other = { ...(await body('reading', said)), sign: { secret: SECRET, statement: 'Anything' } };
    expect((await technician.refused('POST', of(), { body: other })).code).toBe('statement-not-shown');
    const theirs = of(neighbour.aircraft['Q-UAA']);
    expect((await technician.refused('GET', theirs)).code).toBe('not-found');
    const sent = await body('reading', said);
    expect((await technician.refused('POST', theirs, { body: sent })).code).toBe('not-found');
  });
});

it('what is read for the whole fleet at once, as reminders do, is what is read for one aircraft', async () => {
  for (const from of ['2026-04-20T00:00:00.000Z', '2026-05-14T10:30:00.000Z']) {
    const [one, all] = await server.store.withOperator(operator.id, null, async (tx) => [
      await flownLegs(tx, aircraft, from),
      await flownLegsOfAll(tx, new Map([[aircraft, from]])),
    ]);
    expect(one.some(({ onlyEngines }) => onlyEngines)).toBe(true);
    expect(all.get(aircraft)).toEqual(one);
  }
});

it('the record holds every statement with its signature, and verifies', async () => {
  await expect
    .poll(async () => (await verifyRecord(server.ownerUrl, 'QE'))[0])
    .toMatchObject({ misfit: null, waiting: 0 });
  const path = `/api/record?aircraft=${aircraft}`;
  const { entries } = await technician.get<Shapes['RecordEntries']>(path);
  const told = entries.filter(({ what }) => what.startsWith('engine.')).map(({ what }) => what);
  const readings = Array.from({ length: 4 }, () => 'engine.reading');
  expect(told.toSorted()).toEqual([...readings, 'engine.run', 'engine.run-corrected', 'engine.withdrawn']);
});
