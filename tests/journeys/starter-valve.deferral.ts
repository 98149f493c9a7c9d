import { expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { doCard } from '../support/do-card.js';
import {
  answerFor,
  commander,
  control,
  defectView,
  ENTRY,
  lineOfFleet,
  person,
  story,
  technician,
  tried,
  workOf,
} from './starter-valve.scene.js';

/** From the write-up until the aircraft flies with what is open. */
export function toldUntilItFlies(): void {
  it('begins with an aircraft that has nothing open and leaves in an hour', async () => {
    expect(story.mark).toBe('Q-KEA');
    expect(await lineOfFleet()).toMatchObject({
      openItems: 0,
      nextFlight: { verdict: 'nothing-open', flight: { number: 'QOF 109', from: 'QVR', to: 'QOM' } },
    });
  });

  it('the commander writes it up from the sheet, with the time of the log and its offset', async () => {
    const { body, status, etag } = await commander().post<Shapes['ActDone']>('/api/defects', {
      aircraft: story.aircraft,
      origin: 'crew',
      description: 'Engine 1 did not turn on the first start at Hathing Moor, started on the third try.',
      faultMessage: 'ENG 1 START VALVE NOT OPEN',
      system: '80',
      sheet: 'QOF-71701',
      occurredAt: '2026-01-15T08:36:00Z',
      recordedAt: '2026-01-15T14:05:00+02:00',
    });
    story.defect = body.defect.id;
    expect({ status, etag }).toEqual({ status: 201, etag: `"${body.defect.version}"` });
    expect(body.defect).toMatchObject({
      number: 'Q-KEA/2',
      state: 'unanswered',
      sheet: 'QOF-71701',
      recordedAt: '2026-01-15T14:05:00+02:00',
      enteredAt: story.clock,
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
    story.clock = '2026-01-15T12:20:00.000Z';
    const found = await technician().get<Shapes['EntryHits']>(
      `/api/aircraft/${story.aircraft}/entries?q=${encodeURIComponent('ENG 1 START VALVE NOT OPEN')}`,
    );
    expect(found.hits[0]).toMatchObject({ number: ENTRY, title: 'Engine start valve', applies: 'yes' });
    const entry = await technician().get<Shapes['EntryView']>(`/api/aircraft/${story.aircraft}/entries/${ENTRY}`);
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
      `/api/defects/${story.defect}/identification`,
      { entry: ENTRY, units: ['1'] },
      { ifMatch: await technician().seen(story.defect) },
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
      flight: story.flights['QOF 110'],
      source: 'roster of Tessock Line Care, telephone 12:24Z',
      observedAt: '2026-01-15T12:24:00Z',
    };
    story.clock = '2026-01-15T12:25:00.000Z';
    const refusal = await commander().refused('PUT', `/api/aircraft/${story.aircraft}/facts`, { body: answer });
    expect(refusal).toMatchObject({ code: 'role-missing', status: 403 });
    await control().put(`/api/aircraft/${story.aircraft}/facts`, answer);
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
    const done = await technician().sign(
      story.defect,
      'deferral',
      { act: 'defer', entry: ENTRY, row: '1' },
      { row: '1' },
    );
    expect(done.signed).toMatchObject({ by: 'Odrin Vask', signedAt: story.clock });
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
    const body = { work: `${ENTRY}/1/M1`, doneAt: story.clock, leaves: [] };
    const refusal = await technician().signRefused(story.defect, 'procedures', query, body);
    expect(refusal).toMatchObject({ code: 'procedure-leaves-more', status: 409 });
    expect(refusal.detail).toContain('start valve connector');
  });

  it('the technician signs the procedure, names the capped connector with its collar, and fits the placard', async () => {
    story.clock = '2026-01-15T12:50:00.000Z';
    const card = (await defectView()).defect.work.find(({ work }) => work === `${ENTRY}/1/M1`);
    const leaves = (card?.leaves ?? []).map((one) => ({ ...one, tag: 'collar K-0311' }));
    expect(leaves).toHaveLength(1);
    await technician().sign(
      story.defect,
      'procedures',
      { act: 'procedure', work: `${ENTRY}/1/M1` },
      { work: `${ENTRY}/1/M1`, doneAt: '2026-01-15T12:48:00Z', leaves },
    );
    const { defect: line } = await defectView();
    const { text = '', position: where = '' } = line.placard ?? {};
    const done = await technician().sign(story.defect, 'placard', { act: 'placard' }, { text, where, tag: 'P-2301' });
    expect(done.defect.placard?.fitted).toBe(true);
    const { left } = await control().get<Shapes['AircraftView']>(`/api/aircraft/${story.aircraft}`);
    expect(left.map(({ kind, tag, defectNumber }) => ({ kind, tag, defectNumber }))).toEqual([
      { kind: 'connector-capped', tag: 'collar K-0311', defectNumber: 'Q-KEA/2' },
      { kind: 'placard', tag: 'P-2301', defectNumber: 'Q-KEA/2' },
    ]);
  });

  it('the start itself is signed for this one flight, by the person at the engine and by the commander', async () => {
    story.clock = '2026-01-15T13:05:00.000Z';
    const forFlight = story.flights['QOF 109'];
    const pass = (minutes: number): void => {
      story.clock = new Date(Date.parse(story.clock) + minutes * 60_000).toISOString();
    };
    const of = { defect: story.defect, card: 'start-valve-by-hand', procedure: `${ENTRY}/1/M2`, pass };
    const work = await doCard(person('odrin'), { ...of, ...(forFlight === undefined ? {} : { forFlight }) });
    await person('odrin').sign(story.defect, 'card-signatures', { act: 'card', work }, { work });
    const key = `${ENTRY}/1/O1`;
    const body = { work: key, doneAt: story.clock, forFlight, leaves: [] };
    await person('hebba').sign(story.defect, 'procedures', { act: 'procedure', work: key }, body);
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
}
