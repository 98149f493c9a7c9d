/** What somebody tries who speaks to the database as the server does, who writes into texts, or who times the sign-in. */
import type * as Argon2 from '@node-rs/argon2';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openStore, type Store } from '#store';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { activeIn, readPdf } from '../support/read-pdf.js';
import { SignatureScene } from './signatures-scene.js';

/** How often a secret was held against a stored form: that is what takes the time of a sign-in. */
const hashing = vi.hoisted(() => ({ verified: 0 }));
vi.mock('@node-rs/argon2', async (original) => {
  const real = await original<typeof Argon2>();
  const verify: typeof real.verify = (...given) => {
    hashing.verified += 1;
    return real.verify(...given);
  };
  return { ...real, verify };
});

const clock = '2026-01-15T12:12:00.000Z';
let scene: SignatureScene;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'wenna', 'brask', 'kesh']);
});

afterAll(() => scene.server.stop());

describe("the record, under the server's own role", () => {
  const KEPT = ['record_entry', 'record_sealed', 'tree_head', 'defect_act', 'signature', 'judgement', 'verdict'];

  it.each(KEPT)('%s is neither changed, nor deleted, nor emptied', async (table) => {
    for (const sql of [
      `delete from ${table}`,
      `update ${table} set operator_id = operator_id`,
      `truncate ${table}`,
    ]) {
      expect(await scene.asServer(sql), sql).toBe('42501');
    }
  });

  it.each([
    ['no guard is switched off', 'alter table record_entry disable trigger all'],
    ['no guard is passed by', 'set session_replication_role = replica'],
    ['no policy is dropped', 'drop policy of_operator on record_entry'],
    ['row-level security is not left', 'alter table record_entry no force row level security'],
    ['no other role is taken', 'set role postgres'],
    [
      'no function of the owner is replaced',
      `create or replace function refuse_change() returns trigger language sql as ''`,
    ],
    ['no file is read', `copy record_entry from '/etc/passwd'`],
    ['no program is run', `copy (select 1) to program 'true'`],
    [
      'no number is given out of turn',
      `insert into record_sealed select operator_id, 999999, id, leaf from record_entry`,
    ],
    ['no head is made', `insert into tree_head select operator_id, 999999, repeat('a', 64) from tree_head limit 1`],
  ])('%s', async (_, sql) => {
    expect(String(await scene.asServer(sql))).toMatch(/^(42501|42601|42P13|22023|2BP01)$/);
  });

  it('no entry is added whose leaf is not that of its bytes', async () => {
    const sql = `insert into record_entry (operator_id, id, what, entered_at, canonical, leaf)
      select operator_id, gen_random_uuid(), what, entered_at, canonical, sha256('x') from record_entry limit 1`;
    expect(await scene.asServer(sql)).toBe('23514');
  });
});

describe('row-level security under a pooled connection', () => {
  let store: Store;
  beforeAll(async () => {
    store = await openStore(scene.server.database.appUrl, { connections: 2 });
  });
  afterAll(() => store.close());

  it('shows each of two operators its own rows alone, while both share two connections and some work fails', async () => {
    const of = async (name: string) => {
      const { operator, person } = await scene.person(name).get<Shapes['SessionView']>('/api/session');
      return { operator: operator?.id ?? '', person: person.id };
    };
    const [north, south] = [await of('brask'), await of('kesh')];
    const look = ({ operator, person }: typeof north, n: number) =>
      store.withOperator(operator, person, async (tx) => {
        const rows = await tx.query<{ operator_id: string }>(
          `select operator_id from aircraft union all select operator_id from record_entry
           union all select operator_id from signature`,
        );
        if (n % 5 === 0) await tx.query('select 1 / 0');
        return { operator, seen: [...new Set(rows.map((row) => row.operator_id))] };
      });
    const all = await Promise.allSettled(Array.from({ length: 100 }, (_, n) => look(n % 2 === 0 ? north : south, n)));
    const done = all.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(done).toHaveLength(80);
    expect(done.filter(({ operator, seen }) => seen.length !== 1 || seen[0] !== operator)).toEqual([]);
  });
});

describe('timing a sign-in', () => {
  const attempt = async (name: string): Promise<{ verified: number; counted: number; body: unknown }> => {
    const [verified, counted] = [hashing.verified, await scene.count('sign_in_attempt')];
    const body = { name, secret: 'a secret that nobody has' };
    const answer = await scene.server.visitor().send('POST', '/api/session', { body });
    expect(answer.status).toBe(401);
    return {
      verified: hashing.verified - verified,
      counted: (await scene.count('sign_in_attempt')) - counted,
      body: answer.body,
    };
  };

  it('tells no name from another: each costs one hash and one counted attempt, and reads the same', async () => {
    const somebody = await attempt('jorik');
    expect(somebody).toMatchObject({ verified: 1, counted: 1 });
    for (const name of ['nobody', 'jorik ', 'JORIK', 'x'.repeat(80)]) expect(await attempt(name)).toEqual(somebody);
  });

  it('tells neither when the name is locked: then no secret is looked at', async () => {
    const locked = async (name: string) => {
      for (let n = 0; n < 4; n += 1) {
        await scene.server.visitor().send('POST', '/api/session', { body: { name, secret: `guess ${n}` } });
      }
      const before = hashing.verified;
      const answer = await scene.server.visitor().send('POST', '/api/session', { body: { name, secret: 'x' } });
      return { status: answer.status, verified: hashing.verified - before, body: answer.body };
    };
    const somebody = await locked('jorik');
    expect(somebody).toMatchObject({ status: 429, verified: 0 });
    expect(await locked('nobody')).toEqual(somebody);
  });
});

describe('markup and formulas in a text', () => {
  const HOSTILE = `=HYPERLINK("https://attacker.example","x") <script>alert(1)</script><img src=x onerror=alert(1)> \u202E`;
  let client: ApiClient;
  let defect: string;

  beforeAll(async () => {
    client = scene.person('odrin');
    const { aircraft } = await client.get<Shapes['Fleet']>('/api/fleet');
    const body = { aircraft: aircraft[0]?.id, origin: 'technician', description: HOSTILE, recordedAt: clock };
    defect = (await client.post<Shapes['ActDone']>('/api/defects', body)).body.defect.id;
  });

  it('is kept and given back as the text it is, as JSON and never as a page', async () => {
    const whole = `/api/defects/${defect}`;
    for (const path of [whole, `${whole}/history.json`]) {
      const response = await scene.person('wenna').page(path);
      expect(response.headers.get('content-type')).toMatch(/^application\/json/);
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect(response.headers.get('content-security-policy')).toContain("script-src 'self'");
      const { defect: line } = (await response.json()) as Partial<Shapes['DefectView']>;
      if (path === whole) expect(line?.description).toBe(HOSTILE);
    }
  });

  it('does nothing in a printed document: no script, no link, no action, only the text', async () => {
    const response = await scene.person('wenna').page(`/api/defects/${defect}/history.pdf`);
    const bytes = new Uint8Array(await response.arrayBuffer());
    expect(await activeIn(bytes)).toEqual([]);
    const { pages } = await readPdf(bytes);
    expect(pages.join(' ')).toContain('=HYPERLINK("https://attacker.example","x") <script>alert(1)</script>');
  });

  it('is carried into no header: the name of a file is made of plain letters', async () => {
    const response = await scene.person('wenna').page(`/api/defects/${defect}/history.json`);
    expect(response.headers.get('content-disposition') ?? '').toMatch(/^[\x20-\x7e]*$/);
    expect(response.headers.get('content-disposition') ?? '').not.toMatch(/[<>/\\]/);
  });
});
