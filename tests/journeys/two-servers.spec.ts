/**
 * Two servers on one database, as two processes. Whatever is sent to both at the same time, the outcome is one that could
 * have come from one server with the requests one after the other.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, verifyRecord } from '#store';
import type { Answer, ApiClient, Shapes } from '../support/api-client.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { type ServerProcess, serverProcess } from '../support/running-server.js';
import { withClient } from '../support/with-client.js';

const ROUNDS = 20;
const PATIENCE = { timeout: 30_000 };
let database: FreshDatabase;
let first: ServerProcess;
let second: ServerProcess;
/** One technician at each server. */
let one: ApiClient;
let other: ApiClient;
/** An aircraft for each round, so that rounds do not meet. */
let aircraft: string[] = [];

type Done = Answer<Shapes['ActDone'] & Partial<Shapes['Problem']>>;

beforeAll(async () => {
  database = await freshDatabase();
  first = await serverProcess({ databaseUrl: database.ownerUrl });
  second = await serverProcess({ databaseUrl: database.ownerUrl });
  one = await first.signIn('odrin');
  other = await second.signIn('wick');
  const { operator } = await one.get<Shapes['SessionView']>('/api/session');
  const store = await openStore(database.appUrl, { connections: 1 });
  aircraft = await store.withOperator(operator?.id ?? '', null, async (tx) => {
    const ids: string[] = [];
    for (let n = 0; n < 3 * ROUNDS; n += 1) {
      const mark = { registration: `Q-W${String(n).padStart(2, '0')}`, serial: 3000 + n };
      ids.push(await tx.aircraft.add({ ...mark, type: 'Kellwing', configuration: ['regional'] }));
    }
    return ids;
  });
  await store.close();
});

afterAll(async () => {
  await Promise.all([first.stop(), second.stop()]);
  await database.drop();
});

async function written(on: string, entry: string, unit: string): Promise<string> {
  const { body } = await one.post<Shapes['ActDone']>('/api/defects', {
    aircraft: on,
    origin: 'technician',
    description: `Found inoperative: ${entry}.`,
    recordedAt: new Date().toISOString(),
    item: { entry, units: [unit] },
  });
  return body.defect.id;
}

/** A deferral ready to be sent: everything that is read first has been read. */
async function ready(client: ApiClient, defect: string): Promise<() => Promise<Done>> {
  const sign = await client.signature(defect, { act: 'defer', row: '1' });
  const ifMatch = await client.seen(defect);
  const key = randomUUID();
  return () => client.send('POST', `/api/defects/${defect}/deferral`, { ifMatch, key, body: { row: '1', sign } });
}

const together = (...sends: (() => Promise<Done>)[]): Promise<Done[]> => Promise.all(sends.map((send) => send()));
const codesOf = (answers: Done[]): string[] =>
  answers.map(({ status, body }) => `${status} ${body.type?.split('/').at(-1) ?? 'done'}`).toSorted();
const rounds = (from: number): [number, string][] =>
  Array.from({ length: ROUNDS }, (_, n) => [n + 1, aircraft[from + n] ?? '']);

describe('deferring on both servers at once', () => {
  it('one defect: one is done, the other hears that it changed, and there is one deferral', async () => {
    for (const [round, on] of rounds(0)) {
      const defect = await written(on, '33-42-11', 'L');
      const answers = await together(await ready(one, defect), await ready(other, defect));
      expect(codesOf(answers), `round ${round}`).toEqual(['200 done', '412 changed-meanwhile']);
      const { history } = await other.get<Shapes['DefectView']>(`/api/defects/${defect}`);
      expect(history.map(({ act }) => act)).toEqual(['written-up', 'identified', 'deferred']);
    }
  });

  it('two defects whose rows exclude each other: one is done, the other is refused and told by what', async () => {
    for (const [round, on] of rounds(ROUNDS)) {
      const voice = await written(on, '23-71-11', '1');
      const data = await written(on, '31-30-11', '1');
      const answers = await together(await ready(one, voice), await ready(other, data));
      expect(codesOf(answers), `round ${round}`).toEqual(['200 done', '409 row-not-available']);
      const refused = answers.find(({ status }) => status === 409);
      expect(refused?.body.detail).toMatch(/Voice recorder|Flight data recorder/);
      const { items } = await one.get<Shapes['AircraftView']>(`/api/aircraft/${on}`);
      expect(items.map(({ state }) => state).toSorted()).toEqual(['open under deferral', 'unanswered']);
    }
  });

  it('after the loser reads again it may still defer what stands beside the winner', async () => {
    const [on = ''] = aircraft.slice(2 * ROUNDS);
    const defects = [await written(on, '33-42-11', 'L'), await written(on, '49-51-11', '1')];
    const answers = await together(await ready(one, defects[0] ?? ''), await ready(other, defects[1] ?? ''));
    expect(codesOf(answers)).toEqual(['200 done', '200 done']);
  });
});

