/**
 * Another row takes the place of the one in force: signed, judged, and with the clock kept (first-week stories 2 and 4,
 * DERIVED; rows P-01, P-02, P-11 and P-12 of T1, SEEN-Q; settings S3 and S4).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { databaseDigest } from '../support/database-digest.js';
import { PublishedRowsScene } from './published-rows-scene.js';

const off = (number: string, offBlockAt: string, aircraft: string) => ({
  number,
  aircraft,
  offBlockAt,
  onBlockAt: new Date(Date.parse(offBlockAt) + 80 * 60_000).toISOString(),
});
const FLIGHTS = [
  off('night of the 8th', '2026-03-08T22:30:00Z', 'Q-ABB'),
  off('day of the 9th', '2026-03-09T10:00:00Z', 'Q-ABB'),
  off('end of the 15th', '2026-03-15T23:30:00Z', 'Q-ABB'),
  off('the 16th', '2026-03-16T00:10:00Z', 'Q-ABB'),
  off('the fifth', '2026-05-15T18:00:00Z', 'Q-ABD'),
  off('after ten days', '2026-05-25T08:00:00Z', 'Q-ABD'),
];
const MINIMA = 'flight.minimaNeed[22-10-01]';

describe('story 2: the second autopilot, and the first one fixed', () => {
  const scene = new PublishedRowsScene({
    at: '2026-03-02T09:00:00.000Z',
    aircraft: ['Q-ABB'],
    flights: FLIGHTS.filter(({ aircraft }) => aircraft === 'Q-ABB'),
  });
  const story = { unit1: '', unit2: '' };
  const line = async (id: string) =>
    (await scene.control.get<Shapes['DefectView']>(`/api/defects/${id}`)).defect.deadline?.lastDay;

  beforeAll(() => scene.open());
  afterAll(() => scene.server.stop());

  it('unit 1 stands on row 1 until 12 March; with unit 2 down row 1 is no relief for it', async () => {
    story.unit1 = await scene.deferred('Q-ABB', '22-10-01', '1', '1');
    expect(await line(story.unit1)).toBe('2026-03-12');
    await scene.goTo('2026-03-05T14:00:00.000Z');
    story.unit2 = await scene.writtenUp('Q-ABB', '22-10-01', '2');
    const tried = [{ defect: story.unit2, entry: '22-10-01', units: ['2'], row: '2' }];
    const verdict = await scene.ask('Q-ABB', 'night of the 8th', { propose: tried });
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons.join()).toContain('Autopilot 1 (22-10-01, row 1) is refused');
  });

  it('the row of the pair is signed for both: good to 8 March, and no day of unit 1 is won by it', async () => {
    // Unit 1 first: row 2 allows both down, so it may be signed while unit 2 is still unanswered.
    const done = await scene.changeRow(story.unit1, '2');
    expect(done.signed?.statement).toBe(
      'I change the basis of defect Q-ABB/1 on Q-ABB to MEL 22-10-01 row 2. I have read its conditions; its procedures and placard belong to the deferral from now on, and the clock is kept.',
    );
    expect(done.defect).toMatchObject({
      row: '2',
      state: 'open under deferral',
      deadline: { lastDay: '2026-03-08' },
    });
    expect(done.explanation).toContain('recorded 5 Mar 2026 14:00');
    await scene.technician.sign(story.unit2, 'deferral', { act: 'defer', row: '2' }, { row: '2' });
    expect(await line(story.unit2)).toBe('2026-03-08');
    const verdict = await scene.answer('Q-ABB', 'night of the 8th');
    expect(verdict.verdict).toBe('not-settled');
    expect(verdict.questions.map(({ fact }) => fact)).toEqual(
      expect.arrayContaining([MINIMA, 'flight.enRouteNeeds[22-10-01]', 'judgement.accepted[22-10-01/2/J1]']),
    );
  });

  it('while unit 1 is down nothing moves back', async () => {
    const { unit1, unit2 } = story;
    const refusal = await scene.changeRowRefused(unit2, '1', { causeClosed: unit1 }, scene.control);
    expect(refusal).toMatchObject({ code: 'cause-not-closed' });
  });

  it('with unit 1 fixed, unit 2 still stands on the row of the pair: after 8 March it may not fly', async () => {
    await scene.goTo('2026-03-08T20:00:00.000Z');
    await scene.fixed(story.unit1);
    expect(await line(story.unit2)).toBe('2026-03-08');
    expect((await scene.answer('Q-ABB', 'day of the 9th')).verdict).toBe('may-not-fly');
    const view = await scene.control.get<Shapes['DefectView']>(`/api/defects/${story.unit2}`);
    expect(view.causesGone).toMatchObject([{ id: story.unit1, number: 'Q-ABB/1', units: ['1'] }]);
  });

  it('a technician may not move the limit back; control signs the change to row 1, to 15 March from 5 March', async () => {
    const cause = { causeClosed: story.unit1 };
    expect(await scene.changeRowRefused(story.unit2, '1', cause)).toMatchObject({ code: 'control-must-sign' });
    const asked = { propose: [{ defect: story.unit2, entry: '22-10-01', units: ['2'], row: '1' }] };
    expect((await scene.ask('Q-ABB', 'day of the 9th', asked)).verdict).toBe('not-settled');
    const done = await scene.changeRow(story.unit2, '1', cause, scene.control);
    expect(done.defect).toMatchObject({
      row: '1',
      deadline: { lastDay: '2026-03-15', endsAt: '2026-03-16T00:00:00Z' },
    });
    await scene.signProcedure(story.unit2, '22-10-01/1/O1', scene.commander);
    const answer = async (flight: string) => {
      await scene.say('Q-ABB', flight, MINIMA, false, scene.commander);
      return (await scene.answer('Q-ABB', flight)).verdict;
    };
    expect(await answer('end of the 15th')).toBe('may-fly');
    expect(await answer('the 16th')).toBe('may-not-fly');
  });

  it('the history reads so', async () => {
    const { history } = await scene.control.get<Shapes['DefectView']>(`/api/defects/${story.unit2}`);
    expect(history.at(-2)).toMatchObject({ act: 'row-changed', by: 'Orla Quist' });
    expect(history.at(-2)?.words).toContain('Row changed to MEL');
  });
});

describe.each([
  ['keep-earliest', 'by default does not escape it'],
  ['own-window', 'by setting is a signed change, to 24 May from 14 May'],
])('story 4, setting S4 %s: with four flights used up row 1 %s', (changeOfRow) => {
  const scene = new PublishedRowsScene({
    at: '2026-05-14T06:10:00.000Z',
    aircraft: ['Q-ABD'],
    flights: FLIGHTS.filter(({ aircraft }) => aircraft === 'Q-ABD'),
    settings: { changeOfRow },
  });
  let apu = '';

  beforeAll(async () => {
    await scene.open();
    apu = await scene.deferred('Q-ABD', '49-10-01', '2');
    await scene.goTo('2026-05-15T17:00:00.000Z');
    for (const at of ['14T07:00', '14T11:00', '14T15:00', '15T07:00'])
      await scene.flew('Q-ABD', `QW${at.slice(0, 2)}${at.slice(3, 5)}`, `2026-05-${at}:00.000Z`);
    await scene.say('Q-ABD', 'the fifth', 'flight.etopsMinutes', 0);
    await scene.say('Q-ABD', 'after ten days', 'flight.etopsMinutes', 0);
  });
  afterAll(() => scene.server.stop());

  const tried = () => ({ propose: [{ defect: apu, entry: '49-10-01', units: ['1'], row: '1' }] });

  it('is refused or answered so, and signed so', async () => {
    expect((await scene.answer('Q-ABD', 'the fifth')).verdict).toBe('may-not-fly');
    const verdict = await scene.ask('Q-ABD', 'the fifth', tried());
    if (changeOfRow === 'keep-earliest') {
      expect(verdict.verdict).toBe('may-not-fly');
      expect(verdict.reasons.join()).toContain('4 flights');
      const before = await databaseDigest(scene.server.ownerUrl);
      expect(await scene.changeRowRefused(apu, '1')).toMatchObject({ code: 'interval-used-up', status: 409 });
      expect(await databaseDigest(scene.server.ownerUrl)).toEqual(before);
      return;
    }
    expect(verdict.verdict).toBe('after-work');
    expect(verdict.work.map(({ work }) => work)).toEqual(['49-10-01/1/O1', '49-10-01/1/signature']);
    const done = await scene.changeRow(apu, '1');
    expect(done.defect.deadline).toMatchObject({ lastDay: '2026-05-24', endsAt: '2026-05-25T00:00:00Z' });
    await scene.signProcedure(apu, '49-10-01/1/O1', scene.commander);
    expect((await scene.answer('Q-ABD', 'the fifth')).verdict).toBe('may-fly');
    expect((await scene.answer('Q-ABD', 'after ten days')).verdict).toBe('may-not-fly');
  });
});

describe('a row changed before it is used up', () => {
  const scene = new PublishedRowsScene({
    at: '2026-05-14T06:10:00.000Z',
    aircraft: ['Q-ABD'],
    flights: FLIGHTS.filter(({ aircraft }) => aircraft === 'Q-ABD'),
  });
  beforeAll(() => scene.open());
  afterAll(() => scene.server.stop());

  it('keeps the four flights: the fifth may not be flown on the longer row', async () => {
    const apu = await scene.deferred('Q-ABD', '49-10-01', '2');
    await scene.goTo('2026-05-14T20:00:00.000Z');
    for (const hour of ['07', '11', '15']) await scene.flew('Q-ABD', `QW${hour}`, `2026-05-14T${hour}:00:00.000Z`);
    await scene.changeRow(apu, '1');
    await scene.signProcedure(apu, '49-10-01/1/O1', scene.commander);
    await scene.say('Q-ABD', 'the fifth', 'flight.etopsMinutes', 0);
    expect((await scene.answer('Q-ABD', 'the fifth')).verdict).toBe('may-fly');
    await scene.goTo('2026-05-15T17:00:00.000Z');
    await scene.flew('Q-ABD', 'QW19', '2026-05-15T07:00:00.000Z');
    const verdict = await scene.answer('Q-ABD', 'the fifth');
    expect(verdict.verdict).toBe('may-not-fly');
    expect(verdict.reasons.join()).toContain('4 of 4 flights are used up. A row signed before set this limit');
  });

  it('needs a reason, the version that was seen, and the statement that was shown', async () => {
    const { defects } = await scene.control.get<Shapes['DefectList']>('/api/defects');
    const id = defects[0]!.id;
    const { secret } = scene.technician;
    const body = { row: '2', reason: 'because', sign: { secret, statement: 'I sign nothing' } };
    const send = (more: object) =>
      scene.technician.refused('POST', `/api/defects/${id}/row`, { body: { ...body, ...more }, ifMatch: '"1"' });
    expect(await send({})).toMatchObject({ code: 'changed-meanwhile' });
    expect(await send({ reason: '' })).toMatchObject({ code: 'invalid-input' });
    const seen = await scene.technician.seen(id);
    const other = await scene.technician.refused('POST', `/api/defects/${id}/row`, { body, ifMatch: seen });
    expect(other).toMatchObject({ code: 'statement-not-shown' });
    expect(await scene.technician.refused('POST', `/api/defects/${id}/row`, { body })).toMatchObject({
      code: 'precondition-required',
    });
  });
});
