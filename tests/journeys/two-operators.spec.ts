/** Two operators on one server. Whatever one asks for, nothing of the other is in the answer, and nothing of it changes. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { Attempts } from '../support/attempts.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const clock = '2026-01-15T12:12:00.000Z';
let server: RunningServer;
let attempts: Attempts;
/** Maintenance control of each. */
let ours: ApiClient;
let theirs: ApiClient;
/** The technician who works for both. */
let both: ApiClient;
const ids = { aircraft: '', defect: '', flight: '', operator: '', revision: '' };

/** Everything that a client can list. */
async function everything(client: ApiClient): Promise<string> {
  const { aircraft } = await client.get<Shapes['Fleet']>('/api/fleet');
  const paths = ['/api/fleet', '/api/defects', '/api/mel', '/api/record/head', '/api/session'];
  for (const { id } of aircraft)
    paths.push(`/api/aircraft/${id}`, `/api/record?aircraft=${id}`, `/api/aircraft/${id}/entries?q=light`);
  const { defects } = await client.get<Shapes['DefectList']>('/api/defects');
  for (const { id } of defects) paths.push(`/api/defects/${id}`);
  const bodies: string[] = [];
  for (const path of paths) bodies.push(JSON.stringify(await client.get(path)));
  return bodies.join('\n');
}

beforeAll(async () => {
  server = await runningServer({ now: () => clock, demo: true });
  ours = await server.signIn('brask');
  theirs = await server.signIn('kesh');
  both = await server.signIn('ilva', 'QOF');
  const [plane] = (await theirs.get<Shapes['Fleet']>('/api/fleet')).aircraft as [Shapes['FleetLine']];
  ids.aircraft = plane.id;
  ids.flight = plane.nextFlight?.flight.id ?? '';
  ids.defect = (await theirs.get<Shapes['DefectList']>('/api/defects')).defects[0]?.id ?? '';
  ids.revision = (await theirs.get<Shapes['MelRevisions']>('/api/mel')).revisions[0]?.id ?? '';
  ids.operator = (await theirs.get<Shapes['SessionView']>('/api/session')).operator?.id ?? '';
  attempts = await Attempts.on(server.database.adminUrl);
});

afterAll(() => server.stop());

