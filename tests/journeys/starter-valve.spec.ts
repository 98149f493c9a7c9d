/**
 * One defect from write-up to release, told in order, by the people whose work it is and through HTTP alone.
 *
 * A start valve does not open. The crew writes it up, the technician finds the entry, asks what it would cost, defers it,
 * caps the connector and fits the placard; the aircraft flies where somebody can open the valve by hand and not where
 * nobody can; it is mended, and cannot be released until the cap is off. Each step needs the one before it.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

/** Every instant of the story; the demo is loaded in the small hours of 15 January at its base, two hours before UTC. */
let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
const people: Record<string, ApiClient> = {};
let mark: string;
let aircraft: string;
let defect: string;
const flights: Record<string, string> = {};

const ENTRY = '80-12-11';

const person = (name: string): ApiClient => {
  const found = people[name];
  if (!found) throw new Error(`${name} is not signed in`);
  return found;
};
const commander = () => person('hebba');
const technician = () => person('odrin');
const control = () => person('brask');

async function lineOfFleet(): Promise<Shapes['FleetLine']> {
  const fleet = await control().get<Shapes['Fleet']>('/api/fleet');
  const line = fleet.aircraft.find(({ id }) => id === aircraft);
  if (!line) throw new Error(`${mark} is not in the fleet`);
  return line;
}

const answerFor = (flight: string): Promise<Shapes['Verdict']> =>
  control().get(`/api/aircraft/${aircraft}/answer?flight=${flights[flight]}`);

/** What row 1 would give for a flight, if it were recorded; nothing is. */
async function tried(flight: string): Promise<Shapes['Verdict']> {
  const propose = [{ defect, entry: ENTRY, units: ['1'], row: '1' }];
  const asked = { aircraft, flight: flights[flight], propose };
  return (await technician().post<Shapes['Verdict']>('/api/dispatch/questions', asked)).body;
}

const defectView = (): Promise<Shapes['DefectView']> => technician().get(`/api/defects/${defect}`);
const workOf = ({ work }: Shapes['Verdict']): string[] => work.map((one) => one.work).toSorted();

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  clock = '2026-01-15T12:12:00.000Z';
  for (const name of ['hebba', 'odrin', 'brask', 'wenna']) people[name] = await server.signIn(name);
  people['ilva'] = await server.signIn('ilva', 'QOF');
  const fleet = await control().get<Shapes['Fleet']>('/api/fleet');
  ({ id: aircraft, registration: mark } = fleet.aircraft[0] as Shapes['FleetLine']);
  const view = await control().get<Shapes['AircraftView']>(`/api/aircraft/${aircraft}`);
  for (const { number, id } of view.flights) flights[number] = id;
});

afterAll(() => server.stop());

