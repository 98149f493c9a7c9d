/**
 * A deadline is signed with one version of the time-zone data, and the machine gets another. The last day stays; where its
 * end moves, both ends are kept, the stricter counts, and a named person confirms. America/Vancouver in November 2026 is
 * such a case between published versions; here the data is shifted by the test, so that it moves both ways.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startOfDayHere, type StartOfDayIn } from '#intervals';
import { verifyRecord } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { runningServer, type RunningServer } from '../support/running-server.js';

const ITEM = 'Q-KEC/1';
const NOW = '2026-11-25T09:00:00.000Z';

/** In the base of this operator every day begins so many minutes later than this machine's data says. */
const shifted =
  (minutes: number): StartOfDayIn =>
  (day, base) =>
    base === 'Europe/Athens'
      ? new Date(Date.parse(startOfDayHere(day, base)) + minutes * 60_000).toISOString()
      : startOfDayHere(day, base);

let database: FreshDatabase;
let server: RunningServer;
let signed: string;

const start = (zoneData?: { tzdb: string; startOfDayIn?: StartOfDayIn }): Promise<RunningServer> =>
  runningServer({ database, now: () => NOW, ...(zoneData ? { zoneData } : {}) });

async function restart(zoneData?: { tzdb: string; startOfDayIn?: StartOfDayIn }): Promise<void> {
  await server.stop();
  server = await start(zoneData);
}

const line = async (client: ApiClient): Promise<Shapes['DefectLine']> => {
  const { defects } = await client.get<Shapes['DefectList']>('/api/defects');
  const found = defects.find(({ number }) => number === ITEM);
  if (!found) throw new Error(`${ITEM} is not open.`);
  return found;
};

const view = (client: ApiClient) => client.get<Shapes['ZoneDataView']>('/api/zone-data');
const ours = async (client: ApiClient) => (await view(client)).differences.filter(({ number }) => number === ITEM);
const plus = (instant: string, minutes: number) => new Date(Date.parse(instant) + minutes * 60_000).toISOString();

async function confirm(client: ApiClient): Promise<Shapes['ZoneDataView']> {
  const { statement } = await client.get<Shapes['Statement']>('/api/zone-data/statement');
  const sign = { secret: client.secret, statement };
  return (await client.post<Shapes['ZoneDataView']>('/api/zone-data/confirmation', { sign })).body;
}

beforeAll(async () => {
  database = await freshDatabase();
  server = await runningServer({ database, demo: true, now: () => NOW });
  signed = (await line(await server.signIn('sennet'))).deadline?.endsAt ?? '';
});

afterAll(async () => {
  await server.stop();
  await database.drop();
});

it('the same data has nothing to tell', async () => {
  const client = await server.signIn('sennet');
  expect(await view(client)).toMatchObject({ newest: process.versions.tz, older: false, differences: [] });
  expect(server.zoneData.every(({ differences }) => differences === 0)).toBe(true);
});

describe('newer data, by which the days begin an hour sooner', () => {
  it('is looked at by one of two servers that start at the same moment', async () => {
    await server.stop();
    const newer = { tzdb: '2098a', startOfDayIn: shifted(-60) };
    const both = await Promise.all([start(newer), start(newer)]);
    const looked = both.map(({ zoneData }) => zoneData.filter(({ counted }) => counted > 0).length);
    expect(looked.filter((count) => count > 0)).toHaveLength(1);
    [server] = both as [RunningServer, RunningServer];
    await both[1]?.stop();
  });

  it('ends the deadline an hour sooner at once, on the same last day, and says so', async () => {
    const client = await server.signIn('sennet');
    const { deadline } = await line(client);
    expect(deadline).toMatchObject({ endsAt: expect.any(String), lastDay: '2026-11-26', tzdb: '2098a' });
    expect(Date.parse(deadline?.endsAt ?? '')).toBe(Date.parse(plus(signed, -60)));
    expect(await ours(client)).toMatchObject([
      { zone: 'Europe/Athens', tzdbAfter: '2098a', confirmedAt: null, inForce: plus(signed, -60) },
    ]);
  });

  it('is confirmed by a signature of quality or of the engineer, and of nobody else', async () => {
    const technician = await server.signIn('odrin');
    const sign = { secret: technician.secret, statement: 'I confirm.' };
    expect(await technician.refused('POST', '/api/zone-data/confirmation', { body: { sign } })).toMatchObject({
      status: 403,
    });
    const quality = await server.signIn('wenna');
    const other = { secret: quality.secret, statement: 'I confirm something.' };
    expect(await quality.refused('POST', '/api/zone-data/confirmation', { body: { sign: other } })).toMatchObject({
      code: 'statement-not-shown',
    });
    const confirmed = await confirm(quality);
    expect(confirmed.differences.every(({ confirmedAt }) => confirmedAt !== null)).toBe(true);
    const { statement } = await quality.get<Shapes['Statement']>('/api/zone-data/statement');
    const again = { secret: quality.secret, statement };
    expect(await quality.refused('POST', '/api/zone-data/confirmation', { body: { sign: again } })).toMatchObject({
      code: 'nothing-to-confirm',
    });
  });
});

