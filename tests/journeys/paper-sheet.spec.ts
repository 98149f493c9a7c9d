/**
 * A paper sheet over the clock change. A defect is written on paper at a base where the clocks go back that night, and
 * typed in after it. The day of discovery is the day on the sheet: counting from the typing would end a day too late, and
 * three times 24 hours an hour too early.
 *
 * Published story 1, DERIVED from the rules of counting calendar days in the time of the base (interval case I-23).
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const SHEET = '118';
const MEL = plainList('Operator QPR', [{ number: '33-11-01', title: 'Cockpit dome light', category: 'B' }]);

let clock = '2026-10-25T01:20:00.000Z';
let server: RunningServer;
let airline: Airline;
let technician: ApiClient;
let defect: string;

beforeAll(async () => {
  server = await runningServer({ now: () => clock });
  airline = await anAirline(server, {
    code: 'QPR',
    base: 'Europe/Paris',
    aircraftType: 'Ambrel',
    people: [
      {
        signIn: 'yorvin',
        name: 'Yorvin Tesk',
        roles: ['technician'],
        privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
      },
      { signIn: 'mellory', name: 'Mellory Gand', roles: ['mel-engineer'] },
    ],
    aircraft: ['Q-ABA', 'Q-ABB', 'Q-ABC'],
    flights: [
      { number: 'QPR 1', aircraft: 'Q-ABA', offBlockAt: '2026-10-27T22:50:00Z', onBlockAt: '2026-10-28T00:20:00Z' },
      { number: 'QPR 2', aircraft: 'Q-ABA', offBlockAt: '2026-10-27T23:05:00Z', onBlockAt: '2026-10-28T00:35:00Z' },
    ],
  });
  const engineer = await server.signIn('mellory');
  await engineer.post('/api/mel', { file: 'ambrel.yaml', text: MEL });
  technician = await server.signIn('yorvin');
});

afterAll(() => server.stop());

const sheet = {
  origin: 'crew',
  description: 'Dome light does not come on.',
  sheet: SHEET,
  recordedAt: '2026-10-24T23:40:00+02:00',
  item: { entry: '33-11-01', units: ['1'] },
};

it('typed in after midnight, the second 02:20, the sheet is late and needs a reason', async () => {
  const body = { ...sheet, aircraft: airline.aircraft['Q-ABA'] };
  const refusal = await technician.refused('POST', '/api/defects', { body });
  expect(refusal).toMatchObject({ code: 'late-entry-needs-reason', status: 422, facts: { minutesLate: 220 } });
  const lateReason = 'No signal at the stand.';
  const done = await technician.post<Shapes['ActDone']>('/api/defects', { ...body, lateReason });
  defect = done.body.defect.id;
  expect(done.body.defect).toMatchObject({ sheet: SHEET, recordedAt: '2026-10-24T23:40:00+02:00' });
});

it('three calendar days of the base from the day after the sheet, one of them of 25 hours, make 73 hours', async () => {
  const done = await technician.sign(defect, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  expect(done.defect.deadline).toMatchObject({
    lastDay: '2026-10-27',
    endsAt: '2026-10-27T23:00:00Z',
    base: 'Europe/Paris',
    tzdb: process.versions.tz,
  });
  expect(done.explanation).toBe(
    'recorded 24 Oct 2026 23:40 local in Europe/Paris, day excluded, days 25 Oct, 26 Oct, 27 Oct, ends 27 Oct 2026 23:59 local = 2026-10-27T22:59:59Z.',
  );
  const hours = (Date.parse('2026-10-27T23:00:00Z') - Date.parse('2026-10-24T22:00:00Z')) / 3_600_000;
  expect(hours).toBe(73);
});

it('off-block at 23:50 of the last day is inside, five past midnight is not', async () => {
  const answer = (flight: string) =>
    technician.get<Shapes['Verdict']>(
      `/api/aircraft/${airline.aircraft['Q-ABA']}/answer?flight=${airline.flights[flight]}`,
    );
  expect((await answer('QPR 1')).verdict).toBe('may-fly');
  const late = await answer('QPR 2');
  expect(late.verdict).toBe('may-not-fly');
  expect(late.items[0]?.conditions.filter(({ after }) => after === 'F').map(({ kind }) => kind)).toEqual([
    'interval',
  ]);
  expect(late.reasons[0]).toContain('The last day is 2026-10-27 (Europe/Paris)');
});

it('the history and the record show sheet, both times, who typed it in, and the offset of that moment', async () => {
  const { history } = await technician.get<Shapes['DefectView']>(`/api/defects/${defect}`);
  expect(history[0]).toMatchObject({
    words: 'Written up on sheet 118: Dome light does not come on.',
    by: 'Yorvin Tesk',
    recordedAt: '2026-10-24T23:40:00+02:00',
    enteredAt: '2026-10-25T01:20:00.000Z',
    enteredAtBase: '2026-10-25T02:20:00+01:00',
    details: { sheet: SHEET, lateReason: 'No signal at the stand.', origin: 'crew' },
  });
  const path = `/api/record?aircraft=${airline.aircraft['Q-ABA']}`;
  const { entries } = await technician.get<Shapes['RecordEntries']>(path);
  expect(entries[0]).toMatchObject({
    what: 'defect.written-up',
    by: 'Yorvin Tesk',
    enteredAtBase: '2026-10-25T02:20:00+01:00',
    payload: { act: { sheet: SHEET, recordedAt: '2026-10-24T23:40:00+02:00' } },
  });
});

it('no later typing moves the day: the first 02:20 and the next morning give the same deadline', async () => {
  // The same item of other aircraft: of one, it would be the write-up of a unit that is deferred already.
  const typings = { 'Q-ABB': '2026-10-25T00:20:00.000Z', 'Q-ABC': '2026-10-25T08:00:00.000Z' };
  for (const [mark, at] of Object.entries(typings)) {
    clock = at;
    const again = await server.signIn('yorvin');
    const body = { ...sheet, aircraft: airline.aircraft[mark], lateReason: 'No signal at the stand.' };
    const written = await again.post<Shapes['ActDone']>('/api/defects', body);
    const done = await again.sign(written.body.defect.id, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    expect(done.defect.deadline).toMatchObject({ lastDay: '2026-10-27', endsAt: '2026-10-27T23:00:00Z' });
  }
});
