/**
 * Where four flights are expected to be used up: told by the plan, beyond it by what was flown, and told anew with every
 * movement that comes in. The forecast moves no deadline and refuses no flight.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';
import { deferApu, loadPublishedRows, movementsOperator, nameAt, plan, SECRET } from './movements-operator.js';

let clock = '2026-05-14T06:10:00.000Z';
let server: RunningServer;
let control: ApiClient;
let dispatcher: ApiClient;
let defect: string;

const deadline = async () =>
  (await control.get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect.deadline as Shapes['DeadlineLine'];

const signIn = (role: 'technician' | 'commander' | 'dispatcher' | 'maintenance-control' | 'mel-engineer') =>
  server.signIn(nameAt('QB', role));

const receive = async (at: string, text: string): Promise<void> => {
  clock = `${at}:00.000Z`;
  await dispatcher.post('/api/movements', text, { headers: { 'content-type': 'text/plain' } });
};

beforeAll(async () => {
  server = await runningServer({ now: () => clock, secret: SECRET });
  const operator = await movementsOperator(server, { code: 'QB', marks: ['Q-ABD'] });
  const flight = (number: number, day: number, hour: number) => ({
    number: `QB ${number}`,
    from: number % 2 === 0 ? 'QXA' : 'QXB',
    to: number % 2 === 0 ? 'QXB' : 'QXA',
    offBlockAt: `2026-05-${day}T${String(hour).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-05-${day}T${String(hour + 1).padStart(2, '0')}:30Z`,
  });
  await plan(server.store, operator, 'Q-ABD', [
    flight(410, 14, 7),
    flight(411, 14, 11),
    flight(412, 15, 7),
    flight(413, 15, 11),
    flight(414, 16, 7),
  ]);
  [control, dispatcher] = [await signIn('maintenance-control'), await signIn('dispatcher')];
  await loadPublishedRows(await signIn('mel-engineer'));
  const people = { technician: await signIn('technician'), commander: await signIn('commander') };
  defect = await deferApu(people, operator.aircraft['Q-ABD'] as string, '2026-05-14T06:10:00Z');
});

afterAll(() => server.stop());

it('is the fifth planned departure, in the unit of the item and as a day', async () => {
  expect(await deadline()).toMatchObject({
    words: '4 of 4 flights left.',
    endsAt: null,
    counted: true,
    parts: [{ unit: 'flights', used: 0, left: 4, over: false }],
    projected: { state: 'projected', endsAt: '2026-05-16T07:00:00Z', lastDay: '2026-05-16', method: 'plan' },
  });
});

it('stands in the list of open items too', async () => {
  const { defects } = await control.get<Shapes['DefectList']>('/api/defects');
  expect(defects[0]?.deadline?.projected?.sentence).toMatch(/^Projected from the plan: 4 planned flights fit; /);
});

it('is not told once the plan is too short and nothing was flown yet: one came back to the ramp', async () => {
  await receive('2026-05-14T08:00', 'MVT\nQB410/14.QABD.QXA\nAD0700 RR0712');
  expect(await deadline()).toMatchObject({ words: '4 of 4 flights left.', projected: null });
});

it('goes by the mean use of what was flown where the plan is too short', async () => {
  clock = '2026-05-15T06:00:00.000Z';
  [control, dispatcher] = [await signIn('maintenance-control'), await signIn('dispatcher')];
  await receive(
    '2026-05-15T06:00',
    'MVT\nQB411/14.QABD.QXB\nAD141100/141110\n\nMVT\nQB411/14.QABD.QXA\nAA141220/141230',
  );
  const { words, projected } = await deadline();
  expect(words).toBe('3 of 4 flights left.');
  expect(projected).toMatchObject({ state: 'projected', method: 'mean-use' });
  expect(projected?.sentence).toContain('beyond 3 planned flights, from the mean use of the last day');
});
