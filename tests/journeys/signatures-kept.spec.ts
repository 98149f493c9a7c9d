/**
 * Electronic signatures, one test for each published requirement, named after it: what is kept, who may, what is claimed.
 * The first half stands in signatures.spec.ts, with the basis and the meaning of the marks.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyRecord } from '#store';
import type { Shapes } from '../support/api-client.js';
import { readPdf } from '../support/read-pdf.js';
import { demoSecret } from '../support/running-server.js';
import { SignatureScene, WORK } from './signatures-scene.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
let clock = '2026-01-15T12:12:00.000Z';
let scene: SignatureScene;
let defect: string;

beforeAll(async () => {
  const names = ['odrin', 'wick', 'tamsel', 'ulla', 'wenna', 'dalm', 'ressa', 'brask'];
  scene = await SignatureScene.begin(() => clock, names);
  defect = await scene.written();
});

afterAll(() => scene.server.stop());

const idOf = async (name: string): Promise<string> =>
  (await scene.person(name).get<Shapes['SessionView']>('/api/session')).person.id;

describe('E-10: who leaves loses authority at once, and what was signed still verifies (FROM MEMORY)', () => {
  it('E-10: the next signature is refused, the authorisations are revoked, the old signatures verify', async () => {
    await scene.rectify('wick', defect);
    const before = await scene.newest('wick');
    const id = await idOf('wick');
    const { body } = await scene.person('ulla').post<Shapes['MemberChanged']>(`/api/people/${id}/leaving`, {
      reason: 'End of contract.',
    });
    expect(body.person).toMatchObject({ works: false, validUntil: clock });
    expect(body.person.authorisations.map(({ revokedAt }) => revokedAt)).toEqual([clock]);
    const sign = { ...WORK, sign: { secret: demoSecret(), statement: before.statement } };
    expect(
      await scene
        .person('wick')
        .refused('POST', `/api/defects/${defect}/rectification`, { ifMatch: '"1"', body: sign }),
    ).toMatchObject({ status: 401, code: 'not-signed-in' });
    clock = '2026-01-15T13:00:00.000Z';
    const after = await scene.person('wenna').get<Shapes['SignatureView']>(`/api/signatures/${before.id}`);
    expect(after).toMatchObject({
      verifies: true,
      by: 'Wick Straddock',
      licence: 'QX.66.27730',
      signedAt: before.signedAt,
    });
  });
});

describe('E-11: EU, records of continuing airworthiness (AMC M.A.305(e)(a)(1)-(4), SEEN)', () => {
  it('E-11: they are searched, give the status, and print it', async () => {
    const reader = scene.person('wenna');
    const { aircraft } = await reader.get<Shapes['Fleet']>('/api/fleet');
    const plane = aircraft.find(({ registration }) => registration === 'Q-KEA');
    const { items } = await reader.get<Shapes['AircraftView']>(`/api/aircraft/${plane?.id}`);
    expect(items.map(({ id }) => id)).toContain(defect);
    const { entries } = await reader.get<Shapes['RecordEntries']>(`/api/record?aircraft=${plane?.id}`);
    const found = entries.filter(({ what, by }) => what === 'defect.rectification' && by === 'Wick Straddock');
    expect(found).toHaveLength(1);
  });

  it('E-11: staff who are not authorised alter nothing', async () => {
    const reader = scene.person('wenna');
    const sign = await reader.signature(defect, { act: 'rectify' });
    const body = { ...WORK, sign };
    const ifMatch = await reader.seen(defect);
    expect(await reader.refused('POST', `/api/defects/${defect}/rectification`, { ifMatch, body })).toMatchObject({
      status: 403,
    });
    expect(await reader.seen(defect)).toBe(ifMatch);
  });

  it('E-11: an amendment is traced: what stood before, who amended it, and the record verifies over both', async () => {
    await scene.rectify('odrin', defect, { workDone: 'Lamp and socket replaced.' });
    const { history } = await scene.person('wenna').get<Shapes['DefectView']>(`/api/defects/${defect}`);
    const work = history.filter(({ act }) => act === 'rectification');
    expect(work.map(({ by }) => by)).toEqual(['Wick Straddock', 'Odrin Vask']);
    const findings = await verifyRecord(scene.server.ownerUrl);
    expect(findings.map(({ misfit }) => misfit)).toEqual([null, null]);
  });
});

describe('E-12: EU, digitised records are safe against alteration, their date included (SEEN)', () => {
  it('E-12: not even the owner of the tables changes a row or its date', async () => {
    for (const [table, column] of [
      ['signature', 'signed_at'],
      ['record_entry', 'entered_at'],
      ['defect_act', 'at'],
    ]) {
      const sql = `update ${table} set ${column} = ${column} - interval '1 day'`;
      await expect(scene.asOwner(sql), table).rejects.toMatchObject({ code: 'PV002' });
    }
  });
});

describe('E-13: EU, each terminal is guarded against unauthorised change (AMC M.A.614(a) 5, SEEN)', () => {
  it('E-13: a terminal left open for a shift is signed out, and until then signs nothing without the secret', async () => {
    const begun = clock;
    const client = await scene.server.signIn('tamsel');
    const sign = { ...(await client.signature(defect, { act: 'rectify' })), secret: 'of whoever walks by' };
    const ifMatch = await client.seen(defect);
    const body = { ...WORK, sign };
    expect(await client.refused('POST', `/api/defects/${defect}/rectification`, { ifMatch, body })).toMatchObject({
      code: 'secret-wrong',
    });
    clock = new Date(Date.parse(begun) + 12 * 3_600_000).toISOString();
    expect(await client.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    clock = begun;
  });
});

describe('E-14: legible throughout, the original kept (SEEN)', () => {
  it('E-14: a record that was lost and made anew is stated, signed, with the authority that was told', async () => {
    const { aircraft } = (await scene.person('wenna').get<Shapes['DefectView']>(`/api/defects/${defect}`)).defect;
    const path = `/api/aircraft/${aircraft}/losses`;
    const loss = {
      from: '2025-12-01T00:00:00Z',
      until: '2025-12-03T00:00:00Z',
      lost: 'the log sheets of two days were burnt',
      madeFrom: 'the copies kept at the station',
      authority: 'the authority of the register',
      reference: 'LOSS 12',
    };
    const asked = (over: Partial<typeof loss> = {}) =>
      `${path}/statement?${new URLSearchParams({ ...loss, ...over }).toString()}`;
    const quality = scene.person('wenna');
    const refusal = await quality.refused('GET', asked({ until: loss.from }));
    expect(refusal).toMatchObject({ status: 422, errors: [{ pointer: '/until' }] });
    expect(await scene.person('odrin').refused('GET', asked())).toMatchObject({ status: 403 });
    const { statement } = await quality.get<Shapes['Statement']>(asked());
    for (const said of [loss.lost, loss.madeFrom, loss.authority, loss.reference]) expect(statement).toContain(said);
    const sign = { secret: quality.secret, statement };
    const other = await quality.refused('POST', path, { body: { ...loss, lost: 'nothing much', sign } });
    expect(other.code).toBe('statement-not-shown');
    await quality.post(path, { ...loss, sign });
    const { losses } = await scene.person('odrin').get<Shapes['Losses']>(path);
    expect(losses).toMatchObject([{ ...loss, statement }]);
  });

  it('E-14: the first words stand in history and on paper after everything that followed, and cannot be removed', async () => {
    const reader = scene.person('wenna');
    const { history } = await reader.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.length).toBeGreaterThan(3);
    expect(history[0]?.words).toContain('Left landing light out.');
    expect(history.map(({ seq }) => seq)).toEqual(history.map((_, index) => index + 1));
    const paper = await reader.page(`/api/defects/${defect}/history.pdf`);
    const { pages } = await readPdf(new Uint8Array(await paper.arrayBuffer()));
    expect(pages.join(' ')).toContain('Left landing light out.');
    for (const table of ['defect_act', 'record_entry', 'signature']) {
      await expect(scene.asOwner(`delete from ${table}`), table).rejects.toMatchObject({ code: 'PV002' });
    }
  });
});

describe('E-15: the qualification is checked at that moment and kept (121.709(b)(3), 145.A.50(a), DERIVED)', () => {
  it.each([
    ['dalm', 'authorisation-not-valid-then', 'whose authorisation ran out'],
    ['ressa', 'authorisation-does-not-cover', 'who is authorised for another type'],
    ['brask', 'authorisation-does-not-cover', 'whose authorisation lacks the privilege'],
  ])('E-15: %s is refused: %s', async (name, code) => {
    const attempt = await scene.person(name).signRefused(defect, 'rectification', { act: 'rectify' }, WORK);
    expect(attempt).toMatchObject({ status: 403, code });
  });

  it('E-15: the authorisation stands with the signature as it was, whatever becomes of it', async () => {
    await scene.rectify('odrin', defect);
    const { id } = await scene.newest('odrin');
    const kept = await scene.row(`select authorisation from signature where id = '${id}'`);
    expect(kept['authorisation']).toMatchObject({
      number: 'QOF-L-011',
      operator: 'QOF',
      aircraftTypes: ['Kellwing'],
      licenceCategories: ['B1'],
      privileges: expect.arrayContaining(['release']),
      validFrom: expect.any(String),
      validUntil: expect.any(String),
      revokedAt: null,
    });
  });
});

describe('E-16: the inspector is not the performer (145.A.48 AMC4, DERIVED)', () => {
  it('E-16: the same person is refused, another qualified one is not', async () => {
    await scene.rectify('odrin', defect, { inspectionAsked: true });
    const findings = { findings: 'Lamp and lens looked at.' };
    const inspect = { act: 'inspect' };
    expect(await scene.person('odrin').signRefused(defect, 'inspection', inspect, findings)).toMatchObject({
      status: 403,
      code: 'same-person-inspecting',
    });
    const other = await scene.server.signIn('ilva', 'QOF');
    expect((await other.sign(defect, 'inspection', inspect, findings)).signed).toMatchObject({
      by: 'Ilva Merrondel',
    });
  });
});

describe('E-17: the record keeps which accepted form was used (SEEN-2)', () => {
  it('E-17: every signature names its form, and the database takes no other', async () => {
    expect((await scene.newest('odrin')).method).toBe('password');
    const copy = `insert into signature select operator_id, gen_random_uuid(), person_id, statement, content_sha256,
      authorisation, 'a nod', evidence, signed_at, entry_id from signature limit 1`;
    await expect(scene.asOwner(copy)).rejects.toMatchObject({ code: '23514' });
  });
});

describe('E-18: a picture or a typed name alone is no signature (traceable to the individual, DERIVED)', () => {
  it.each([
    ['a typed name', { name: 'Odrin Vask' }],
    ['a picture', { image: 'data:image/png;base64,iVBORw0KGgo=' }],
    ['a typed name with the statement', { name: 'Odrin Vask', statement: true }],
    ['the statement with nothing beside it', { statement: true }],
    ['a form that says paper', { method: 'paper', statement: true }],
  ])('E-18: %s is refused, and nothing is signed', async (_, { statement, ...given }: Record<string, unknown>) => {
    const before = await scene.count('signature');
    const client = scene.person('odrin');
    const shown = (await client.signature(defect, { act: 'rectify' })).statement;
    const sign = { ...given, ...(statement ? { statement: shown } : {}) };
    const body = { ...WORK, sign };
    const ifMatch = await client.seen(defect);
    expect(await client.refused('POST', `/api/defects/${defect}/rectification`, { ifMatch, body })).toMatchObject({
      status: 422,
      code: 'invalid-input',
    });
    expect(await scene.count('signature')).toBe(before);
  });
});

describe('E-19: what can be signed (SEEN)', () => {
  // Load manifest, training record and flight test report are other systems' records.
  it('E-19: a task, a maintenance record and a release have each a statement of its own, and no two are alike', async () => {
    const acts = ['procedure', 'rectify', 'test', 'inspect', 'restore', 'release', 'defer', 'no-fault-found'];
    const statements = new Set<string>();
    for (const act of acts) {
      const query = act === 'procedure' ? 'procedure&work=33-42-11/1/M1' : act === 'defer' ? 'defer&row=1' : act;
      const path = `/api/defects/${defect}/statement?act=${query}`;
      const { statement } = await scene.person('odrin').get<Shapes['Statement']>(path);
      expect(statement, act).toContain('Q-KEA');
      statements.add(statement);
    }
    expect(statements.size).toBe(acts.length);
  });
});

describe('E-20: designed to the guidance, never approved (SEEN)', () => {
  const CLAIM =
    /\b(FAA|EASA|authority)[- ]approved|approved by (the )?(FAA|EASA|authority)|\bcertified by (the )?(FAA|EASA)/i;
  const texts = (folder: string): string[] =>
    readdirSync(join(ROOT, folder)).flatMap((name) => {
      const path = join(folder, name);
      if (statSync(join(ROOT, path)).isDirectory()) return texts(path);
      return /\.(tsx?|md)$/.test(name) ? [path] : [];
    });

  it('E-20: no page, no answer and no document claims an approval', () => {
    const files = ['README.md', 'DEVELOPERS.md', ...texts('apps')];
    expect(files.length).toBeGreaterThan(200);
    expect(files.filter((path) => CLAIM.test(readFileSync(join(ROOT, path), 'utf8')))).toEqual([]);
    expect(readFileSync(join(ROOT, 'README.md'), 'utf8')).toContain('designed to the published guidance');
  });
});

describe('E-21: at the end of employment access ends (SEEN-2) and old signatures stay (FROM MEMORY)', () => {
  it('E-21: sessions end in the middle of the work, and signing in opens nothing', async () => {
    const client = scene.person('tamsel');
    const other = await scene.server.signIn('tamsel');
    const feed = await client.post<Shapes['CalendarFeedMade']>('/api/calendar-feeds', { label: 'telephone' });
    const address = new URL(feed.body.address ?? '', scene.server.url).pathname;
    expect((await client.page(address)).status).toBe(200);
    await scene.person('ulla').post(`/api/people/${await idOf('tamsel')}/leaving`, { reason: 'Moves away.' });
    for (const one of [client, other]) expect(await one.refused('GET', '/api/fleet')).toMatchObject({ status: 401 });
    const again = await scene.server.visitor().signIn('tamsel');
    expect(await again.refused('GET', '/api/fleet')).toMatchObject({ code: 'no-operator-chosen' });
    expect((await again.get<Shapes['SessionView']>('/api/session')).operators).toEqual([]);
    expect((await client.page(address)).status).toBe(404);
  });

  it('E-21: it is entered by an administrator, once, for somebody else', async () => {
    const reason = { body: { reason: 'x' } };
    const path = async (name: string) => `/api/people/${await idOf(name)}/leaving`;
    expect(await scene.person('brask').refused('POST', await path('odrin'), reason)).toMatchObject({ status: 403 });
    expect(await scene.person('ulla').refused('POST', await path('ulla'), reason)).toMatchObject({
      code: 'not-for-oneself',
    });
    const { people } = await scene.person('ulla').get<Shapes['Members']>('/api/people');
    const gone = people.filter(({ works }) => !works);
    expect(gone.map(({ name }) => name).toSorted()).toEqual(['Tamsel Quorry', 'Wick Straddock']);
    expect(await scene.person('ulla').refused('POST', `/api/people/${gone[0]?.id}/leaving`, reason)).toMatchObject({
      status: 404,
    });
  });
});
