/** Somebody worked for two operators: each learns that something at the other binds the person, and not what. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { type Airline, anAirline } from './an-airline.js';

const CLOCK = { at: Date.parse('2026-10-24T20:40:00.000Z') };
let server: RunningServer;
let person: string;

beforeAll(async () => {
  server = await runningServer({ now: () => new Date((CLOCK.at += 50)).toISOString() });
  const first = await airline('QPC', 'Q-ABA');
  const second = await airline('QPD', 'Q-ADA');
  await server.store.withOperator(first.operator, null, async (tx) => {
    person = (await tx.people.members()).find(({ name }) => name === 'Technician of QPC')?.personId ?? '';
  });
  await server.store.withOperator(second.operator, null, (tx) =>
    tx.people.join({
      personId: person,
      organisationId: null,
      roles: ['technician'],
      validFrom: '2020-01-01T00:00:00Z',
    }),
  );
  await dent('QPC', first.aircraft['Q-ABA']);
  await dent('QPD', second.aircraft['Q-ADA']);
  for (const code of ['QPC', 'QPD'])
    await (await office(code)).post(`/api/people/${person}/leaving`, { reason: 'Moves.' });
});

afterAll(() => server.stop());

function airline(code: string, mark: string): Promise<Airline> {
  return anAirline(server, {
    code,
    base: 'UTC',
    aircraftType: 'Ambrel',
    people: [
      { signIn: `tech-${code}`, name: `Technician of ${code}`, roles: ['technician'], privileges: ['write-up'] },
      { signIn: `office-${code}`, name: `Office of ${code}`, roles: ['administrator', 'quality'] },
    ],
    aircraft: [mark],
  });
}

const office = (code: string) => server.signIn(`office-${code}`);

async function dent(code: string, aircraft: string | undefined): Promise<void> {
  const technician = await server.signIn('tech-QPC', code);
  const recordedAt = new Date(CLOCK.at).toISOString();
  const written = { aircraft, origin: 'crew', description: 'Dent by door 1.', recordedAt };
  await technician.post<Shapes['ActDone']>('/api/defects', written);
}

async function said(code: string) {
  const { code: why, detail } = await (await office(code)).refused('GET', `/api/people/${person}/erasure-statement`);
  const [says, names = ''] = detail.replace(/\.$/, '').split(': ');
  return [why, says, names.split(', ').toSorted()];
}

const ELSEWHERE = 'something at another operator on this server';

it('names the open items of the own operator alone', async () => {
  const says = ['item-open', 'Open, with an entry of the person'];
  expect(await said('QPC')).toEqual([...says, ['Q-ABA/1', ELSEWHERE]]);
  expect(await said('QPD')).toEqual([...says, ['Q-ADA/1', ELSEWHERE]]);
});

it('names what is held at the own operator alone', async () => {
  const hold = { kind: 'person', subject: person, reason: 'A claim is open.' };
  await (await office('QPD')).post('/api/record/holds', hold);
  expect(await said('QPC')).toEqual(['under-hold', 'Held', [ELSEWHERE]]);
  expect(await said('QPD')).toEqual(['under-hold', 'Held', ['the person']]);
});