describe('one Idempotency-Key', () => {
  const writing = (on: string, words: string) => ({
    aircraft: on,
    origin: 'technician',
    description: words,
    recordedAt: '2026-01-01T00:00:00Z',
    lateReason: 'Test.',
  });

  it('sent to both servers at once and again later is done once and answered the same', async () => {
    for (const [, on] of rounds(2 * ROUNDS).slice(1, 11)) {
      const key = randomUUID();
      const body = writing(on, 'Seat belt worn.');
      const send = (client: ApiClient) => () => client.send('POST', '/api/defects', { key, body }) as Promise<Done>;
      const twin = await second.signIn('odrin');
      const answers = await together(send(one), send(twin), send(one), send(twin));
      for (const { status, body: said } of answers) {
        expect([201, 409]).toContain(status);
        if (status === 409) expect(said.type).toBe('/api/problems/idempotency-key-in-use');
      }
      const [again, once] = [await send(twin)(), await send(one)()];
      expect(again).toMatchObject({ status: 201, body: once.body, etag: once.etag });
      for (const { status, body: said } of answers) if (status === 201) expect(said).toEqual(once.body);
      const { items } = await one.get<Shapes['AircraftView']>(`/api/aircraft/${on}`);
      expect(items).toHaveLength(1);
    }
  });

  it('sent with another body, address or version is refused, and the first answer stays', async () => {
    const [on = ''] = aircraft.slice(2 * ROUNDS + 12);
    const key = randomUUID();
    const done = await one.post<Shapes['ActDone']>('/api/defects', writing(on, 'Seat belt worn.'), { key });
    const reused = { status: 422, code: 'idempotency-key-reused' };
    const body = writing(on, 'Seat belt torn.');
    expect(await one.refused('POST', '/api/defects', { key, body })).toMatchObject(reused);
    const path = `/api/defects/${done.body.defect.id}/identification`;
    const item = { entry: '33-42-11', units: ['L'] };
    expect(await one.refused('POST', path, { key, body: item, ifMatch: done.etag })).toMatchObject(reused);
    const again = await one.post<Shapes['ActDone']>('/api/defects', writing(on, 'Seat belt worn.'), { key });
    expect(again.body).toEqual(done.body);
  });

  it('of a signed act is answered again without signing again', async () => {
    const [on = ''] = aircraft.slice(2 * ROUNDS + 13);
    const defect = await written(on, '33-42-11', 'L');
    const send = await ready(one, defect);
    const [done, again] = [await send(), await send()];
    expect({ status: again.status, body: again.body }).toEqual({ status: 200, body: done.body });
    const { history } = await one.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.filter(({ act }) => act === 'deferred')).toHaveLength(1);
  });

  it('of a request that was refused may be used again once its cause is gone', async () => {
    const [on = ''] = aircraft.slice(2 * ROUNDS + 14);
    const key = randomUUID();
    const { lateReason: _late, ...body } = writing(on, 'Seat belt worn.');
    expect(await one.refused('POST', '/api/defects', { key, body })).toMatchObject({
      code: 'late-entry-needs-reason',
    });
    const done = await other.post<Shapes['ActDone']>('/api/defects', writing(on, 'Seat belt worn.'), { key });
    expect(done.status).toBe(201);
    expect((await one.post('/api/defects', writing(on, 'Seat belt worn.'), { key })).status).toBe(201);
  });
});

describe('the record under two sealers', () => {
  it('has numbers without a gap, every entry sealed, and verifies', async () => {
    await expect
      .poll(() => verifyRecord(database.ownerUrl).then((found) => found.map(({ waiting }) => waiting)), PATIENCE)
      .toEqual([0, 0]);
    const findings = await verifyRecord(database.ownerUrl);
    expect(findings.map(({ misfit }) => misfit)).toEqual([null, null]);
    const gaps = await withClient(database.adminUrl, async (client) => {
      const { rows } = await client.query<{ count: string; last: string }>(
        'select count(*) as count, max(number) as last from record_sealed group by operator_id',
      );
      return rows.filter(({ count, last }) => count !== last);
    });
    expect(gaps).toEqual([]);
  });
});
