/** A list of flights is planned whole or not at all, and the same list sent again plans nothing twice. Everything is invented. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { type RunningServer, runningServer } from '../support/running-server.js';

const HEAD = 'flight,from,to,departure,arrival,aircraft';
let server: RunningServer;
let control: ApiClient;
let aircraft: Record<string, string>;
let operator: string;
let clock = '2026-01-15T12:12:00.000Z';

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
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

/** What the record tells of flights planned, of every aircraft. */
const recorded = () =>
  server.store.withOperator(operator, null, async (tx) => {
    const each = Object.values(aircraft).map((id) => tx.record.ofAircraftAndKind(id, 'flight.planned'));
    return (await Promise.all(each)).flat().map(({ entry }) => entry.payload.number);
  });

const FIRST = 'QOF 901,QVR,QHT,2026-03-02T05:30Z,2026-03-02T07:10Z,Q-KEA';
const SECOND = 'QOF 902,QHT,QVR,2026-03-02T08:00Z,2026-03-02T09:40Z,Q-KEA';
const OTHER = 'QOF 903,QVR,QHT,2026-03-02T05:30Z,2026-03-02T07:10Z,Q-KEB';

describe('a list of flights', () => {
  it('with one bad line plans nothing, and names what is wrong by line and column', async () => {
    const [before, told] = [await inAll(), await recorded()];
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
    expect(await recorded()).toEqual(told);
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
    const [before, told] = [await inAll(), await recorded()];
    expect(await plan(FIRST, SECOND, OTHER)).toMatchObject({ planned: 3, kept: 0 });
    expect(await inAll()).toBe(before + 3);
    const now = await recorded();
    expect(now).toHaveLength(told.length + 3);
    expect(now).toEqual(expect.arrayContaining(['QOF 901', 'QOF 902', 'QOF 903']));
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

  it('with the same number again after midnight, while the aircraft still flies it, is refused', async () => {
    await plan('QOF 920,QVR,QHT,2026-03-10T23:30Z,2026-03-11T01:10Z,Q-KEA');
    const again = 'QOF 920,QVR,QHT,2026-03-11T00:30Z,2026-03-11T02:10Z,Q-KEA';
    const reasons = ['line 2, departure: Q-KEA is planned for QOF 920 then, from 2026-03-10T23:30Z'];
    expect((await refused(again)).reasons).toEqual(reasons);
    expect(await plan(again.replace('T00:30', 'T01:10'))).toMatchObject({ planned: 1 });
  });

  it('leaves both where somebody planned a number twice that day, and they stand so', async () => {
    const [offBlockAt, onBlockAt] = ['2026-03-02T19:00Z', '2026-03-02T20:40Z'];
    const body = { number: 'QOF 903', from: 'QVR', to: 'QHT', offBlockAt, onBlockAt };
    await control.post(`/api/aircraft/${aircraft['Q-KEB']}/flights`, body);
    expect(await plan(OTHER, `QOF 904,QVR,QHT,${offBlockAt},${onBlockAt},Q-KEA`)).toMatchObject({ kept: 1 });
    expect(await plan(`QOF 903,QVR,QHT,${offBlockAt},${onBlockAt},Q-KEB`)).toMatchObject({ planned: 0, kept: 1 });
  });

  it('is held against a second one that comes at the same moment and gives the number to another aircraft', async () => {
    for (const day of ['2026-03-20', '2026-03-21', '2026-03-22']) {
      const line = (mark: string) => `QOF 930,QVR,QHT,${day}T05:30Z,${day}T07:10Z,${mark}`;
      const send = (mark: string) => control.send('POST', '/api/flight-plans', { body: { text: text(line(mark)) } });
      const answers = await Promise.all([send('Q-KEA'), send('Q-KEB')]);
      expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 422]);
    }
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

  it('counts whole where more stand in the plan than the page lists, which says so', async () => {
    const aircraftId = aircraft['Q-KED'] ?? '';
    const first = Date.parse('2026-06-01T04:00Z');
    const instant = (hours: number) => new Date(first + hours * 3_600_000).toISOString();
    const ids = await server.store.withOperator(operator, null, async (tx) => {
      const ends = { aircraftId, fromStation: 'QVR', toStation: 'QHT', flightMinutes: null };
      const made: string[] = [];
      for (let n = 0; n <= 1000; n += 1) {
        const times = { offBlockAt: instant(2 * n), onBlockAt: instant(2 * n + 1) };
        made.push(await tx.flights.add({ ...ends, ...times, number: `QOF ${2000 + n}` }));
      }
      return made;
    });
    const flights = `/api/aircraft/${aircraftId}/flights`;
    const { flights: listed, hasMore } = await control.get<Shapes['PlannedFlights']>(flights);
    expect([listed.length, hasMore]).toEqual([1000, true]);
    const across = { number: 'QOF 960', from: 'QVR', to: 'QHT', offBlockAt: instant(2000), onBlockAt: instant(2001) };
    const { errors } = await control.refused('POST', flights, { body: across });
    expect(errors?.[0]?.reason).toContain('is on flight QOF 3000 then');
    const line = ['QOF 960', 'QVR', 'QHT', instant(2000), instant(2001)].map((one) => one.replace(':00.000', ''));
    expect((await refused(`${line.join(',')},Q-KED`)).reasons?.[0]).toContain('is planned for QOF 3000 then');
    await control.post(`${flights}/${ids.at(-1)}/cancellation`, { reason: 'Nobody goes.' });
    await control.post(flights, across);
    const elsewhere = `/api/aircraft/${aircraft['Q-KEA']}/flights/${ids[500]}/cancellation`;
    expect((await control.refused('POST', elsewhere, { body: { reason: 'Wrong aircraft.' } })).code).toBe(
      'not-found',
    );
  });

  it('is held against a flight that left and is not on blocks, as a single flight is', async () => {
    const at = (time: string) => `2026-01-15T${time}Z`;
    const of = (number: string, off: string, on: string) => `${number},QVR,QHT,${at(off)},${at(on)},Q-KEA`;
    const then = 'line 2, departure: Q-KEA is planned for QOF 940 then, from 2026-01-15T12:20Z';
    const next = of('QOF 941', '12:50', '13:10');
    const single = { number: 'QOF 941', from: 'QVR', to: 'QHT', offBlockAt: at('12:50'), onBlockAt: at('13:10') };
    const flights = `/api/aircraft/${aircraft['Q-KEA']}/flights`;
    await plan(of('QOF 940', '12:20', '13:15'));
    const { flights: all } = await control.get<Shapes['PlannedFlights']>(flights);
    const planned = all.find(({ number }) => number === 'QOF 940');
    clock = '2026-01-15T12:30:00.000Z';
    const isHeld = async () => {
      expect((await refused(next)).reasons).toEqual([then]);
      const { errors } = await control.refused('POST', flights, { body: single });
      expect(errors).toEqual([
        { pointer: '/offBlockAt', reason: expect.stringContaining('is on flight QOF 940 then') },
      ]);
    };
    await isHeld();
    expect((await refused(of('QOF 940', '22:00', '23:00'))).reasons).toEqual([
      expect.stringMatching(/^line 2, flight: QOF 940 is planned otherwise that day .*its time to leave is past/),
    ]);
    const leg = {
      flight: 'QOF 940',
      scheduledOn: '2026-01-15',
      from: 'QVR',
      to: 'QHT',
      offBlockAt: at('12:20'),
      airborneAt: at('12:25'),
      delays: [],
      reason: 'No messages from this station.',
    };
    const legs = `/api/aircraft/${aircraft['Q-KEA']}/legs`;
    const { body: told } = await control.post<Shapes['LegWritten']>(legs, { ...leg, ending: 'under-way' });
    expect(told.leg).toMatchObject({ ending: 'under-way', planned: planned?.id });
    await isHeld();
    clock = '2026-01-15T12:46:00.000Z';
    const arrived = { ...leg, ending: 'arrived', landedAt: at('12:40'), onBlockAt: at('12:45') };
    await control.put(`${legs}/${told.leg.id}`, arrived, { ifMatch: '"1"' });
    expect(await plan(next)).toMatchObject({ planned: 1 });
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
