/**
 * Deadlines in the calendar program of a person: read at an address that nobody can guess, by two readers that share no
 * code with the writer (RFC 5545, SEEN). The event follows its deferral under one UID and is cancelled with it.
 */
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { plainList } from '../support/plain-list.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';
import { type Airline, anAirline } from './an-airline.js';
import { eventsIn } from './calendar-readers.js';

const title = 'Cockpit dome light; left, right';
const MEL = plainList('Operator QPC', [
  { number: '33-11-01', title, category: 'B' },
  { number: '33-11-02', title, category: 'A', interval: '4 flights' },
]);
const HOSTILE = 'Dent; 3 mm, by door 2\nEND:VEVENT\r\nBEGIN:VEVENT\nUID:forged\n' + 'ä'.repeat(80);

const feedKey = 'the-feed-of-one-aircraft';

let clock = '2026-10-24T20:40:00.000Z';
let server: RunningServer;
let airline: Airline;
const people: Record<string, ApiClient> = {};
const feeds: Record<string, Shapes['CalendarFeedMade']> = {};
const defects: Record<string, Shapes['DefectLine']> = {};

const person = (name: string): ApiClient => {
  const found = people[name];
  if (!found) throw new Error(`${name} is not signed in`);
  return found;
};
async function goTo(at: string): Promise<void> {
  clock = at;
  for (const name of ['yorvin', 'ullo', 'sorra']) people[name] = await server.signIn(name);
}
const address = (name: string): string => feeds[name]?.address ?? `no feed ${name}`;
/** A calendar program: it brings no session. */
const read = (path: string, headers: Record<string, string> = {}) => server.visitor().page(path, headers);

async function calendar(name: string): Promise<string> {
  const response = await read(address(name));
  expect(response.status).toBe(200);
  return response.text();
}

async function defer(mark: string, body: object, deferral: object, query: Record<string, string>) {
  const technician = person('yorvin');
  const written = { aircraft: airline.aircraft[mark], origin: 'crew', description: 'Does not come on.', ...body };
  const { body: done } = await technician.post<Shapes['ActDone']>('/api/defects', { recordedAt: clock, ...written });
  return (await technician.sign(done.defect.id, 'deferral', { act: 'defer', ...query }, deferral)).defect;
}

beforeAll(async () => {
  server = await runningServer({ now: () => clock });
  airline = await anAirline(server, {
    code: 'QPC',
    base: 'Europe/Paris',
    aircraftType: 'Ambrel',
    people: [
      {
        signIn: 'yorvin',
        name: 'Yorvin Tesk',
        roles: ['technician'],
        privileges: ['write-up', 'defer', 'sign-procedure', 'release'],
      },
      { signIn: 'ullo', name: 'Ullo Fenn', roles: ['administrator', 'mel-engineer'] },
      { signIn: 'sorra', name: 'Sorra Vey', roles: ['engineer'] },
    ],
    aircraft: ['Q-ABA', 'Q-ABB'],
  });
  await goTo(clock);
  await person('ullo').post('/api/mel', { file: 'ambrel.yaml', text: MEL });
  const item = { entry: '33-11-01', units: ['1'] };
  defects['light'] = await defer('Q-ABA', { item }, { row: '1' }, { row: '1' });
  await defer('Q-ABA', { item: { entry: '33-11-02', units: ['1'] } }, { row: '1' }, { row: '1' });
  const document = {
    kind: 'approved-data',
    reference: 'SRM 51-10',
    issuedBy: 'the works',
    limit: 'depth at most 3 mm',
    until: '2026-10-30T12:00:00Z',
  };
  const query = { document: 'approved data SRM 51-10' };
  defects['dent'] = await defer('Q-ABB', { description: HOSTILE }, { document }, query);
  for (const [name, aircraft] of [['all', undefined] as const, ['one', airline.aircraft['Q-ABA']] as const]) {
    const body = { label: `telephone, ${name}`, ...(aircraft === undefined ? {} : { aircraft }) };
    const key = name === 'one' ? { key: feedKey } : {};
    feeds[name] = (await person('sorra').post<Shapes['CalendarFeedMade']>('/api/calendar-feeds', body, key)).body;
  }
});

