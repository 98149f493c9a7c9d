/**
 * Who is authorised and equipped at a station, entered by control with its source, breaks and saves flights (first-week
 * story 9, DERIVED: "send a person, or first leg elsewhere"; row P-80 of T1, SEEN-Q).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { PublishedRowsScene } from './published-rows-scene.js';

const scene = new PublishedRowsScene({
  at: '2026-03-10T05:00:00.000Z',
  aircraft: ['Q-ABA'],
  flights: [
    { number: 'QW1', aircraft: 'Q-ABA', offBlockAt: '2026-03-10T08:00:00Z', onBlockAt: '2026-03-10T09:20:00Z' },
    { number: 'QW2', aircraft: 'Q-ABA', offBlockAt: '2026-03-10T18:00:00Z', onBlockAt: '2026-03-10T19:20:00Z' },
  ],
});
const FACTS = { 'flight.enRouteNeeds[34-10-01-5]': false, 'flight.minimaNeed[34-10-01-5]': false };

const stations = () => scene.control.get<Shapes['Stations']>('/api/stations');
const enter = async (body: object, station = 'QWA'): Promise<string> =>
  (await scene.control.post<{ id: string }>(`/api/stations/${station}/people`, { equipment: [], ...body })).body.id;
const refusedToEnter = (body: object, station = 'QWA', client = scene.control) =>
  client.refused('POST', `/api/stations/${station}/people`, { body: { equipment: [], source: 'roster', ...body } });
const personCalled = async (name: string): Promise<string | undefined> =>
  (await stations()).maintain.find((one) => one.name === name)?.id;
const codes = async () => (await scene.ahead('Q-ABA')).flights.map(({ verdict }) => verdict.verdict);

beforeAll(async () => {
  await scene.open();
  await scene.deferred('Q-ABA', '34-10-01-5', '1', '3');
  for (const flight of ['QW1', 'QW2']) {
    for (const [key, value] of Object.entries(FACTS)) await scene.say('Q-ABA', flight, key, value, scene.commander);
  }
});
afterAll(() => scene.server.stop());

describe('the people at a station', () => {
  it('are not known as long as nobody has entered them', async () => {
    expect((await stations()).stations).toMatchObject([
      { code: 'QWA', people: [] },
      { code: 'QWB', people: [] },
    ]);
    expect(await codes()).toEqual(['after-work', 'may-fly']);
  });

  it('nobody there: the first flight that owes work breaks, and the answer says where it is known from', async () => {
    await enter({ source: 'handling agreement' });
    const { flights, breaks, savers } = await scene.ahead('Q-ABA');
    expect(flights.map(({ verdict }) => verdict.verdict)).toEqual(['may-not-fly', 'may-not-fly']);
    expect(breaks).toMatchObject({ station: 'QWA' });
    expect(breaks?.because.join()).toContain('nobody authorised and equipped is at QWA');
    expect(savers.map(({ kind }) => kind)).toContain('send-person');
    expect((await scene.answer('Q-ABA', 'QW1')).verdict).toBe('may-not-fly');
    const tried = await scene.ask('Q-ABA', 'QW1', {
      changes: { facts: [{ key: 'flight.authorisedPersonAtStation', value: true }] },
    });
    expect(tried.verdict).toBe('after-work');
  });

  it('somebody there for one day saves the flight of that morning, and only that', async () => {
    const person = await personCalled('Yorvin Tesk');
    const morning = { from: '2026-03-10T00:00:00Z', until: '2026-03-10T12:00:00Z' };
    await enter({ person, ...morning, equipment: ['test set'], source: 'sent by road' });
    expect((await scene.answer('Q-ABA', 'QW1')).verdict).toBe('after-work');
    expect(await codes()).toEqual(['after-work', 'may-fly']);
    const office = await scene.server.signIn('ullo');
    const lock = (what: string) => office.post(`/api/people/${person}/${what}`, { reason: 'Badge lost.' });
    await lock('lock');
    expect((await scene.answer('Q-ABA', 'QW1')).verdict).toBe('may-not-fly');
    await lock('unlock');
    expect((await scene.answer('Q-ABA', 'QW1')).verdict).toBe('after-work');
    const { stations: told } = await stations();
    expect(told[0]?.people).toMatchObject([
      { person: null, source: 'handling agreement', enteredBy: 'Orla Quist' },
      { person: 'Yorvin Tesk', equipment: ['test set'], untilLocal: '10 Mar 12:00' },
    ]);
    await scene.goTo('2026-03-10T12:30:00.000Z');
    expect((await scene.answer('Q-ABA', 'QW2')).verdict).toBe('may-not-fly');
  });

  it('hold no longer once that is said, by the version that was seen', async () => {
    const line = (await stations()).stations[0]!.people[0]!;
    const end = `/api/stations/people/${line.id}/ended`;
    expect(await scene.control.refused('POST', end, { ifMatch: '"7"' })).toMatchObject({ code: 'changed-meanwhile' });
    await scene.control.post(end, undefined, { ifMatch: `"${line.version}"` });
    expect((await stations()).stations[0]?.people.map(({ person }) => person)).toEqual([]);
    expect((await scene.answer('Q-ABA', 'QW2')).verdict).toBe('after-work');
    expect(await scene.control.refused('POST', end, { ifMatch: '"2"' })).toMatchObject({ code: 'not-found' });
  });

  it('who may not sign procedures on the type is not counted, and not said to be absent either', async () => {
    await enter({ person: await personCalled('Yorvin Tesk'), source: 'roster' }, 'QWB');
    const nobody = await scene.commander.get<Shapes['Stations']>('/api/stations');
    expect(nobody.maintain.map(({ name }) => name)).toEqual(['Yorvin Tesk']);
  });

  it.each([
    ['a station that is none', {}, 'QQQ', 'not-found'],
    ['a person who is none', { person: '0198c0de-0000-7000-8000-000000000000' }, 'QWA', 'invalid-input'],
    ['equipment without anybody', { equipment: ['lift'] }, 'QWA', 'invalid-input'],
    [
      'an end before its beginning',
      { from: '2026-03-11T00:00Z', until: '2026-03-10T00:00Z' },
      'QWA',
      'invalid-input',
    ],
  ])('refuses %s', async (_what, body, station, code) => {
    expect(await refusedToEnter(body, station)).toMatchObject({ code });
  });

  it('are not for a commander to enter', async () => {
    expect(await refusedToEnter({}, 'QWA', scene.commander)).toMatchObject({ code: 'role-missing' });
  });
});
