/**
 * Work that is owed once each flight-day, from the first time through a day on which nobody did it: what is due, done and
 * missed, and what the reasoner says to each flight. Invented entry and days; what a flight-day is: common practice.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const ENTRY = '29-31-11';
const WORK = `${ENTRY}/1/M1`;

let clock = '2026-01-15T04:00:00.000Z';
let server: RunningServer;
let aircraft: string;
let defect: string;

/** A session ends after twelve hours. */
const as = (name: string): Promise<ApiClient> => server.signIn(name);

const repeats = async (): Promise<string[]> => {
  const view = await (await as('sennet')).get<Shapes['DefectView']>(`/api/defects/${defect}`);
  return view.repeats.map(({ state, departures }) => `${state} ${departures}`);
};

async function sign(doneAt: string, more: object = {}): Promise<void> {
  const technician = await as('odrin');
  const body = { work: WORK, doneAt, leaves: [], ...more };
  await technician.sign(defect, 'procedures', { act: 'procedure', work: WORK }, body);
}

async function fly(offBlockAt: string, minutes: number, flight = 'QO 990'): Promise<void> {
  const at = (more: number): string => new Date(Date.parse(offBlockAt) + more * 60_000).toISOString();
  const leg = { flight, scheduledOn: offBlockAt.slice(0, 10), from: 'QVR', to: 'QHT', ending: 'arrived' };
  const times = { offBlockAt, airborneAt: at(10), landedAt: at(minutes - 10), onBlockAt: at(minutes) };
  await (
    await as('sennet')
  ).post(`/api/aircraft/${aircraft}/legs`, { ...leg, ...times, delays: [], reason: 'By hand.' });
}

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  const control = await as('brask');
  const { aircraft: fleet } = await control.get<Shapes['Fleet']>('/api/fleet');
  aircraft = fleet.find(({ openItems }) => openItems === 0)?.id ?? '';
});

afterAll(() => server.stop());

it('is owed before the first departure of each day', async () => {
  const technician = await as('odrin');
  const written = { aircraft, origin: 'technician', description: 'Reservoir A reads nothing.', recordedAt: clock };
  const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
    ...written,
    item: { entry: ENTRY, units: ['A'] },
  });
  defect = body.defect.id;
  await technician.sign(defect, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
  const view = await technician.get<Shapes['DefectView']>(`/api/defects/${defect}`);
  expect(view.repeats[0]).toMatchObject({ state: 'due', work: WORK, because: 'It was not done and signed.' });
  await sign(clock);
  expect((await repeats())[0]).toMatch(/^done [1-9]/);
});

it('is missed on a day when the aircraft left without it, and stays so', async () => {
  clock = '2026-01-20T04:00:00.000Z';
  await fly('2026-01-19T10:00:00.000Z', 60);
  expect(await repeats()).toContain('missed 1');
  await sign(clock);
  expect(await repeats()).toContain('missed 1');
});

it('is not back-filled without a reason that is signed with it', async () => {
  const technician = await as('odrin');
  const id = defect;
  const doneAt = '2026-01-19T09:00:00.000Z';
  const asked = await technician.signature(id, { act: 'procedure', work: WORK });
  const ifMatch = await technician.seen(id);
  for (const time of [doneAt, '2026-01-19T10:00:00.000Z']) {
    const body = { work: WORK, doneAt: time, leaves: [], sign: asked };
    const refused = await technician.refused('POST', `/api/defects/${id}/procedures`, { body, ifMatch });
    expect(refused).toMatchObject({ code: 'work-entered-after-departure', status: 409 });
    expect(refused.detail).toContain('the aircraft left since then, at 2026-01-19T10:00');
  }
  await sign(doneAt, { lateReason: 'The tablet had no signal at the stand.' });
  expect(await repeats()).not.toContain('missed 1');
  const { repeats: lines } = await technician.get<Shapes['DefectView']>(`/api/defects/${id}`);
  expect(lines.find(({ done }) => done?.lateReason)?.because).toContain('late: The tablet had no signal');
});