afterAll(() => server.stop());

describe('a feed', () => {
  it('is told its address once, and the database keeps no token', async () => {
    expect(feeds['one']).toMatchObject({
      feed: { of: 'Sorra Vey', label: 'telephone, one', registration: 'Q-ABA', revokedAt: null },
      address: expect.stringMatching(/^\/api\/calendar\/[\w-]{64}\.ics$/) as string,
    });
    const listed = await person('sorra').get<Shapes['CalendarFeeds']>('/api/calendar-feeds');
    expect(listed.feeds.map(({ registration }) => registration)).toEqual(['Q-ABA', null]);
    const again = await person('sorra').post<Shapes['CalendarFeedMade']>(
      '/api/calendar-feeds',
      { label: 'telephone, one', aircraft: airline.aircraft['Q-ABA'] },
      { key: feedKey },
    );
    expect(again.body).toEqual({ feed: feeds['one']?.feed, address: null });
    const token = feeds['one']?.address?.slice('/api/calendar/'.length, -'.ics'.length) ?? '';
    expect(JSON.stringify(listed)).not.toContain(token);
    const rows = await server.store.withOperator(airline.operator, null, (tx) => tx.calendarFeeds.list(null));
    expect(JSON.stringify(rows)).not.toContain(token);
    const kept = await withClient(server.ownerUrl, async (client) => {
      await client.query("select set_config('app.operator', $1, false)", [airline.operator]);
      return (await client.query<{ body: string }>('select body from idempotency')).rows.map(({ body }) => body);
    });
    expect(kept.some((body) => body.includes('telephone, one'))).toBe(true);
    expect(kept.join('\n')).not.toContain(token);
  });

  it('is read without signing in, as iCalendar by the letter', async () => {
    const response = await read(address('all'));
    expect(response.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    const text = await response.text();
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
    const component = new ICAL.Component(ICAL.parse(text) as unknown[]);
    expect(component.getFirstPropertyValue('x-wr-calname')).toBe('Deadlines of Operator QPC');
    const etag = response.headers.get('etag') ?? '';
    const again = await read(address('all'), { 'if-none-match': etag });
    expect([again.status, await again.text()]).toEqual([304, '']);
  });

  it('holds each deferral with a fixed end: the last hour inside it, in UTC, across the clock change', async () => {
    const [light, dent, ...more] = eventsIn(await calendar('all'));
    expect(more).toEqual([]);
    expect(light).toEqual({
      uid: defects['light']?.id,
      summary: 'Q-ABA/1 Cockpit dome light; left, right: last day 27 Oct 2026',
      start: '2026-10-27T22:00:00.000Z',
      end: '2026-10-27T23:00:00.000Z',
      sequence: defects['light']?.version,
      status: 'CONFIRMED',
    });
    expect(dent).toMatchObject({ uid: defects['dent']?.id, end: '2026-10-30T12:00:00.000Z' });
    expect(dent?.summary).toMatch(/^Q-ABB\/1 Dent; 3 mm, by door 2 END:VEVENT BEGIN:VEVENT/);
  });

  it('says in text how the end reads at the base, and that it is the latest and not the plan', async () => {
    const component = new ICAL.Component(ICAL.parse(await calendar('one')) as unknown[]);
    const [event, ...more] = component.getAllSubcomponents('vevent');
    expect(more).toEqual([]);
    const said = String(event?.getFirstPropertyValue('description'));
    expect(said).toContain('Deferred under MEL 33-11-01 row 1 (category B).');
    expect(said).toContain(
      'To be rectified before 27 Oct 2026 23:00 UTC (28 Oct 2026 00:00 Europe/Paris); last day 27 Oct 2026.',
    );
    expect(said).toContain('this is the latest, not the plan');
    expect(said).toContain('INVENTED for demonstration');
    const stamp = event?.getFirstPropertyValue('dtstamp') as ICAL.Time;
    expect(stamp.toJSDate().toISOString()).toBe('2026-10-24T20:40:00.000Z');
  });
});

describe('the event of a deferral', () => {
  it('rises in sequence with each act, and is cancelled when it is closed', async () => {
    await goTo('2026-10-26T09:00:00.000Z');
    const id = defects['light']?.id ?? '';
    const work = { workDone: 'Lamp replaced.', reference: 'AMM 33-11', complete: true };
    const done = await person('yorvin').sign(
      id,
      'rectification',
      { act: 'rectify' },
      { ...work, testAsked: false, inspectionAsked: false },
    );
    const [before] = eventsIn(await calendar('one'));
    expect(before).toMatchObject({ uid: id, sequence: done.defect.version, status: 'CONFIRMED' });
    const closed = await person('yorvin').sign(
      id,
      'release',
      { act: 'release' },
      { verified: { toolsAccounted: true, panelsClosed: true, registerChecked: true } },
    );
    expect(closed.defect.state).toBe('closed');
    const [after] = eventsIn(await calendar('one'));
    expect(after).toMatchObject({
      uid: id,
      summary: 'Q-ABA/1 Cockpit dome light; left, right: closed',
      sequence: closed.defect.version,
      status: 'CANCELLED',
      end: '2026-10-27T23:00:00.000Z',
    });
    expect(after?.sequence).toBeGreaterThan(before?.sequence ?? Infinity);
  });

  it('is left out once it has been cancelled for ninety days', async () => {
    await goTo('2027-01-24T08:59:00.000Z');
    expect(eventsIn(await calendar('one'))).toHaveLength(1);
    await goTo('2027-01-24T09:01:00.000Z');
    expect(eventsIn(await calendar('one'))).toEqual([]);
    expect(eventsIn(await calendar('all')).map(({ uid }) => uid)).toEqual([defects['dent']?.id]);
  });
});

describe('an address answers nothing', () => {
  const status = async (url: string) => (await read(url)).status;

  it('that is not quite right', async () => {
    const right = address('all');
    for (const wrong of [
      right.slice(0, -'.ics'.length),
      right.replace('.ics', '.ICS'),
      right.replace(/[\w-](?=\.ics$)/, (last) => (last === 'A' ? 'B' : 'A')),
      `/api/calendar/${'A'.repeat(64)}.ics`,
      `/api/calendar/${'A'.repeat(6000)}.ics`,
      `/api/calendar/..%2Fdefects.ics`,
    ]) {
      expect([404, 414]).toContain(await status(wrong));
    }
    expect(await status(right)).toBe(200);
  });

  it('once it is revoked, by its owner or an administrator and by nobody else', async () => {
    const id = feeds['one']?.feed.id ?? '';
    const foreign = await person('yorvin').refused('DELETE', `/api/calendar-feeds/${id}`);
    expect(foreign.code).toBe('not-found');
    expect(await status(address('one'))).toBe(200);
    const everybody = await person('ullo').get<Shapes['CalendarFeeds']>('/api/calendar-feeds');
    expect(everybody.feeds.map(({ of }) => of)).toEqual(['Sorra Vey', 'Sorra Vey']);
    expect((await person('ullo').send('DELETE', `/api/calendar-feeds/${id}`)).status).toBe(200);
    expect(await status(address('one'))).toBe(404);
    expect((await person('sorra').send('DELETE', `/api/calendar-feeds/${id}`)).status).toBe(200);
  });

  it('once its owner no longer works for the operator', async () => {
    await server.store.withOperator(airline.operator, null, async (tx) => {
      const member = (await tx.people.members()).find(({ name }) => name === 'Sorra Vey');
      if (member) await tx.people.changeMembership(member.personId, member.version, { validUntil: clock });
    });
    expect(await status(address('all'))).toBe(404);
  });

  it('and nobody holds more than twenty of them, nor one of an aircraft that is not there', async () => {
    const make = (body: object) => person('yorvin').send('POST', '/api/calendar-feeds', { body });
    const unknown = { label: 'x', aircraft: airline.operator };
    expect((await person('yorvin').refused('POST', '/api/calendar-feeds', { body: unknown })).code).toBe('not-found');
    for (let made = 0; made < 20; made += 1) expect((await make({ label: `device ${made}` })).status).toBe(201);
    expect((await person('yorvin').refused('POST', '/api/calendar-feeds', { body: { label: 'x' } })).code).toBe(
      'too-many-feeds',
    );
  });
});
