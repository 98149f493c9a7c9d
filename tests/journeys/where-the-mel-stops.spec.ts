/**
 * Published checks D-05 and D-06 through the interface: what holds for the flight on which something was found. The same
 * setting is the operator's to change, and a later flight waits for an answer whatever was said.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const MEL = plainList('Operator QTO', [{ number: '33-11-01', title: 'Landing light', category: 'C' }]);
const NOW = '2026-01-19T08:00:00.000Z';
let server: RunningServer;

beforeAll(async () => {
  server = await runningServer({ now: () => NOW });
});

afterAll(() => server.stop());

interface House {
  airline: Airline;
  crew: ApiClient;
}

/** An operator of that preset with one aircraft and a flight ahead. */
async function house(code: string, mark: string, settings: Record<string, unknown>): Promise<House> {
  const signIn = `pilot-${code.toLowerCase()}`;
  const airline = await anAirline(server, {
    code,
    base: 'UTC',
    aircraftType: 'Ambrel',
    settings,
    people: [
      { signIn, name: `Pilot of ${code}`, roles: ['commander'], privileges: ['write-up'] },
      { signIn: `mel-${signIn}`, name: `Engineer of ${code}`, roles: ['mel-engineer'] },
    ],
    aircraft: [mark],
    flights: [
      { number: 'next', aircraft: mark, offBlockAt: '2026-01-19T10:00:00Z', onBlockAt: '2026-01-19T11:00:00Z' },
    ],
  });
  return { airline, crew: await server.signIn(signIn) };
}

const bodyOf = ({ airline }: House, more: object) => ({
  aircraft: Object.values(airline.aircraft)[0],
  origin: 'crew',
  description: 'Landing light does not come on.',
  recordedAt: NOW,
  ...more,
});

async function found(at: House, whenFound?: string): Promise<Shapes['DefectLine']> {
  const body = bodyOf(at, whenFound === undefined ? {} : { whenFound });
  return (await at.crew.post<Shapes['ActDone']>('/api/defects', body)).body.defect;
}

const answer = async ({ airline, crew }: House): Promise<Shapes['Verdict']> =>
  crew.get(`/api/aircraft/${Object.values(airline.aircraft)[0]}/answer?flight=${airline.flights['next']}`);

describe('D-05: found under its own power, before take-off power', () => {
  it('FAA (SEEN-Q): the MEL still applies, a decision is needed before take-off', async () => {
    const { onItsFlight } = await found(await house('QFA', 'Q-FAA', { preset: 'faa' }), 'own-power');
    expect(onItsFlight).toMatchObject({ holds: 'decide-before-take-off', mark: 'SEEN-Q' });
    expect(onItsFlight?.caution).toContain('commander');
  });

  it('EASA (SEEN): the commander judges; history and later reading say the same', async () => {
    const easa = await house('QEA', 'Q-EAA', { preset: 'easa' });
    const { id, onItsFlight } = await found(easa, 'own-power');
    expect(onItsFlight).toMatchObject({ holds: 'commander-judges', mark: 'SEEN' });
    const view = await easa.crew.get<Shapes['DefectView']>(`/api/defects/${id}`);
    expect(view.defect).toMatchObject({ whenFound: 'own-power', onItsFlight });
    expect(view.history[0]?.words).toContain('(found moving under its own power, before take-off power)');
  });

  it("says the operator's own where it settled otherwise, with its reason", async () => {
    const reasons = { melStops: 'MEL preamble, revision 7' };
    const own = await house('QOW', 'Q-OWA', { preset: 'tcca-2022', melStops: 'take-off-power', reasons });
    const { onItsFlight } = await found(own, 'own-power');
    expect(onItsFlight).toMatchObject({ holds: 'decide-before-take-off' });
    expect(onItsFlight?.source).toContain('MEL preamble, revision 7');
  });
});

describe('D-06 (SEEN-Q): found after take-off', () => {
  it('gives no relief for that flight, and the next departure waits for an answer', async () => {
    const at = await house('QTO', 'Q-TOA', { preset: 'faa' });
    await (await server.signIn('mel-pilot-qto')).post('/api/mel', { file: 'ambrel.yaml', text: MEL });
    expect((await answer(at)).verdict).toBe('nothing-open');
    const { onItsFlight, state } = await found(at, 'after-take-off');
    expect([onItsFlight?.holds, onItsFlight?.mark, state]).toEqual(['no-relief', 'SEEN-Q', 'unanswered']);
    expect(onItsFlight?.words).toContain('before the next departure');
    expect((await answer(at)).verdict).toBe('may-not-fly');
  });
});

it('says nothing where nobody said when, and takes no other moment', async () => {
  const at = await house('QNO', 'Q-NOA', { preset: 'easa' });
  expect(await found(at)).toMatchObject({ whenFound: null, onItsFlight: null });
  const problem = await at.crew.refused('POST', '/api/defects', { body: bodyOf(at, { whenFound: 'somewhere' }) });
  expect(problem.code).toBe('invalid-input');
  expect(problem.errors?.map(({ pointer }) => pointer)).toEqual(['/whenFound']);
});