describe('what belongs to the other operator', () => {
  it('is there, for its own people', () => {
    expect(Object.values(ids).every((id) => id !== '')).toBe(true);
  });

  it('stands in no list, view, search or record of ours', async () => {
    const all = await everything(ours);
    expect(all.length).toBeGreaterThan(10_000);
    for (const trace of [...Object.values(ids), 'Q-SBA', 'QSB', 'Sallowby', 'Kesh', 'Tamblenko']) {
      expect(all).not.toContain(trace);
    }
  });

  it('stands there for them, and nothing of ours beside it', async () => {
    const all = await everything(theirs);
    for (const trace of ['Q-SBA', 'Sallowby', 'Tamblenko']) expect(all).toContain(trace);
    for (const trace of ['Q-KEA', 'Q-KEB', 'QOF', 'Orrinfell', 'Strinn', 'Vask']) expect(all).not.toContain(trace);
  });

  it('is not found by its id, whoever asks for us', async () => {
    const paths = [
      `/api/aircraft/${ids.aircraft}`,
      `/api/aircraft/${ids.aircraft}/answer`,
      `/api/aircraft/${ids.aircraft}/answer?flight=${ids.flight}`,
      `/api/aircraft/${ids.aircraft}/entries?q=light`,
      `/api/aircraft/${ids.aircraft}/entries/33-42-11`,
      `/api/aircraft/${ids.aircraft}/judgement-statement?judgement=combination&answer=yes`,
      `/api/defects/${ids.defect}`,
      `/api/defects/${ids.defect}/statement?act=release`,
      `/api/record?aircraft=${ids.aircraft}`,
    ];
    for (const client of [ours, both]) {
      for (const path of paths) {
        const attempt = await attempts.refused(client, 'GET', path);
        expect(attempt, path).toMatchObject({ status: 404, code: 'not-found', changed: [] });
      }
    }
  });

  it('takes no act of ours, and no version of it is told', async () => {
    const sign = { secret: ours.secret, statement: 'x' };
    const acts: [string, string, object][] = [
      ['POST', `/api/defects/${ids.defect}/identification`, { entry: '33-42-11', units: ['R'] }],
      ['POST', `/api/defects/${ids.defect}/deferral`, { row: '1', sign }],
      ['POST', `/api/defects/${ids.defect}/release`, { sign }],
      ['POST', `/api/defects/${ids.defect}/undone`, { items: [ids.defect], sign }],
      [
        'PUT',
        `/api/aircraft/${ids.aircraft}/facts`,
        { key: 'flight.icing', value: 'none', flight: ids.flight, source: 'x', observedAt: clock },
      ],
      ['POST', `/api/aircraft/${ids.aircraft}/judgements`, { judgement: 'combination', accepted: true, sign }],
      ['POST', '/api/dispatch/questions', { aircraft: ids.aircraft, propose: [] }],
      ['POST', '/api/defects', { aircraft: ids.aircraft, origin: 'crew', description: 'x', recordedAt: clock }],
    ];
    for (const client of [ours, both]) {
      for (const [method, path, body] of acts) {
        const attempt = await attempts.refused(client, method, path, { body, ifMatch: '"1"' });
        expect(attempt, path).toMatchObject({ status: 404, code: 'not-found', changed: [] });
        expect(attempt.problem).not.toHaveProperty('current');
      }
    }
  });

  it('is not found either when one of its ids is named beside one of ours', async () => {
    const { aircraft } = await ours.get<Shapes['Fleet']>('/api/fleet');
    const own = aircraft[0]?.id ?? '';
    const proposal = { defect: ids.defect, entry: '33-42-11', units: ['L'], row: '1' };
    for (const [path, body] of [
      ['/api/dispatch/questions', { aircraft: own, flight: ids.flight, propose: [] }],
      ['/api/dispatch/questions', { aircraft: own, propose: [proposal] }],
    ] as const) {
      expect(await attempts.refused(ours, 'POST', path, { body }), path).toMatchObject({ status: 404, changed: [] });
    }
  });
});

describe('a technician of both', () => {
  it('sees one at a time, the one that was chosen last', async () => {
    const marks = async () =>
      (await both.get<Shapes['Fleet']>('/api/fleet')).aircraft.map(({ registration }) => registration);
    expect(await marks()).not.toContain('Q-SBA');
    await both.put('/api/session/operator', { operator: ids.operator });
    expect(await marks()).toEqual(['Q-SBA']);
    expect((await both.get<Shapes['DefectView']>(`/api/defects/${ids.defect}`)).defect.registration).toBe('Q-SBA');
  });

  it('signs for each under the authorisation that this operator gave', async () => {
    const done = await both.post<Shapes['ActDone']>('/api/defects', {
      aircraft: ids.aircraft,
      origin: 'technician',
      description: 'Left landing light out.',
      recordedAt: clock,
      item: { entry: '33-42-11', units: ['L'] },
    });
    const { id } = done.body.defect;
    await both.sign(
      id,
      'no-fault-found',
      { act: 'no-fault-found' },
      { words: 'Lamp test good.', reference: 'SB-AMM 33' },
    );
    const { history } = await both.get<Shapes['DefectView']>(`/api/defects/${id}`);
    expect(history.at(-1)).toMatchObject({
      authorisation: 'QSB-07',
      organisation: 'Tessock Line Care (QX-MNT-0388)',
    });
  });

  it('may use the same Idempotency-Key for both: the keys do not meet', async () => {
    const key = 'one-key-for-both-operators';
    const write = (aircraft: string) =>
      both.post<Shapes['ActDone']>(
        '/api/defects',
        { aircraft, origin: 'technician', description: 'Seat belt worn.', recordedAt: clock },
        { key },
      );
    const one = await write(ids.aircraft);
    await both.put('/api/session/operator', {
      operator: (await ours.get<Shapes['SessionView']>('/api/session')).operator?.id,
    });
    const [own] = (await both.get<Shapes['Fleet']>('/api/fleet')).aircraft as [Shapes['FleetLine']];
    const other = await write(own.id);
    expect(other.body.defect.id).not.toBe(one.body.defect.id);
    expect(other.body.defect.registration).toBe('Q-KEA');
  });
});
