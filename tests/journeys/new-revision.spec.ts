/**
 * A stricter revision comes while an item is open (interval row I-33; AC 120-125 9.2.2.4, SEEN-Q): the open deferral keeps
 * the category and the conditions it was deferred under until the repair; what fails next is deferred under the new one.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Row } from '#mel';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const list = (revision: string, category: string, more: Pick<Row, 'provisos'> = {}) =>
  plainList(
    'Operator QPN',
    [{ number: '33-11-01', title: 'Reading light', category, units: ['1', '2'], ...more }],
    revision,
  );
const STRICTER: Pick<Row, 'provisos'> = {
  provisos: [
    {
      id: 'a',
      text: 'Flight is at or below flight level 310.',
      when: { fact: 'flight.level', operator: 'lessThanInclusive', value: 310 },
    },
  ],
};

let server: RunningServer;
let airline: Airline;
let technician: ApiClient;
let clock = '2026-01-26T10:00:00.000Z';

beforeAll(async () => {
  server = await runningServer({ now: () => clock });
  airline = await anAirline(server, {
    code: 'QPN',
    base: 'UTC',
    aircraftType: 'Ambrel',
    settings: { preset: 'faa', combinationNeedsAcceptance: false },
    people: [
      { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
      { signIn: 'yorvin', name: 'Yorvin Tesk', roles: ['technician'], privileges: ['write-up', 'defer'] },
    ],
    aircraft: ['Q-ABA', 'Q-ABB'],
    flights: ['Q-ABA', 'Q-ABB'].map((aircraft) => ({
      number: `of ${aircraft}`,
      aircraft,
      offBlockAt: '2026-02-04T10:00:00Z',
      onBlockAt: '2026-02-04T11:00:00Z',
      facts: { 'flight.level': 350 },
    })),
  });
  await loaded('1', 'C');
  technician = await server.signIn('yorvin');
});

afterAll(() => server.stop());

async function loaded(revision: string, category: string, more: Pick<Row, 'provisos'> = {}): Promise<void> {
  const engineer = await server.signIn('ullo');
  await engineer.post('/api/mel', { file: `ambrel-${revision}.yaml`, text: list(revision, category, more) });
}

async function deferred(mark: string, unit: string): Promise<Shapes['DefectLine']> {
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    aircraft: airline.aircraft[mark],
    origin: 'crew',
    description: 'Light does not come on.',
    recordedAt: clock,
    item: { entry: '33-11-01', units: [unit] },
  });
  return (await technician.sign(body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' })).defect;
}

async function answer(mark: string): Promise<Shapes['Verdict']> {
  const flight = airline.flights[`of ${mark}`];
  const asked = { aircraft: airline.aircraft[mark], flight, propose: [] };
  return (await technician.post<Shapes['Verdict']>('/api/dispatch/questions', asked)).body;
}

describe('I-33: a revision makes the row shorter and adds a condition', () => {
  let open: Shapes['DefectLine'];

  it('what is open keeps its category and its end, and its answer', async () => {
    open = await deferred('Q-ABA', '1');
    expect(open.deadline).toMatchObject({ lastDay: '2026-02-05' });
    expect((await answer('Q-ABA')).verdict).toBe('may-fly');
    await loaded('2', 'B', STRICTER);
    const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
    const kept = defects.find(({ id }) => id === open.id);
    expect(kept?.deadline).toEqual(open.deadline);
    expect(kept?.basis).toContain('category C');
    expect((await answer('Q-ABA')).verdict).toBe('may-fly');
  });

  it('what fails next is deferred under the new one, for three days and lower down', async () => {
    clock = '2026-01-27T10:00:00.000Z';
    technician = await server.signIn('yorvin');
    const next = await deferred('Q-ABB', '1');
    expect(next.deadline).toMatchObject({ lastDay: '2026-01-30' });
    expect((await answer('Q-ABB')).verdict).toBe('may-not-fly');
  });
});