it('stands in the list of the fleet beside the work of other items, missed or due, and never as done', async () => {
  clock = '2026-01-21T04:00:00.000Z';
  // One hour before midnight UTC it is the 21st at the base already, so both leave on the same flight-day.
  await fly('2026-01-20T23:00:00.000Z', 60);
  await fly('2026-01-21T02:00:00.000Z', 60);
  const { repeats: lines } = await (await as('sennet')).get<Shapes['FleetRepeats']>('/api/repeats');
  expect(lines.filter((line) => line.defect === defect)).toMatchObject([
    { state: 'missed', departures: 2 },
    { state: 'due' },
  ]);
  expect(lines.every(({ state }) => state !== 'done')).toBe(true);
  expect(lines.some(({ work }) => work.startsWith('80-12-11/'))).toBe(true);
});

it('when it was done, mistyped, is made earlier by two people, who read what is owed or was missed then', async () => {
  clock = '2026-01-22T04:00:00.000Z';
  await fly('2026-01-22T02:00:00.000Z', 60);
  // One hour and a half before midnight UTC it is the 22nd at the base already.
  await sign('2026-01-21T23:30:00.000Z', { lateReason: 'The tablet was flta.' });
  expect(await repeats()).not.toContain('missed 1');
  const technician = await as('odrin');
  const inspector = await as('wick');
  const view = () => technician.get<Shapes['DefectView']>(`/api/defects/${defect}`);
  const of = (await view()).history.at(-1)?.id ?? '';
  const statement = (by: ApiClient, query: Record<string, string>) =>
    by.refused('GET', `/api/defects/${defect}/statement?${new URLSearchParams(query).toString()}`);
  const asked = { act: 'correct', of };
  expect(await statement(technician, { ...asked, field: 'doneAt', now: '2026-01-21T23:45:00.000Z' })).toMatchObject({
    code: 'correction-gives-more-time',
    next: expect.stringContaining('sign the work again'),
  });
  expect(await statement(technician, { ...asked, field: 'enteredAt', now: clock })).toMatchObject({
    code: 'not-by-correction',
  });
  const over = await statement(technician, { ...asked, field: 'doneAt', now: '2026-01-21T02:00:00.000Z' });
  expect(over).toMatchObject({ code: 'correction-over-a-departure', status: 409 });
  expect(over.detail).toContain('the aircraft left: from QVR at 2026-01-21T02:00');
  expect(over.next).toContain('sign it again as it was done, with the reason');
  const put = async (field: string, now: string): Promise<string | undefined> => {
    const said = { of, field, now };
    const first = await technician.sign(
      defect,
      'correction',
      { act: 'correct', ...said },
      { ...said, reason: 'Typo.' },
    );
    const waits = (await view()).waiting[0]?.id ?? '';
    await inspector.sign(defect, 'second-look', { act: 'second-look', asked: waits }, { asked: waits });
    return first.signed?.statement;
  };
  expect(await put('doneAt', '2026-01-21T20:00:00.000Z')).toMatch(
    /when it was done reads .*20:00.* in place of .*23:30.*Judged so, this is owed then or was missed: .*missed, flight /,
  );
  expect(await repeats()).toEqual(expect.arrayContaining(['missed 1', 'missed 2']));
  expect(await put('lateReason', 'The tablet was flat.')).toContain('why it was entered late reads');
  const done = (await view()).repeats.find((one) => one.done?.doneAt === '2026-01-21T20:00:00.000Z');
  expect(done?.done?.lateReason).toBe('The tablet was flat.');
  // A departure is entered while the second look is waited for: whoever looks is refused.
  const said = { of, field: 'doneAt', now: '2026-01-21T19:00:00.000Z' };
  await technician.sign(defect, 'correction', { act: 'correct', ...said }, { ...said, reason: 'Typo.' });
  const waits = (await view()).waiting[0]?.id ?? '';
  const look = { act: 'second-look', asked: waits };
  const signature = await inspector.signature(defect, look);
  await fly('2026-01-21T19:30:00.000Z', 60, 'QO 992');
  expect(await statement(inspector, look)).toMatchObject({ code: 'correction-over-a-departure' });
  const looked = { body: { asked: waits, sign: signature }, ifMatch: await inspector.seen(defect) };
  expect(await inspector.refused('POST', `/api/defects/${defect}/second-look`, looked)).toMatchObject({
    code: 'correction-over-a-departure',
  });
  const { code } = await run(['record', 'compare', '--database', server.ownerUrl]);
  expect(code).toBe(0);
});
