/** A list of flights is planned whole or not at all, and the same list sent again plans nothing twice. Everything is invented. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { type RunningServer, runningServer } from '../support/running-server.js';

const HEAD = 'flight,from,to,departure,arrival,aircraft';
let server: RunningServer;
let control: ApiClient;
let aircraft: Record<string, string>;
let operator: string;

beforeAll(async () => {
  server = await runningServer({ now: () => '2026-01-15T12:12:00.000Z', demo: true });
  control = await server.signIn('brask');
  operator = (await control.get<Shapes['SessionView']>('/api/session')).operator?.id ?? '';
  const { aircraft: all } = await control.get<Shapes['AircraftEntries']>('/api/aircraft');
  aircraft = Object.fromEntries(all.map(({ registration, id }) => [registration, id]));
});
afterAll(() => server.stop());

const text = (...lines: string[]) => [HEAD, ...lines].join('\n');
const plan = async (...lines: string[]) =>
  (await control.post<Shapes['FlightsPlanned']>('/api/flight-plans', { text: text(...lines) })).body;
const refused = async (...lines: string[]) => {
  const { detail, errors } = await control.refused('POST', '/api/flight-plans', { body: { text: text(...lines) } });
  return { detail, reasons: errors?.map(({ reason }) => reason) };
};
const inAll = () =>
  server.store.withOperator(operator, null, async (tx) => {
    const each = await Promise.all(Object.values(aircraft).map((id) => tx.flights.ofAircraft(id)));
    return each.flat().length;
  });

const FIRST = 'QOF 901,QVR,QHT,2026-03-02T05:30Z,2026-03-02T07:10Z,Q-KEA';
const SECOND = 'QOF 902,QHT,QVR,2026-03-02T08:00Z,2026-03-02T09:40Z,Q-KEA';
const OTHER = 'QOF 903,QVR,QHT,2026-03-02T05:30Z,2026-03-02T07:10Z,Q-KEB';

describe('a list of flights', () => {
  it('with one bad line plans nothing, and names what is wrong by line and column', async () => {
    const before = await inAll();
    const bad = 'QOF 904,QZZ,QVR,2026-01-15T08:00Z,2026-01-15T07:00Z,Q-XXX';
    expect(await refused(FIRST, SECOND, bad)).toEqual({
      detail: '3 things are not right in the list; nothing of it was planned.',
      reasons: [
        'line 4, from: there is no station QZZ; enter it under Stations first',
        'line 4, arrival: it would arrive before it leaves',
        'line 4, aircraft: there is no aircraft Q-XXX in the fleet',
      ],
    });
    expect(await inAll()).toBe(before);
  });

  it('in the past, of two aircraft places at once, or twice in itself, is refused', async () => {
    const [past, long, twice, atOnce] = [
      'QOF 905,QVR,QHT,2026-01-15T08:00Z,2026-01-15T09:00Z,Q-KEA',
      'QOF 906,QVR,QHT,2026-03-05T08:00Z,2026-03-06T08:01Z,Q-KEA',
      'QOF 901,QVR,QHT,2026-03-02T15:30Z,2026-03-02T17:10Z,Q-KEB',
      'QOF 907,QVR,QHT,2026-03-02T07:09Z,2026-03-02T08:10Z,Q-KEA',
    ];
    const reasons = async (...lines: string[]) => (await refused(...lines)).reasons;
    expect(await reasons(past, long)).toEqual([
      'line 2, departure: it lies in the past; take the line out, and enter what was flown as a leg',
      'line 3, arrival: a flight of more than 24 hours is none',
    ]);
    expect(await reasons(FIRST, twice)).toEqual(['line 3, flight: QOF 901 of that day stands in line 2 already']);
    expect(await reasons(FIRST, atOnce)).toEqual(['line 3, departure: Q-KEA is on QOF 901 of line 2 then']);
  });

  it('that is good is planned, flight by flight, and recorded', async () => {
    const before = await inAll();
    expect(await plan(FIRST, SECOND, OTHER)).toMatchObject({ planned: 3, kept: 0 });
    expect(await inAll()).toBe(before + 3);
  });

  it('sent again plans nothing twice; what is new in it is planned', async () => {
    const before = await inAll();
    const fresh = 'QOF 908,QVR,QHT,2026-03-03T05:30Z,2026-03-03T07:10Z,Q-KEA';
    expect(await plan(FIRST, fresh, OTHER)).toEqual({
      planned: 1,
      kept: 2,
      aircraft: [{ id: aircraft['Q-KEA'], registration: 'Q-KEA' }],
    });
    expect(await inAll()).toBe(before + 1);
  });

  it('with a flight that is planned otherwise, or where the aircraft flies another, is refused', async () => {
    expect(await refused(FIRST.replace('05:30', '05:45'), OTHER.replace('Q-KEB', 'Q-KEC'))).toMatchObject({
      reasons: [
        'line 2, flight: QOF 901 is planned otherwise that day (Q-KEA, QVR to QHT, 2026-03-02T05:30Z to 2026-03-02T07:10Z); cancel that one first, or take the line out',
        expect.stringMatching(/^line 3, flight: QOF 903 is planned otherwise that day \(Q-KEB, /),
      ],
    });
    const across = 'QOF 909,QVR,QHT,2026-03-02T09:39Z,2026-03-02T10:40Z,Q-KEA';
    expect((await refused(across)).reasons).toEqual([
      'line 2, departure: Q-KEA is planned for QOF 902 then, from 2026-03-02T08:00Z',
    ]);
    expect(await plan(across.replace('09:39', '09:40'))).toMatchObject({ planned: 1 });
  });

  it('stands whole in what is planned for the aircraft, and any flight of it can be cancelled', async () => {
    const day = (place: number) => `2026-04-${String(place + 1).padStart(2, '0')}`;
    const month = Array.from({ length: 20 }, (_, n) => `QOF 95${n},QVR,QHT,${day(n)}T05:30Z,${day(n)}T07:10Z,Q-KEC`);
    await plan(...month);
    const path = `/api/aircraft/${aircraft['Q-KEC']}/flights`;
    const standing = async () => {
      const { flights } = await control.get<Shapes['PlannedFlights']>(path);
      return flights.filter(({ number }) => number.startsWith('QOF 95'));
    };
    expect((await standing()).map(({ number }) => number)).toEqual(month.map((line) => line.split(',')[0]));
    const last = (await standing()).at(-1);
    await control.post(`${path}/${last?.id}/cancellation`, { reason: 'The charter was called off.' });
    expect((await standing()).map(({ id }) => id)).not.toContain(last?.id);
    expect(await standing()).toHaveLength(19);
  });

  it('is nothing for a technician, nor for another house', async () => {
    const technician = await server.signIn('odrin');
    const answer = await technician.refused('POST', '/api/flight-plans', { body: { text: text(FIRST) } });
    expect(answer.status).toBe(403);
    const second = await server.signIn('kesh');
    expect((await second.refused('GET', `/api/aircraft/${aircraft['Q-KEA']}/flights`)).status).toBe(404);
    const { errors } = await second.refused('POST', '/api/flight-plans', { body: { text: text(FIRST) } });
    expect(errors?.map(({ reason }) => reason)).toContain(
      'line 2, aircraft: there is no aircraft Q-KEA in the fleet',
    );
  });
});
