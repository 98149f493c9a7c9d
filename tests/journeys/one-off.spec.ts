/**
 * A one-off authorisation: somebody whose scope does not cover a job is authorised for one signature on it, by quality or
 * control, signed (145.A.30(j)(5), FROM MEMORY; who may issue it and that it is good once: common practice, no source).
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Sending, Shapes } from '../support/api-client.js';
import { SignatureScene, WORK } from './signatures-scene.js';

let clock = '2026-01-15T12:12:00.000Z';
const UNTIL = '2026-01-15T18:00:00Z';
const BECAUSE = 'nobody rated is at the station; rated on the same lamp of the other type.';
let scene: SignatureScene;
let defect: string;
const ids: Record<string, string> = {};

beforeAll(async () => {
  const names = ['odrin', 'ressa', 'mabbet', 'wenna', 'brask', 'sennet', 'ulla'];
  scene = await SignatureScene.begin(() => clock, names);
  for (const name of names) {
    ids[name] = (await scene.person(name).get<Shapes['SessionView']>('/api/session')).person.id;
  }
  defect = await scene.written();
});

afterAll(() => scene.server.stop());

interface Asked {
  by?: string;
  to?: string;
  changes?: object;
}

async function asking({ by = 'wenna', to = 'ressa', changes = {} }: Asked): Promise<[string, Sending]> {
  const scope = { defect, privilege: 'sign-procedure', validUntil: UNTIL, because: BECAUSE };
  const query = new URLSearchParams(scope).toString();
  const statement = `/api/people/${ids[to]}/one-off-statement?${query}`;
  const shown = await scene.person(by).send<Shapes['Statement']>('GET', statement);
  const sign = { secret: scene.person(by).secret, statement: shown.body.statement ?? 'x' };
  return [`/api/people/${ids[to]}/one-off`, { body: { ...scope, sign, ...changes } }];
}

async function issue(asked: Asked = {}): Promise<Shapes['MemberView']> {
  const [path, { body }] = await asking(asked);
  return (await scene.person(asked.by ?? 'wenna').post<Shapes['MemberChanged']>(path, body)).body.person;
}

async function refused(asked: Asked): Promise<string> {
  const [path, sending] = await asking(asked);
  return (await scene.person(asked.by ?? 'wenna').refused('POST', path, sending)).code;
}

const work = (name: string, on = defect) =>
  scene.person(name).signRefused(on, 'rectification', { act: 'rectify' }, WORK);

describe('a one-off authorisation is issued', () => {
  it.each<[string, Asked, string]>([
    ['by a technician', { by: 'odrin' }, 'role-missing'],
    ['by the engineer', { by: 'sennet' }, 'role-missing'],
    ['by an administrator', { by: 'ulla' }, 'role-missing'],
    ['to oneself', { by: 'wenna', to: 'wenna' }, 'not-for-oneself'],
    ['for a time that is over', { changes: { validUntil: '2026-01-15T12:00:00Z' } }, 'invalid-input'],
    ['for what is nobody to give once', { changes: { privilege: 'extend' } }, 'invalid-input'],
    ['without a reason', { changes: { because: ' ' } }, 'invalid-input'],
    ['for another job than the one that was shown', { changes: { privilege: 'release' } }, 'statement-not-shown'],
    ['for a job that is not there', { changes: { defect: '00000000-0000-4000-8000-000000000000' } }, 'not-found'],
  ])('never %s', async (_, asked, code) => {
    const before = await scene.count('authorisation');
    expect(await refused(asked)).toBe(code);
    expect(await scene.count('authorisation')).toBe(before);
  });

  it('by quality, signed, with name, licence, scope, job, reason and end', async () => {
    expect((await work('ressa')).code).toBe('authorisation-does-not-cover');
    const { authorisations, licence } = await issue();
    expect(licence).toBe('QX.66.40120');
    const [given] = authorisations.filter(({ oneOff }) => oneOff !== null);
    expect(given).toMatchObject({
      aircraftTypes: ['Kellwing'],
      privileges: ['sign-procedure'],
      validFrom: clock,
      validUntil: '2026-01-15T18:00:00.000Z',
      oneOff: { defect, because: BECAUSE },
    });
    expect(await scene.newest('wenna')).toMatchObject({
      statement: expect.stringMatching(/^I authorise the person chosen \(reference [0-9a-f]{16} .* on defect Q-KEA/),
      what: 'authorisation.issued-once',
      verifies: true,
    });
  });
});

describe('a one-off authorisation is used', () => {
  it('for its own job alone, by its own holder alone, and within its scope', async () => {
    const other = await scene.written('Q-KEC');
    expect((await work('ressa', other)).code).toBe('authorisation-does-not-cover');
    expect((await work('mabbet')).code).toBe('no-authorisation');
    const release = await scene.person('ressa').signRefused(defect, 'release', { act: 'release' }, {});
    expect(release.code).toBe('authorisation-does-not-cover');
  });

  it('once, of two at once too, and the signature keeps who issued it and why', async () => {
    const client = scene.person('ressa');
    const sign = await client.signature(defect, { act: 'rectify' });
    const sending = { ifMatch: await client.seen(defect), body: { ...WORK, sign } };
    const both = await Promise.all(
      [1, 2].map(() => client.send('POST', `/api/defects/${defect}/rectification`, sending)),
    );
    expect(both.map(({ status }) => status).toSorted()).toEqual([200, 412]);
    const { id, authorisation } = await scene.newest('ressa');
    expect(authorisation).toMatch(/^Q-KEA\/\d+ one-off 1$/);
    const kept = await scene.row(`select authorisation from signature where id = '${id}'`);
    expect(kept['authorisation']).toMatchObject({
      oneOff: { defect, because: BECAUSE, issuedBy: { person: ids['wenna'], role: 'quality' } },
    });
    expect((await work('ressa')).code).toBe('authorisation-does-not-cover');
  });

  it('and says when it was used, to somebody who has no other', async () => {
    await issue({ to: 'mabbet', by: 'brask' });
    await scene.person('mabbet').sign(defect, 'rectification', { act: 'rectify' }, WORK);
    const again = await work('mabbet');
    expect(again).toMatchObject({ status: 403, code: 'one-off-used' });
    expect(again.detail).toContain(clock);
  });

  it('before it ends, and not after it was revoked with its holder leaving', async () => {
    await issue({ to: 'mabbet' });
    const begun = clock;
    clock = '2026-01-15T18:00:00.000Z';
    expect((await work('mabbet')).code).toBe('authorisation-not-valid-then');
    clock = begun;
    await scene.person('ulla').post(`/api/people/${ids['mabbet']}/leaving`, { reason: 'x' });
    const { people } = await scene.person('ulla').get<Shapes['Members']>('/api/people');
    const gone = people.find(({ id }) => id === ids['mabbet']);
    expect(gone?.authorisations.map(({ revokedAt }) => revokedAt)).toEqual([clock, clock]);
  });

  it('and names no person in the record', async () => {
    const { n } = await scene.row(`select count(*)::int as n from record_entry
      where convert_from(canonical, 'UTF8') like '%Tondry%' or convert_from(canonical, 'UTF8') like '%${ids['ressa']}%'`);
    expect(n).toBe(0);
  });
});
