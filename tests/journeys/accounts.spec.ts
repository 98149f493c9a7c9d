/** An administrator makes accounts and locks them, quality grants authorisations; neither can sign for anybody. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ApiClient, type Shapes } from '../support/api-client.js';
import { SignatureScene } from './signatures-scene.js';

let clock = '2026-01-15T12:00:00.000Z';
const OWN = 'quiet harbour under nine lamps';
let scene: SignatureScene;
let office: ApiClient;
let quality: ApiClient;
let made: Shapes['AccountMade'];
let id: string;

beforeAll(async () => {
  scene = await SignatureScene.begin(() => clock, ['odrin', 'ulla', 'wenna', 'kesh']);
  office = scene.person('ulla');
  quality = scene.person('wenna');
});

afterAll(() => scene.server.stop());

const members = () => office.get<Shapes['Members']>('/api/people');
const client = (secret: string) => new ApiClient(scene.server.url, secret, scene.server.contract);
const body = (more: object = {}) => ({
  name: 'Perrin Oskelund',
  signInName: 'perrin',
  roles: ['technician'],
  ...more,
});
const session = (of: ApiClient) => of.get<Shapes['SessionView']>('/api/session');

describe('an account', () => {
  it('is made by an administrator alone, with what is known here', async () => {
    const refused = async (by: ApiClient, more: object) =>
      (await by.refused('POST', '/api/people', { body: body(more) })).code;
    expect(await refused(scene.person('odrin'), {})).toBe('role-missing');
    expect(await refused(office, { signInName: 'odrin' })).toBe('sign-in-name-taken');
    expect(await refused(office, { roles: ['owner'] })).toBe('invalid-input');
    expect(await refused(office, { organisation: '00000000-0000-4000-8000-000000000000' })).toBe('invalid-input');
    const [organisation] = (await members()).organisations;
    const answer = await office.post<Shapes['AccountMade']>(
      '/api/people',
      body({ organisation: organisation?.id, licence: 'QX.66.90001' }),
      { key: '5b0d3c1e-8d2f-4f7a-9f4e-0a1b2c3d4e5f' },
    );
    made = answer.body;
    id = made.person.id;
    expect(made.person).toMatchObject({
      name: 'Perrin Oskelund',
      roles: ['technician'],
      works: true,
      lockedAt: null,
    });
    expect(made.firstUntil).toBe('2026-01-16T12:00:00.000Z');
  });

  it('tells its first secret once: the answer that is kept does not hold it', async () => {
    const [organisation] = (await members()).organisations;
    const again = await office.post<Shapes['AccountMade']>(
      '/api/people',
      body({ organisation: organisation?.id, licence: 'QX.66.90001' }),
      { key: '5b0d3c1e-8d2f-4f7a-9f4e-0a1b2c3d4e5f' },
    );
    expect(again.body).toMatchObject({ person: { id }, firstSecret: null });
  });

  it('opens nothing with the first secret but the choice of an own one', async () => {
    const first = made.firstSecret ?? '';
    const person = await client(first).signIn('perrin');
    const { means, operator } = await session(person);
    expect({ first: means.first, operator }).toEqual({ first: true, operator: null });
    expect(await person.refused('GET', '/api/fleet')).toMatchObject({ code: 'no-operator-chosen' });
    const chosen = { operator: (await session(office)).operator?.id };
    expect(await person.refused('PUT', '/api/session/operator', { body: chosen })).toMatchObject({
      code: 'own-secret-needed',
    });
    const { statement } = await person.get<Shapes['SignOn']>('/api/sign-on');
    const sign = { secret: first, statement };
    expect(await person.refused('POST', '/api/sign-on/link', { body: sign })).toMatchObject({
      code: 'own-secret-needed',
    });
    await person.put('/api/session/secret', { secret: first, fresh: OWN });
    expect((await session(person)).operator?.code).toBe('QOF');
    expect((await session(await client(OWN).signIn('perrin'))).means.first).toBe(false);
    expect(
      await client(first).refused('POST', '/api/session', { body: { name: 'perrin', secret: first } }),
    ).toMatchObject({ code: 'sign-in-failed' });
  });

  it('tells in the record that the person chose, since whoever gave the first one out had it, too', async () => {
    const operator = (await session(office)).operator?.id ?? '';
    const told = await scene.server.store.withOperator(operator, null, (tx) =>
      tx.query<{ name: string }>(
        `select p.name from record_entry e join person p on p.reference = e.who
         where e.operator_id = $1 and e.what = 'person.own-secret'`,
        [operator],
      ),
    );
    expect(told).toEqual([{ name: 'Perrin Oskelund' }]);
  });

  it('gets no other first secret once there is an own one', async () => {
    expect(await office.refused('POST', `/api/people/${id}/first-secret`)).toMatchObject({ code: 'has-own-secret' });
  });

  it('gets another one while there is none, and one that is over opens nothing', async () => {
    const late = (await office.post<Shapes['AccountMade']>('/api/people', body({ signInName: 'perrin2' }))).body;
    clock = '2026-01-16T12:00:00.000Z';
    office = await scene.server.signIn('ulla');
    const secret = late.firstSecret ?? '';
    const refused = await client(secret).refused('POST', '/api/session', { body: { name: 'perrin2', secret } });
    expect(refused).toMatchObject({ code: 'first-secret-over' });
    const another = await office.post<Shapes['AccountMade']>(`/api/people/${late.person.id}/first-secret`, undefined);
    const person = await client(another.body.firstSecret ?? '').signIn('perrin2');
    expect((await session(person)).means.first).toBe(true);
  });
});

describe('roles, locks and authorisations', () => {
  const at = (path: string) => `/api/people/${id}/${path}`;

  it('roles are changed by somebody else, at once', async () => {
    const person = await client(OWN).signIn('perrin');
    await office.put(at('roles'), { roles: ['technician', 'engineer'], reason: 'Owns open items from now on.' });
    expect((await session(person)).roles).toEqual(['technician', 'engineer']);
    const { people } = await members();
    const own = people.find(({ name }) => name === 'Ulla Fennimar')?.id;
    const sent = { body: { roles: ['quality'], reason: 'I want to.' } };
    expect(await office.refused('PUT', `/api/people/${own}/roles`, sent)).toMatchObject({ code: 'not-for-oneself' });
    const other = await scene.server.signIn('kesh');
    expect(await other.refused('PUT', at('roles'), sent)).toMatchObject({ code: 'not-found' });
  });

  it('a lock ends every session and lets nobody in, until it is opened', async () => {
    const person = await client(OWN).signIn('perrin');
    await office.post(at('lock'), { reason: 'Badge lost.' });
    expect(await person.refused('GET', '/api/fleet')).toMatchObject({ code: 'not-signed-in' });
    const back = await client(OWN).signIn('perrin');
    expect(await back.refused('GET', '/api/fleet')).toMatchObject({ code: 'no-operator-chosen' });
    await office.post(at('unlock'), { reason: 'Badge found.' });
    expect((await session(await client(OWN).signIn('perrin'))).operator?.code).toBe('QOF');
  });

  it('unlocking frees a name that wrong secrets have locked', async () => {
    const wrong = { body: { name: 'perrin', secret: 'not it at all' } };
    for (let n = 0; n < 5; n += 1) await client('').refused('POST', '/api/session', wrong);
    const right = { body: { name: 'perrin', secret: OWN } };
    expect(await client(OWN).refused('POST', '/api/session', right)).toMatchObject({ code: 'sign-in-locked' });
    await office.post(at('unlock'), { reason: 'Gloves.' });
    await client(OWN).signIn('perrin');
  });

  it('quality grants an authorisation with its scope, signed; it is used, and revoked', async () => {
    quality = await scene.server.signIn('wenna');
    const { organisations, aircraftTypes } = await members();
    const asked = {
      number: 'QOF-L-990',
      organisation: organisations[0]?.id ?? '',
      aircraftTypes: aircraftTypes.join(','),
      licenceCategories: 'B1',
      privileges: 'write-up,defer',
      validFrom: clock,
      validUntil: '2027-01-18T12:00:00.000Z',
    };
    const query = new URLSearchParams(asked).toString();
    const { statement } = await quality.get<Shapes['Statement']>(`${at('authorisation-statement')}?${query}`);
    const sign = { secret: quality.secret, statement };
    const strange = { ...asked, privileges: 'defer,fly', sign };
    expect(await quality.refused('POST', at('authorisations'), { body: strange })).toMatchObject({
      code: 'invalid-input',
      errors: [{ pointer: '/privileges' }],
    });
    expect(await office.refused('POST', at('authorisations'), { body: { ...asked, sign } })).toMatchObject({
      code: 'role-missing',
    });
    const wider = { ...asked, privileges: 'write-up,defer,release', sign };
    expect(await quality.refused('POST', at('authorisations'), { body: wider })).toMatchObject({
      code: 'statement-not-shown',
    });
    const granted = await quality.post<Shapes['MemberChanged']>(at('authorisations'), { ...asked, sign });
    const [authorisation] = granted.body.person.authorisations;
    expect(authorisation).toMatchObject({ number: 'QOF-L-990', privileges: ['write-up', 'defer'], revokedAt: null });
    expect(await quality.refused('POST', at('authorisations'), { body: { ...asked, sign } })).toMatchObject({
      code: 'number-taken',
    });
    const revoked = await quality.post<Shapes['MemberChanged']>(
      at(`authorisations/${authorisation?.id}/revocation`),
      { reason: 'Course not passed.' },
    );
    expect(revoked.body.person.authorisations[0]?.revokedAt).toBe(clock);
  });
});
