/** The calendar of an engineer who works for two operators: read at one address, by two readers (RFC 5545, SEEN). */
import ICAL from 'ical.js';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';
import { eventsIn } from './calendar-readers.js';

const NOW = '2026-10-24T20:40:00.000Z';
let server: RunningServer;
let first: Airline;
let second: Airline;
let personId: string;
let address: string;
const deferred: string[] = [];

const CODES = { first: 'QPC', second: 'QPD' };

beforeAll(async () => {
  server = await runningServer({ now: () => NOW });
  first = await airline(CODES.first, 'Europe/Paris', 'Q-ABA');
  second = await airline(CODES.second, 'UTC', 'Q-ADA');
  await server.store.withOperator(first.operator, null, async (tx) => {
    personId = (await tx.people.members()).find(({ name }) => name === 'Engineer of QPC')?.personId ?? '';
  });
  await server.store.withOperator(second.operator, null, (tx) =>
    tx.people.join({ personId, organisationId: null, roles: ['engineer'], validFrom: '2020-01-01T00:00:00.000Z' }),
  );
  deferred.push(await dent(CODES.first, first.aircraft['Q-ABA']), await dent(CODES.second, second.aircraft['Q-ADA']));
});

afterAll(() => server.stop());

function airline(code: string, base: string, mark: string): Promise<Airline> {
  return anAirline(server, {
    code,
    base,
    aircraftType: 'Ambrel',
    people: [
      {
        signIn: `tech-${code}`,
        name: `Technician of ${code}`,
        roles: ['technician'],
        privileges: ['write-up', 'defer'],
      },
      { signIn: `eng-${code}`, name: `Engineer of ${code}`, roles: ['engineer'] },
    ],
    aircraft: [mark],
  });
}

/** Deferred under approved data, until an instant. */
async function dent(code: string, aircraft: string | undefined): Promise<string> {
  const technician = await server.signIn(`tech-${code}`);
  const written = { aircraft, origin: 'crew', description: 'Dent by door 1.', recordedAt: NOW };
  const { id } = (await technician.post<Shapes['ActDone']>('/api/defects', written)).body.defect;
  const limits = { issuedBy: 'the works', limit: 'depth at most 3 mm', until: '2026-11-10T12:00:00Z' };
  const document = { kind: 'approved-data', reference: 'SRM 53-10', ...limits };
  await technician.sign(id, 'deferral', { act: 'defer', document: 'approved data SRM 53-10' }, { document });
  return id;
}

const calendar = async () => (await server.visitor().page(address)).text();

it('holds every deferral of every operator the person works for, each with the clock of its own base', async () => {
  const engineer = await server.signIn('eng-QPC', CODES.first);
  const asked = { label: 'my own', everywhere: true };
  const { body } = await engineer.post<Shapes['CalendarFeedMade']>('/api/calendar-feeds', asked);
  address = body.address ?? '';
  expect(body.feed).toMatchObject({ everywhere: true, aircraft: null, of: 'Engineer of QPC' });
  const events = eventsIn(await calendar());
  expect(events.map(({ uid }) => uid).toSorted()).toEqual(deferred.toSorted());
  expect(events.map(({ sequence }) => sequence)).toEqual([3, 3]);
  const component = new ICAL.Component(ICAL.parse(await calendar()) as unknown[]);
  expect(component.getFirstPropertyValue('x-wr-calname')).toBe('Deadlines of Engineer of QPC');
  const said = component.getAllSubcomponents('vevent').map((one) => String(one.getFirstPropertyValue('description')));
  expect(said.filter((text) => text.includes('(10 Nov 2026 13:00 Europe/Paris)'))).toHaveLength(1);
});

it('loses those of an operator that the person has left', async () => {
  await server.store.withOperator(second.operator, null, (tx) =>
    tx.people.changeMembership(personId, 1, { validUntil: NOW }),
  );
  expect(eventsIn(await calendar()).map(({ uid }) => uid)).toEqual(deferred.slice(0, 1));
});

it('is not one of an aircraft at the same time', async () => {
  const engineer = await server.signIn('eng-QPC');
  const body = { label: 'x', everywhere: true, aircraft: first.aircraft['Q-ABA'] };
  const { code, errors } = await engineer.refused('POST', '/api/calendar-feeds', { body });
  expect([code, errors]).toMatchObject(['invalid-input', [{ pointer: '/everywhere' }]]);
});