describe('the life of a defect', () => {
  it('begins with an aircraft that has nothing open and leaves in an hour', async () => {
    expect(mark).toBe('Q-KEA');
    expect(await lineOfFleet()).toMatchObject({
      openItems: 0,
      nextFlight: { verdict: 'nothing-open', flight: { number: 'QOF 109', from: 'QVR', to: 'QOM' } },
    });
  });

  it('the commander writes it up from the sheet, with the time of the log and its offset', async () => {
    const { body, status, etag } = await commander().post<Shapes['ActDone']>('/api/defects', {
      aircraft,
      origin: 'crew',
      description: 'Engine 1 did not turn on the first start at Hathing Moor, started on the third try.',
      faultMessage: 'ENG 1 START VALVE NOT OPEN',
      system: '80',
      sheet: 'QOF-71701',
      occurredAt: '2026-01-15T08:36:00Z',
      recordedAt: '2026-01-15T14:05:00+02:00',
    });
    defect = body.defect.id;
    expect({ status, etag }).toEqual({ status: 201, etag: `"${body.defect.version}"` });
    expect(body.defect).toMatchObject({
      number: 'Q-KEA/2',
      state: 'unanswered',
      sheet: 'QOF-71701',
      recordedAt: '2026-01-15T14:05:00+02:00',
      enteredAt: clock,
    });
  });

  it('from then on the fleet says may not fly, and why, in words with the number of the write-up', async () => {
    const { openItems, unanswered, nextFlight } = await lineOfFleet();
    expect({ openItems, unanswered, verdict: nextFlight?.verdict }).toEqual({
      openItems: 1,
      unanswered: 1,
      verdict: 'may-not-fly',
    });
    expect(nextFlight?.why).toBe(
      'Not every write-up is answered: Q-KEA/2 (Engine 1 did not turn on the first start at Hathing Moor, started on…).',
    );
  });

  it('the technician finds the entry by the message, and sees what its row asks', async () => {
    clock = '2026-01-15T12:20:00.000Z';
    const found = await technician().get<Shapes['EntryHits']>(
      `/api/aircraft/${aircraft}/entries?q=${encodeURIComponent('ENG 1 START VALVE NOT OPEN')}`,
    );
    expect(found.hits[0]).toMatchObject({ number: ENTRY, title: 'Engine start valve', applies: 'yes' });
    const entry = await technician().get<Shapes['EntryView']>(`/api/aircraft/${aircraft}/entries/${ENTRY}`);
    expect(entry.units).toEqual(['1', '2']);
    expect(entry.rows).toHaveLength(1);
    expect(entry.rows[0]).toMatchObject({
      category: 'C',
      interval: '10 calendar-days',
      numberInstalled: 2,
      numberRequired: 1,
      placard: { text: 'START VALVE INOP - OPENED BY HAND' },
    });
  });

  it('names the valve of engine 1 as the failed item, which answers nothing yet', async () => {
    const { body } = await technician().post<Shapes['ActDone']>(
      `/api/defects/${defect}/identification`,
      { entry: ENTRY, units: ['1'] },
      { ifMatch: await technician().seen(defect) },
    );
    expect(body.defect).toMatchObject({ title: 'Engine start valve', units: ['1'], state: 'unanswered' });
  });

  it('asked for the evening flight the row is not settled: nobody has said who stands at Ombersk', async () => {
    const verdict = await tried('QOF 110');
    expect(verdict).toMatchObject({ verdict: 'not-settled', lo: 'may-not-fly', hi: 'after-work' });
    expect(verdict.questions).toMatchObject([
      { fact: 'flight.authorisedPersonAtStation', mayAnswer: ['maintenance-control', 'technician'] },
    ]);
  });

  it('the commander may not answer that; control may, and then the row is good after work', async () => {
    const answer = {
      key: 'flight.authorisedPersonAtStation',
      value: true,
      flight: flights['QOF 110'],
      source: 'roster of Tessock Line Care, telephone 12:24Z',
      observedAt: '2026-01-15T12:24:00Z',
    };
    clock = '2026-01-15T12:25:00.000Z';
    const refusal = await commander().refused('PUT', `/api/aircraft/${aircraft}/facts`, { body: answer });
    expect(refusal).toMatchObject({ code: 'role-missing', status: 403 });
    await control().put(`/api/aircraft/${aircraft}/facts`, answer);
    const verdict = await tried('QOF 110');
    expect(verdict).toMatchObject({ verdict: 'after-work', questions: [] });
    expect(workOf(verdict)).toEqual([
      '80-12-11/1/M1',
      '80-12-11/1/M2',
      '80-12-11/1/O1',
      '80-12-11/1/placard',
      '80-12-11/1/signature',
    ]);
  });

  it('asking changed nothing: the aircraft still may not fly', async () => {
    expect((await answerFor('QOF 109')).verdict).toBe('may-not-fly');
  });

  it('the technician defers it on the row, under the statement shown, and reads the arithmetic of the deadline', async () => {
    const done = await technician().sign(defect, 'deferral', { act: 'defer', entry: ENTRY, row: '1' }, { row: '1' });
    expect(done.signed).toMatchObject({ by: 'Odrin Vask', signedAt: clock });
    expect(done.signed?.statement).toBe(
      'I defer defect Q-KEA/2 on Q-KEA on the basis of MEL 80-12-11 row 1. I have read its conditions, and its procedures and placard belong to this deferral.',
    );
    expect(done.defect).toMatchObject({
      state: 'open under deferral',
      row: '1',
      deadline: { lastDay: '2026-01-25', endsAt: '2026-01-25T22:00:00Z', base: 'Europe/Athens', over: false },
    });
    expect(done.explanation).toBe(
      'recorded 15 Jan 2026 14:05 local in Europe/Athens, day excluded, days 16 Jan to 25 Jan (10 days), ends 25 Jan 2026 23:59 local = 2026-01-25T21:59:59Z.',
    );
  });

  it('the aircraft may fly after work: the procedure, the placard, and the opening by hand for this start', async () => {
    const verdict = await answerFor('QOF 109');
    expect(verdict.verdict).toBe('after-work');
    expect(workOf(verdict)).toEqual(['80-12-11/1/M1', '80-12-11/1/M2', '80-12-11/1/O1', '80-12-11/1/placard']);
  });

  it('a procedure that leaves something altered is not signed without naming it', async () => {
    const query = { act: 'procedure', work: `${ENTRY}/1/M1` };
    const body = { work: `${ENTRY}/1/M1`, doneAt: clock, leaves: [] };
    const refusal = await technician().signRefused(defect, 'procedures', query, body);
    expect(refusal).toMatchObject({ code: 'procedure-leaves-more', status: 409 });
    expect(refusal.detail).toContain('start valve connector');
  });

  it('the technician signs the procedure, names the capped connector with its collar, and fits the placard', async () => {
    clock = '2026-01-15T12:50:00.000Z';
    const card = (await defectView()).defect.work.find(({ work }) => work === `${ENTRY}/1/M1`);
    const leaves = (card?.leaves ?? []).map((one) => ({ ...one, tag: 'collar K-0311' }));
    expect(leaves).toHaveLength(1);
    await technician().sign(
      defect,
      'procedures',
      { act: 'procedure', work: `${ENTRY}/1/M1` },
      { work: `${ENTRY}/1/M1`, doneAt: '2026-01-15T12:48:00Z', leaves },
    );
    const { defect: line } = await defectView();
    const { text = '', position: where = '' } = line.placard ?? {};
    const done = await technician().sign(defect, 'placard', { act: 'placard' }, { text, where, tag: 'P-2301' });
    expect(done.defect.placard?.fitted).toBe(true);
    const { left } = await control().get<Shapes['AircraftView']>(`/api/aircraft/${aircraft}`);
    expect(left.map(({ kind, tag, defectNumber }) => ({ kind, tag, defectNumber }))).toEqual([
      { kind: 'connector-capped', tag: 'collar K-0311', defectNumber: 'Q-KEA/2' },
      { kind: 'placard', tag: 'P-2301', defectNumber: 'Q-KEA/2' },
    ]);
  });

  it('the start itself is signed for this one flight, by the person at the engine and by the commander', async () => {
    clock = '2026-01-15T13:05:00.000Z';
    const forFlight = flights['QOF 109'];
    for (const [name, work] of [['odrin', 'M2'] as const, ['hebba', 'O1'] as const]) {
      const key = `${ENTRY}/1/${work}`;
      const body = { work: key, doneAt: clock, forFlight, leaves: [] };
      await person(name).sign(defect, 'procedures', { act: 'procedure', work: key }, body);
    }
    expect((await answerFor('QOF 109')).verdict).toBe('may-fly');
    expect(await lineOfFleet()).toMatchObject({
      unanswered: 0,
      leftOnAircraft: 2,
      nextDeadline: { number: 'Q-KEA/2', deadline: { lastDay: '2026-01-25' } },
      nextFlight: { verdict: 'may-fly', flight: { number: 'QOF 109' } },
    });
  });

  it('the opening for one start is not good for the next one', async () => {
    const verdict = await answerFor('QOF 110');
    expect(verdict.verdict).toBe('after-work');
    expect(workOf(verdict)).toEqual(['80-12-11/1/M2', '80-12-11/1/O1']);
  });

  it('tomorrow breaks at Durrand, where nobody stands who may open the valve; the answer says so', async () => {
    const out = await answerFor('QOF 111');
    expect(out.verdict).toBe('after-work');
    const back = await answerFor('QOF 112');
    expect(back).toMatchObject({ verdict: 'may-not-fly', lo: 'may-not-fly', hi: 'may-not-fly' });
    expect(back.reasons[0]).toMatch(
      /^Engine start valve 1 .*nobody authorised and equipped is at the departure station\.$/,
    );
    expect(JSON.stringify([out.reasons, back.reasons])).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-/);
  });

  it('so it is mended at the base that evening; open work grounds the aircraft again', async () => {
    clock = '2026-01-15T20:10:00.000Z';
    await technician().sign(
      defect,
      'rectification',
      { act: 'rectify' },
      {
        workDone: 'Start valve of engine 1 replaced.',
        reference: 'K-AMM 80-12-11 task 7, revision 12',
        partNumber: 'KV-8012-1',
        serialOff: 'S-1190',
        serialOn: 'S-2044',
        complete: true,
        testAsked: true,
        inspectionAsked: false,
      },
    );
    const verdict = await answerFor('QOF 111');
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons[0]).toMatch(/^Work is open that is not released: Q-KEA\/2 /);
  });

  it('without the test that was asked for nothing is released', async () => {
    const refusal = await technician().signRefused(defect, 'release', { act: 'release' });
    expect(refusal).toMatchObject({ code: 'test-not-good', status: 409 });
  });

  it('the test is good, and closing is still refused: the collar and the placard are on the aircraft', async () => {
    clock = '2026-01-15T20:40:00.000Z';
    await technician().sign(
      defect,
      'test',
      { act: 'test' },
      {
        test: 'Engine 1 started twice by the switch; valve opens and closes, K-AMM 80-12-11 task 8.',
        result: 'good',
      },
    );
    for (const [address, body] of [['release', {}] as const, ['restoration', { reference: 'K-AMM' }] as const]) {
      const query = { act: address === 'release' ? 'release' : 'restore' };
      const refusal = await technician().signRefused(defect, address, query, body);
      expect(refusal).toMatchObject({
        code: 'still-left-on-the-aircraft',
        status: 409,
        paragraph: '145.A.48; 145.A.50(a)',
      });
      expect(refusal.detail).toContain('collar K-0311');
      expect(refusal.detail).toContain('P-2301');
    }
  });

  it('they are undone and signed for, the system is restored, and the work is released', async () => {
    clock = '2026-01-15T21:00:00.000Z';
    const { left } = await defectView();
    await technician().sign(defect, 'undone', { act: 'undo' }, { items: left.map(({ id }) => id) });
    const again = await technician().signRefused(defect, 'undone', { act: 'undo' }, { items: [left[0]?.id] });
    expect(again.code).toBe('left-item-unknown');
    const early = await technician().signRefused(defect, 'release', { act: 'release' });
    expect(early.code).toBe('not-restored');
    const reference = 'K-AMM 80-12-11 task 7, revision 12';
    await technician().sign(defect, 'restoration', { act: 'restore' }, { reference });
    const done = await technician().sign(defect, 'release', { act: 'release' });
    expect(done.defect.state).toBe('closed');
    expect(done.signed?.statement).toContain('Part-145');
  });

  it('nothing is open, nothing is left, and the morning flight reads so', async () => {
    expect(await lineOfFleet()).toMatchObject({
      openItems: 0,
      unanswered: 0,
      leftOnAircraft: 0,
      nextDeadline: null,
      nextFlight: { verdict: 'nothing-open', flight: { number: 'QOF 111' } },
    });
    const list = await control().get<Shapes['DefectList']>('/api/defects');
    expect(list.defects.some(({ id }) => id === defect)).toBe(false);
  });

  it('a closed defect takes no further act', async () => {
    const query = { act: 'raised-in-error' };
    const refusal = await technician().signRefused(defect, 'raised-in-error', query, { words: 'Wrong aircraft.' });
    expect(refusal).toMatchObject({ code: 'already-closed', status: 409 });
  });

  it('the history tells it in order: who, on which authorisation, under which statement, and its three times', async () => {
    const { history } = await defectView();
    expect(history.map(({ act, by }) => `${act} by ${by}`)).toEqual([
      'written-up by Hebba Strinn',
      'identified by Odrin Vask',
      'deferred by Odrin Vask',
      'procedure-signed by Odrin Vask',
      'placard-fitted by Odrin Vask',
      'procedure-signed by Odrin Vask',
      'procedure-signed by Hebba Strinn',
      'rectification by Odrin Vask',
      'tested by Odrin Vask',
      'undone by Odrin Vask',
      'restored by Odrin Vask',
      'released by Odrin Vask',
    ]);
    expect(history[0]).toMatchObject({
      occurredAt: '2026-01-15T08:36:00Z',
      recordedAt: '2026-01-15T14:05:00+02:00',
      enteredAt: '2026-01-15T12:12:00.000Z',
      statement: null,
    });
    expect(history.at(-1)).toMatchObject({
      words: 'Released to service',
      licence: 'QX.66.20417',
      authorisation: 'QOF-L-011',
      organisation: 'Orrinfell Line Maintenance (QX-MNT-0207)',
    });
  });

  it('the record holds every act under a number of its own, without a name in it, and verifies', async () => {
    let entries: Shapes['RecordEntries']['entries'] = [];
    await expect
      .poll(
        async () => {
          ({ entries } = await person('wenna').get<Shapes['RecordEntries']>(`/api/record?aircraft=${aircraft}`));
          return entries.every(({ number }) => number !== null);
        },
        { timeout: 30_000 },
      )
      .toBe(true);
    const { history } = await defectView();
    const ours = entries.filter(({ payload }) => (payload as { number?: number }).number === 2);
    expect(ours.map(({ what }) => what)).toEqual(history.map(({ act }) => `defect.${act}`));
    expect(ours.map(({ number }) => number)).toEqual(history.map(({ sealedAs }) => sealedAs));
    expect(entries.filter(({ what }) => what === 'fact.answered')).toHaveLength(1);
    expect(JSON.stringify(ours.map(({ payload }) => payload))).not.toMatch(/Vask|Strinn|QX\.66/);
    const head = await person('wenna').get<Shapes['RecordHead']>('/api/record/head');
    const findings = await verifyRecord(server.ownerUrl);
    expect(findings.map(({ misfit, waiting }) => ({ misfit, waiting }))).toEqual([
      { misfit: null, waiting: 0 },
      { misfit: null, waiting: 0 },
    ]);
    expect(findings.find(({ operatorCode }) => operatorCode === 'QOF')?.head).toMatchObject(head);
  });
});
