/** The commander and the dispatcher answer for one flight; what becomes of it when the aircraft changes. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

let clock = '2026-01-15T03:00:00.000Z';
let server: RunningServer;
let at = '';
let aircraft = '';
const people: Record<string, ApiClient> = {};
const as = (name: string): ApiClient => people[name] as ApiClient;

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  for (const name of ['hebba', 'jorik', 'brask', 'odrin']) people[name] = await server.signIn(name);
  const fleet = await as('brask').get<Shapes['Fleet']>('/api/fleet');
  const line = fleet.aircraft.find(
    ({ openItems, unanswered, nextFlight }) => openItems > unanswered && unanswered === 0 && nextFlight !== null,
  );
  if (!line?.nextFlight) throw new Error('No aircraft has an open item and a flight.');
  aircraft = line.id;
  at = `/api/aircraft/${line.id}/flights/${line.nextFlight.flight.id}/acceptance`;
  clock = '2026-01-15T03:05:00.000Z';
});

afterAll(() => server.stop());

const view = (): Promise<Shapes['AcceptanceView']> => as('brask').get(at);

async function signing(name: string, role: string, accepted: boolean, reason?: string) {
  const query = `role=${role}&answer=${accepted ? 'yes' : 'no'}`;
  const { statement } = await as(name).get<Shapes['Statement']>(`${at}/statement?${query}`);
  return {
    role,
    accepted,
    ...(reason === undefined ? {} : { reason }),
    sign: { secret: as(name).secret, statement },
  };
}

it('shows what is open, what it asks of the flight and its (O) procedures', async () => {
  const { items, given } = await view();
  expect(items.length).toBeGreaterThan(0);
  expect(items.every(({ basis }) => basis !== null)).toBe(true);
  expect(given).toEqual([]);
});

it('is declined with a reason only, and control sees it', async () => {
  const bare = await as('hebba').refused('POST', at, { body: await signing('hebba', 'commander', false) });
  expect(bare).toMatchObject({ code: 'declined-without-reason' });
  await as('hebba').post(at, await signing('hebba', 'commander', false, 'The smell in the cabin is not explained.'));
  const fleet = await as('brask').get<Shapes['Fleet']>('/api/fleet');
  const line = fleet.aircraft.find(({ id }) => id === aircraft);
  expect(line?.nextFlight?.accepted).toMatchObject([
    { role: 'commander', accepted: false, reason: 'The smell in the cabin is not explained.', void: [] },
  ]);
});

it('is accepted by the commander and acknowledged by the dispatcher, by nobody in their place', async () => {
  await as('hebba').post(at, await signing('hebba', 'commander', true));
  await as('jorik').post(at, await signing('jorik', 'dispatcher', true));
  const other = await as('odrin').refused('POST', at, { body: await signing('odrin', 'commander', true) });
  expect(other).toMatchObject({ code: 'role-missing', status: 403 });
  const { given } = await view();
  expect(given.map(({ role, accepted }) => [role, accepted])).toEqual([
    ['commander', true],
    ['dispatcher', true],
  ]);
  expect(given.flatMap((one) => one.void)).toEqual([]);
});

it('no longer stands once something new is open, and the statement that was shown is refused', async () => {
  const before = await signing('hebba', 'commander', true);
  const body = { aircraft, origin: 'crew', description: 'Windscreen wiper stops.', recordedAt: clock };
  await as('hebba').post('/api/defects', body);
  const { given } = await view();
  expect(given.map((one) => one.void.join())).toEqual([
    expect.stringContaining('new since then'),
    expect.stringContaining('Windscreen wiper'),
  ]);
  expect(await as('hebba').refused('POST', at, { body: before })).toMatchObject({ code: 'statement-not-shown' });
});