describe('newer data still, by which they begin half an hour later', () => {
  it('gives no time before somebody confirmed it', async () => {
    await restart({ tzdb: '2098b', startOfDayIn: shifted(30) });
    const client = await server.signIn('sennet');
    expect(Date.parse((await line(client)).deadline?.endsAt ?? '')).toBe(Date.parse(plus(signed, -60)));
    expect((await ours(client)).at(-1)).toMatchObject({ tzdbAfter: '2098b', inForce: plus(signed, -60) });
  });

  it('counts once it is confirmed, and the record tells all of it', async () => {
    const engineer = await server.signIn('sennet');
    await confirm(engineer);
    const { deadline } = await line(engineer);
    expect(deadline).toMatchObject({ lastDay: '2026-11-26', tzdb: '2098b' });
    expect(Date.parse(deadline?.endsAt ?? '')).toBe(Date.parse(plus(signed, 30)));
    const findings = await verifyRecord(database.ownerUrl);
    expect(findings.map(({ misfit }) => misfit)).toEqual(findings.map(() => null));
  });
});

describe('a server with older data than deadlines are stored with', () => {
  it('says so, and computes no deadline, and still shows what is stored', async () => {
    await restart();
    expect(server.zoneData.filter(({ newer }) => newer === '2098b')).not.toEqual([]);
    const control = await server.signIn('brask');
    expect(await view(control)).toMatchObject({ older: true, newest: '2098b' });
    const { id, deadline } = await line(control);
    expect(Date.parse(deadline?.endsAt ?? '')).toBe(Date.parse(plus(signed, 30)));
    expect(await control.get(`/api/defects/${id}/extension`)).toMatchObject({
      offer: null,
      refused: { type: '/api/problems/zone-data-older' },
    });
  });

  it('warns whoever signs in, before a row is proposed, and refuses the statement and not only the signature', async () => {
    const technician = await server.signIn('odrin');
    const session = await technician.get<Shapes['SessionView']>('/api/session');
    expect(session.operator).toMatchObject({ newerZoneData: '2098b' });
    const { defects } = await technician.get<Shapes['DefectList']>('/api/defects');
    const on = defects.find(({ number }) => number === ITEM)?.aircraft;
    const { body } = await technician.post<Shapes['ActDone']>('/api/defects', {
      aircraft: on,
      origin: 'technician',
      description: 'Left landing light out.',
      recordedAt: NOW,
      item: { entry: '33-42-11', units: ['L'] },
    });
    const propose = [{ defect: body.defect.id, entry: '33-42-11', units: ['L'], row: '1' }];
    const answer = await technician.post<Shapes['Verdict']>('/api/dispatch/questions', { aircraft: on, propose });
    expect(answer.body.items.map(({ entry }) => entry)).toContain('33-42-11');
    const asked = `/api/defects/${body.defect.id}/statement?act=defer&row=1`;
    expect(await technician.refused('GET', asked)).toMatchObject({
      code: 'zone-data-older',
      next: expect.stringContaining('use one that is'),
    });
  });
});
