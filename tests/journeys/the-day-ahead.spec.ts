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
  it('tells each planned flight of each aircraft, and of them the fleet says the same at a glance', async () => {
    let told = 0;
    for (const { id, registration, nextFlight, ahead: glance } of fleet) {
      const day = await ahead(id);
      const { flights, kept, possible, breaks } = day;
      expect(glance?.flights ?? 0, registration).toBe(flights.length);
      if (glance !== null) {
        expect([glance.kept, glance.possible], registration).toEqual([kept, possible]);
        expect([glance.breaks?.flight.id, glance.breaks?.verdict], registration).toEqual([
          breaks?.flight,
          breaks?.verdict,
        ]);
      }
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

  it('says all of what is tried: the answer, why, the work, the questions, and the least to fix', async () => {
    const { id, nextFlight } = fleet.find(({ registration }) => registration === 'Q-KEA')!;
    const flight = nextFlight!.flight.id;
    const ask = async (changes: object, more: object = {}) => {
      const body = { aircraft: id, flight, propose: [], changes, ...more };
      return (await control.post<Shapes['Verdict']>('/api/dispatch/questions', body)).body;
    };
    // Nobody has said whether the approach needs the autopilot: not settled, and somebody has to be asked.
    const open = await ask({ broken: [{ entry: '22-11-11', units: ['1'] }] });
    expect(open.verdict).toBe('not-settled');
    expect(open.questions.map(({ fact }) => fact)).toContain('flight.minimaNeed[22-11-11]');
    expect(open.questions[0]?.mayAnswer.length).toBeGreaterThan(0);
    expect(open.helps?.leastToFix).toBe(null);
    // Wing anti-ice and icing: no row helps, and the least to fix is what was taken as failed.
    const valve = { entry: '30-11-21', units: ['L'] };
    const icing = [{ key: 'flight.icing', value: 'forecast' }];
    const refused = await ask({ broken: [valve], facts: icing });
    expect(refused.verdict).toBe('may-not-fly');
    expect(refused.reasons.join()).toContain('icing: forecast (tried)');
    expect(refused.helps?.leastToFix?.repairs).toEqual([{ defects: ['tried-1'], minutes: null }]);
    expect(refused.helps?.whyRefused.map(({ defect }) => defect)).toContain('tried-1');
    // None: the row and its work are still to be signed, by somebody, in so many minutes.
    const work = await ask({ broken: [valve], facts: [{ key: 'flight.icing', value: 'none' }] });
    expect(work).toMatchObject({ verdict: 'after-work', questions: [] });
    expect(work.work.length).toBeGreaterThan(1);
    expect(work.helps).toBeUndefined();
    // On the flight of another aircraft, at another instant.
    const other = fleet.find(({ registration }) => registration === 'Q-KED')!.nextFlight!.flight.id;
    const at = '2026-01-15T13:00:00Z';
    const elsewhere = await ask({ broken: [valve] }, { flight: other, at });
    expect(elsewhere).toMatchObject({ verdict: 'may-not-fly', flight: other, at, aircraft: 'Q-KEA' });
  });

  it('tries no other row than the one that is asked about', async () => {
    const { id, nextFlight } = fleet.find(({ registration }) => registration === 'Q-KEA')!;
    const rows = async (broken: object[]) => {
      const body = { aircraft: id, flight: nextFlight!.flight.id, propose: [], changes: { broken } };
      const { items } = (await control.post<Shapes['Verdict']>('/api/dispatch/questions', body)).body;
      return items.flatMap(({ entry, row }) => (entry === '22-11-11' ? [row] : []));
    };
    const [pilot, valve] = [
      { entry: '22-11-11', units: ['1'] },
      { entry: '30-11-21', units: ['L'] },
    ];
    expect(await rows([pilot, valve])).toEqual(['1']);
    expect(await rows([{ ...pilot, row: '2' }, valve])).toEqual(['2']);
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
