/**
 * Maintenance control at the small hours, through HTTP alone: which of today's flights can these aircraft fly, what if
 * something changes, and could two of them exchange what is planned?
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { databaseDigest } from '../support/database-digest.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const NOW = '2026-01-15T12:12:00.000Z';
let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let control: ApiClient;
let fleet: Shapes['FleetLine'][];

const ahead = (id: string): Promise<Shapes['NextFlights']> => control.get(`/api/aircraft/${id}/next-flights`);

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  clock = NOW;
  control = await server.signIn('brask');
  fleet = (await control.get<Shapes['Fleet']>('/api/fleet')).aircraft;
});
afterAll(() => server.stop());

describe('the day ahead', () => {
  it('tells each planned flight of each aircraft, and the first says what the fleet says', async () => {
    let told = 0;
    for (const { id, registration, nextFlight } of fleet) {
      const day = await ahead(id);
      expect(day.registration).toBe(registration);
      expect(day.flights[0]?.verdict.verdict ?? null, registration).toBe(nextFlight?.verdict ?? null);
      expect(day.kept).toBeLessThanOrEqual(day.possible);
      if (day.kept < day.flights.length) expect(day.breaks?.flight).toBe(day.flights[day.kept]?.flight.id);
      else expect(day.breaks).toBe(null);
      told += day.flights.length;
    }
    expect(told).toBeGreaterThan(fleet.length);
  });

  it('is tried with changes, of which nothing is stored', async () => {
    const line = fleet.find(({ openItems, nextFlight }) => openItems > 0 && nextFlight !== null)!;
    const flight = line.nextFlight!.flight.id;
    const { items } = await control.get<Shapes['AircraftView']>(`/api/aircraft/${line.id}`);
    const before = await databaseDigest(server.ownerUrl);
    const ask = async (changes: object, at?: string) =>
      (
        await control.post<Shapes['Verdict']>('/api/dispatch/questions', {
          aircraft: line.id,
          flight,
          propose: [],
          changes,
          ...(at === undefined ? {} : { at }),
        })
      ).body;
    const whole = await ask({ fix: items.map(({ id }) => id) });
    expect(whole.verdict).toBe('nothing-open');
    const broken = await ask({ fix: items.map(({ id }) => id), broken: [{ entry: '80-12-11', units: ['1'] }] });
    expect(broken.items.map(({ entry, row }) => [entry, row !== null])).toContainEqual(['80-12-11', true]);
    expect(broken.verdict).not.toBe('nothing-open');
    const nobody = await ask({
      fix: items.map(({ id }) => id),
      broken: [{ entry: '80-12-11', units: ['1'], row: '1' }],
      facts: [{ key: 'flight.authorisedPersonAtStation', value: false }],
    });
    expect(nobody.verdict).toBe('may-not-fly');
    expect(await databaseDigest(server.ownerUrl)).toEqual(before);
  });

  it.each([
    ['a defect that is not open here', { fix: ['0198c0de-0000-7000-8000-000000000000'] }, 'not-found'],
    ['an entry that is not fitted', { broken: [{ entry: '99-99', units: ['1'] }] }, 'invalid-input'],
    ['a unit that is not fitted', { broken: [{ entry: '80-12-11', units: ['9'] }] }, 'invalid-input'],
    ['a fact that is none of a flight', { facts: [{ key: 'entry.up[80-12-11]', value: 1 }] }, 'invalid-input'],
    ['a value that does not fit', { facts: [{ key: 'flight.rvsm', value: 'perhaps' }] }, 'invalid-input'],
  ])('refuses %s', async (_what, changes, code) => {
    const body = { aircraft: fleet[0]!.id, propose: [], changes };
    expect(await control.refused('POST', '/api/dispatch/questions', { body })).toMatchObject({ code });
  });
});

describe('a question', () => {
  it('is put first where it settles the answer soonest', async () => {
    const line = fleet.find(({ registration }) => registration === 'Q-KED')!;
    const day = await ahead(line.id);
    const open = day.flights.find(({ verdict }) => verdict.verdict === 'not-settled')!;
    const plan = await control.get<Shapes['QuestionPlan']>(
      `/api/aircraft/${line.id}/questions?flight=${open.flight.id}`,
    );
    expect(plan).toMatchObject({ verdict: 'not-settled', method: 'least-expected' });
    expect(plan.questions[0]).toMatchObject({ fact: 'flight.icing', settles: 1 });
    expect(plan.questions[0]?.replies.map(({ words }) => words)).toEqual(['none', 'forecast or known']);
  });

  it('is not put where nothing is open', async () => {
    const { id, nextFlight } = fleet.find(({ registration }) => registration === 'Q-KEA')!;
    const plan = await control.get<Shapes['QuestionPlan']>(
      `/api/aircraft/${id}/questions?flight=${nextFlight!.flight.id}`,
    );
    expect(plan).toMatchObject({ method: 'nothing-to-ask', questions: [], tree: null });
  });
});

describe('a swap', () => {
  const idOf = (mark: string): string => fleet.find(({ registration }) => registration === mark)?.id ?? '';

  async function allowAll(ids: string[]): Promise<Shapes['AllowedBody'][]> {
    const days = await Promise.all(ids.map(ahead));
    return days.flatMap(({ flights }) => flights.map(({ flight }) => ({ flight: flight.id, aircraft: ids })));
  }

  const swap = async (body: object) => (await control.post<Shapes['SwapProposal']>('/api/fleet/swap', body)).body;

  it('is not offered without a word of operations', async () => {
    const aircraft = ['Q-KEA', 'Q-KED'].map(idOf);
    expect(await swap({ aircraft, allowed: [] })).toMatchObject({ answer: 'not-offered' });
  });

  it('exchanges two rotations where icing grounds one aircraft on its own and on none of the other', async () => {
    const aircraft = ['Q-KEA', 'Q-KED'].map(idOf);
    expect((await ahead(idOf('Q-KED'))).breaks?.verdict).toBe('may-not-fly');
    const proposal = await swap({ aircraft, allowed: await allowAll(aircraft) });
    expect(proposal).toMatchObject({
      answer: 'proposed',
      changedFlights: 16,
      because: '16 flights change aircraft.',
    });
    expect(proposal.assignments?.map(({ planned, aircraft: taken }) => [planned, taken])).toEqual([
      ['Q-KEA', 'Q-KED'],
      ['Q-KED', 'Q-KEA'],
    ]);
  });

  it('keeps the plan where operations allow nothing else, or says which flights cannot be covered and why', async () => {
    const one = idOf('Q-KEA');
    const alone = { aircraft: [one], allowed: await allowAll([one]) };
    expect(await swap(alone)).toMatchObject({ answer: 'proposed', changedFlights: 0 });
    const both = ['Q-KEA', 'Q-KEB'].map(idOf);
    const proposal = await swap({ aircraft: both, allowed: await allowAll(both) });
    // One aircraft for two rotations: the two first flights are enough to see it.
    expect(proposal).toMatchObject({
      answer: 'impossible',
      flights: [{ couldBe: ['Q-KEA'] }, { couldBe: ['Q-KEA'] }],
    });
    expect(proposal.flights?.[0]?.because.join()).toContain('Q-KEB: may not fly. Not every write-up is answered');
  });

  it('refuses an aircraft that is named twice', async () => {
    const one = idOf('Q-KEA');
    const body = { aircraft: [one], allowed: [], spares: [{ aircraft: one, at: 'QVR' }] };
    expect(await control.refused('POST', '/api/fleet/swap', { body })).toMatchObject({ code: 'invalid-input' });
  });
});
