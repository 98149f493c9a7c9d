/**
 * Electronic signatures, one test for each published requirement, named after it: identity, control, intent, binding.
 * The second half stands in signatures-kept.spec.ts. Basis: FAA AC 120-78B (2024-12-11), EASA AMC M.A.305(e) and
 * 145.A.50. The mark beside a test says whether the source was read (SEEN), told by another (SEEN-2), worked out
 * (DERIVED) or is from memory.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { readPdf } from '../support/read-pdf.js';
import { demoSecret } from '../support/running-server.js';
import { SignatureScene, WORK } from './signatures-scene.js';

let clock = '2026-01-15T12:12:00.000Z';
let scene: SignatureScene;
let defect: string;

const minuteLater = (): void => {
  clock = new Date(Date.parse(clock) + 60_000).toISOString();
};

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'wick', 'ulla', 'wenna']);
  defect = await scene.written();
});

afterAll(() => scene.server.stop());

describe('E-01: a signature identity is one person and no other (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-01: two people who sign the same words are told apart, by identity, licence and authorisation', async () => {
    await scene.rectify('odrin', defect);
    await scene.rectify('wick', defect);
    const [one, other] = [await scene.newest('odrin'), await scene.newest('wick')];
    expect(one.statement).toBe(other.statement);
    for (const key of ['id', 'by', 'licence', 'authorisation', 'evidence', 'contentSha256'] as const) {
      expect(one[key], key).not.toBe(other[key]);
    }
  });

  it('E-01: a sign-in name is taken once, whatever operator asks, and never given back', async () => {
    const { person } = await scene.person('wick').get<Shapes['SessionView']>('/api/session');
    const take = 'insert into credential (person_id, sign_in_name, hash) values ($1, $2, $3)';
    expect(await scene.asServer(take, [person.id, 'odrin', 'x'])).toBe('23505');
    expect(await scene.asServer("update credential set sign_in_name = 'wick'")).toBe('23505');
    expect(await scene.asServer("delete from credential where sign_in_name = 'odrin'")).toBe('42501');
    expect(await scene.asServer('delete from person')).toBe('42501');
  });
});

describe('E-02: only the signer can apply the signature (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-02: it needs the secret again, under an open session too', async () => {
    const client = scene.person('odrin');
    const sign = await client.signature(defect, { act: 'rectify' });
    const attempt = async (secret: string | undefined) =>
      client.refused('POST', `/api/defects/${defect}/rectification`, {
        ifMatch: await client.seen(defect),
        body: { ...WORK, sign: { ...sign, secret } },
      });
    expect(await attempt('not the secret')).toMatchObject({ status: 403, code: 'secret-wrong' });
    expect(await attempt(undefined)).toMatchObject({ status: 422, code: 'invalid-input' });
  });

  it('E-02: an administrator signs for nobody: not by naming a person, not by changing a secret', async () => {
    const client = scene.person('ulla');
    const odrin = (await scene.person('odrin').get<Shapes['SessionView']>('/api/session')).person.id;
    const attempt = async (more: object) => {
      const sign = { ...(await client.signature(defect, { act: 'rectify' })), ...more };
      const body = { ...WORK, sign };
      return client.refused('POST', `/api/defects/${defect}/rectification`, {
        ifMatch: await client.seen(defect),
        body,
      });
    };
    expect(await attempt({ person: odrin })).toMatchObject({ status: 422, code: 'invalid-input' });
    expect(await attempt({})).toMatchObject({ status: 403, code: 'no-authorisation' });
    const change = "update credential set hash = 'mine' where sign_in_name = 'wick'";
    expect(await scene.asServer(change)).toBe(0);
    expect(await scene.server.visitor().signIn('wick')).toBeDefined();
  });
});

describe('E-03: the record shows that it is signed, and the signer is told (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-03: the answer confirms it, the history shows it, and the signer finds it in the own list', async () => {
    minuteLater();
    const { signed } = await scene.rectify('odrin', defect);
    expect(signed).toMatchObject({ by: 'Odrin Vask', licence: 'QX.66.20417', signedAt: clock, method: 'password' });
    const { history } = await scene.person('wenna').get<Shapes['DefectView']>(`/api/defects/${defect}`);
    expect(history.at(-1)).toMatchObject({ by: 'Odrin Vask', statement: signed?.statement, signedAt: clock });
    expect(await scene.newest('odrin')).toMatchObject({
      statement: signed?.statement,
      signedAt: clock,
      verifies: true,
    });
  });

  it('E-03: nobody is told of what others signed as if it were the own', async () => {
    const { signatures } = await scene.person('wick').get<Shapes['Signatures']>('/api/signatures');
    expect(new Set(signatures.map(({ by }) => by))).toEqual(new Set(['Wick Straddock']));
  });
});

describe('E-04: the statement that is certified is shown at signing (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-04: it names what is certified, is sent back word for word, and is kept as it was shown', async () => {
    const client = scene.person('odrin');
    const { statement } = await client.get<Shapes['Statement']>(`/api/defects/${defect}/statement?act=release`);
    expect(statement).toContain('ready for release to service');
    const attempt = async (said: string) =>
      client.refused('POST', `/api/defects/${defect}/rectification`, {
        ifMatch: await client.seen(defect),
        body: { ...WORK, sign: { secret: demoSecret(), statement: said } },
      });
    for (const said of [statement, 'I did something.', ` ${(await scene.newest('odrin')).statement}`]) {
      expect(await attempt(said)).toMatchObject({ status: 409, code: 'statement-not-shown' });
    }
    expect((await scene.newest('odrin')).statement).toMatch(/^I carried out the work described for defect Q-KEA/);
  });
});

describe('E-05: signing is a deliberate act (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-05: reading, saving and turning away from the statement leave no signature', async () => {
    const client = scene.person('odrin');
    const before = await scene.count('signature');
    const other = await scene.written('Q-KEC');
    for (const path of ['', '/statement?act=rectify', '/statement?act=release']) {
      await client.get(`/api/defects/${other}${path}`);
    }
    for (const more of [{}, { sign: { statement: 'x' } }, { sign: { secret: '', statement: 'x' } }]) {
      const saved = { ifMatch: '"1"', body: { ...WORK, ...more } };
      const refusal = await client.refused('POST', `/api/defects/${other}/rectification`, saved);
      expect(refusal, JSON.stringify(more)).toMatchObject({ status: 422, code: 'invalid-input' });
    }
    expect(await scene.count('signature')).toBe(before);
  });
});

describe('E-06: any reader recognises who signed (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-06: name, licence, role and time with its base stand in history, list and item', async () => {
    const reader = scene.person('wenna');
    const { history, defect: line } = await reader.get<Shapes['DefectView']>(`/api/defects/${defect}`);
    for (const act of history.filter(({ statement }) => statement !== null)) {
      expect(act).toMatchObject({
        by: expect.stringMatching(/\w+ \w+/),
        role: 'technician',
        licence: expect.any(String),
      });
      expect(act.enteredAtBase).toMatch(/[+-]\d\d:\d\d$/);
    }
    expect(line.deferredBy).toBeNull();
    const { id } = await scene.newest('odrin');
    expect(await reader.get(`/api/signatures/${id}`)).toMatchObject({
      by: 'Odrin Vask',
      licence: 'QX.66.20417',
      role: 'technician',
      signedAt: expect.stringMatching(/Z$/),
      signedAtBase: expect.stringMatching(/[+-]\d\d:\d\d$/),
    });
  });

  it('E-06: every copy on paper names the signer, the licence, the role and the time', async () => {
    const response = await scene.person('wenna').page(`/api/defects/${defect}/history.pdf`);
    const { pages } = await readPdf(new Uint8Array(await response.arrayBuffer()));
    for (const words of ['Odrin Vask', 'QX.66.20417', 'technician', 'Wick Straddock']) {
      expect(pages.join(' ')).toContain(words);
    }
  });

  it('E-06: a deferral is shown with who signed it', async () => {
    const other = await scene.written('Q-KED');
    const done = await scene.person('odrin').sign(other, 'deferral', { act: 'defer', row: '1' }, { row: '1' });
    expect(done.defect.deferredBy).toMatchObject({ by: 'Odrin Vask', licence: 'QX.66.20417', signedAt: clock });
  });
});

describe('E-07: it is bound to its content by a hash (basis AC 120-78B, FROM MEMORY; hash in the 2002 AC, SEEN-2)', () => {
  const alterations: [what: string, sql: string, misfit: RegExp][] = [
    ['a word of the statement', "update signature set statement = statement || '.' where id = $1", /statement/],
    ['the time', "update signature set signed_at = signed_at - interval '1 day' where id = $1", /signedAt/],
    ['the form', "update signature set method = 'paper' where id = $1", /method/],
    ['the evidence', "update signature set evidence = 'session of another' where id = $1", /evidence/],
    [
      'the signer',
      `update signature set person_id = (select person_id from credential where sign_in_name = 'wick') where id = $1`,
      /signer/,
    ],
    [
      'what was done, in the record itself, with a fitting leaf',
      `update record_entry set canonical = x.c, leaf = sha256('\\x00'::bytea || x.c) from (
         select convert_to(replace(convert_from(e.canonical, 'UTF8'), 'Lamp replaced.', 'Lamp cleaned.'), 'UTF8') as c
         from record_entry e join signature s on s.entry_id = e.id where s.id = $1) x
       where id = (select entry_id from signature where id = $1)`,
      /content/,
    ],
  ];

  it('E-07: everything that was ever signed verifies', async () => {
    const { signatures } = await scene.person('odrin').get<Shapes['Signatures']>('/api/signatures');
    expect(signatures.length).toBeGreaterThan(10);
    expect(signatures.flatMap(({ misfits }) => misfits)).toEqual([]);
  });

  it.each(alterations)('E-07: with %s altered it no longer verifies, and says why', async (_, sql, misfit) => {
    minuteLater();
    await scene.rectify('odrin', defect);
    const signature = await scene.newest('odrin');
    expect(signature).toMatchObject({ verifies: true, misfits: [] });
    await scene.tamper(sql, [signature.id]);
    const after = await scene.person('wenna').get<Shapes['SignatureView']>(`/api/signatures/${signature.id}`);
    expect(after.verifies).toBe(false);
    expect(after.misfits.join()).toMatch(misfit);
  });
});

describe('E-08: it leads back to the person and the sign-in (basis AC 120-78B, SEEN-2)', () => {
  it('E-08: two sign-ins of one person are told apart under their signatures', async () => {
    const again = await scene.server.signIn('wick');
    const sessions = new Set<string>();
    for (const client of [scene.person('wick'), again]) {
      minuteLater();
      await client.sign(defect, 'rectification', { act: 'rectify' }, WORK);
      const { evidence } = await scene.newest('wick');
      const [, session = ''] = /^session ([0-9a-f-]{36})/.exec(evidence) ?? [];
      sessions.add(session);
    }
    expect(sessions.size).toBe(2);
    expect(sessions).not.toContain('');
  });
});

describe('E-09: what is signed is not altered, only added to (basis AC 120-78B, FROM MEMORY)', () => {
  it('E-09: the server itself can neither change nor delete it, and the original stays readable', async () => {
    for (const table of ['signature', 'record_entry', 'defect_act']) {
      expect(await scene.asServer(`delete from ${table}`), table).toBe('42501');
      expect(await scene.asServer(`update ${table} set operator_id = operator_id`), table).toBe('42501');
    }
    const view = () => scene.person('wenna').get<Shapes['DefectView']>(`/api/defects/${defect}`);
    const before = (await view()).history;
    await scene.rectify('wick', defect, { workDone: 'Lamp replaced; the earlier entry named the wrong lamp.' });
    const after = (await view()).history;
    expect(after.slice(0, before.length).map(({ words }) => words)).toEqual(before.map(({ words }) => words));
    expect(after).toHaveLength(before.length + 1);
  });
});
