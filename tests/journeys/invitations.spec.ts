/** Somebody who works for one operator comes to work for another on the same server, and neither learns of the other. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient, Shapes } from '../support/api-client.js';
import { firstSecretIn, NewHouse } from './new-house-scene.js';

let house: NewHouse;
let code: string;
let tess: ApiClient;

beforeAll(async () => {
  house = await NewHouse.begin();
  await house.enter('ada', firstSecretIn((await house.add()).stdout));
  const other = await house.add({ code: 'QOT', name: 'Otherhouse', preset: 'faa', base: 'UTC', 'sign-in': 'otto' });
  await house.enter('otto', firstSecretIn(other.stdout));
  await house.account('tess', 'Tess Arden', ['technician']);
  tess = house.as('tess');
});

afterAll(() => house.server.stop());

const invite = async (roles = ['technician']) =>
  (await house.as('otto').post<Shapes['InvitationMade']>('/api/invitations', { roles })).body;
const look = (by: ApiClient, of: string) =>
  by.send<Shapes['InvitationSeen']>('POST', '/api/session/invitation', { body: { code: of } });
const take = async (by: ApiClient, of: string, more: object = {}) => {
  const { statement } = (await look(by, of)).body;
  return { body: { code: of, sign: { secret: by.secret, statement, ...more } } };
};
const NO = 'invitation-not-good';
const refusedLook = async (of: string) =>
  (await tess.refused('POST', '/api/session/invitation', { body: { code: of } })).code;

describe('an invitation', () => {
  it('is made by an administrator, names nobody, and tells its code once', async () => {
    expect(await tess.refused('POST', '/api/invitations', { body: { roles: ['technician'] } })).toMatchObject({
      code: 'role-missing',
    });
    expect(await house.as('otto').refused('POST', '/api/invitations', { body: { roles: [] } })).toMatchObject({
      code: 'invalid-input',
    });
    const key = '7b0d3c1e-8d2f-4f7a-9f4e-0a1b2c3d4e5f';
    const send = () =>
      house.as('otto').post<Shapes['InvitationMade']>('/api/invitations', { roles: ['technician'] }, { key });
    code = (await send()).body.code ?? '';
    expect(code).toMatch(/^QOT-([a-z2-9]{5}-){3}[a-z2-9]{5}$/);
    expect((await send()).body.code).toBeNull();
    const { invitations } = await house.as('otto').get<Shapes['Invitations']>('/api/invitations');
    expect(invitations).toMatchObject([{ roles: ['technician'] }]);
    expect((await house.as('ada').get<Shapes['Invitations']>('/api/invitations')).invitations).toEqual([]);
  });

  it('is seen and signed by whoever holds the code, with a secret of their own', async () => {
    const { body } = await look(tess, ` ${code.toUpperCase()} `);
    expect(body).toMatchObject({ operator: 'Otherhouse', roles: ['technician'] });
    const refused = async (more: object) =>
      (await tess.refused('POST', '/api/session/memberships', await take(tess, code, more))).code;
    expect(await refused({ statement: 'I agree.' })).toBe('statement-not-shown');
    expect(await refused({ secret: 'not this one at all' })).toBe('secret-wrong');
    const session = await tess.get<Shapes['SessionView']>('/api/session');
    expect(session.operators.map(({ code: of }) => of)).toEqual(['QNW']);
    await tess.post('/api/session/memberships', (await take(tess, code)).body);
    const both = await tess.get<Shapes['SessionView']>('/api/session');
    expect(both.operators.map(({ code: of }) => of)).toEqual(['QNW', 'QOT']);
    expect(both.operator?.code).toBe('QNW');
  });

  it('is kept as a signature of the house that invited, bound to its entry of the record', async () => {
    const there = await house.client(tess.secret).signIn('tess');
    const { operators } = await there.get<Shapes['SessionView']>('/api/session');
    await there.put('/api/session/operator', { operator: operators.find(({ code: of }) => of === 'QOT')?.id });
    const { signatures } = await there.get<Shapes['Signatures']>('/api/signatures');
    expect(signatures).toMatchObject([
      {
        by: 'Tess Arden',
        what: 'person.joined',
        role: 'technician',
        method: 'password',
        verifies: true,
        misfits: [],
      },
    ]);
    expect(signatures[0]?.statement).toContain('I take up the invitation of Otherhouse');
    expect((await tess.get<Shapes['Signatures']>('/api/signatures')).signatures).toEqual([]);
  });

  it('is good once, and by no other code; nothing tells these apart', async () => {
    expect(await refusedLook(code)).toBe(NO);
    for (const none of ['QOT-aaaaa-bbbbb-ccccc-ddddd', code.replace('QOT', 'QNW'), code.slice(4), 'QXX', '-'])
      expect(await refusedLook(none)).toBe(NO);
    const withdrawn = await invite();
    await house.as('otto').post(`/api/invitations/${withdrawn.invitation.id}/withdrawal`, undefined);
    expect(await refusedLook(withdrawn.code ?? '')).toBe(NO);
    expect(
      await house.as('ada').refused('POST', `/api/invitations/${withdrawn.invitation.id}/withdrawal`),
    ).toMatchObject({ code: 'not-found' });
  });

  it('gives nothing to somebody who works there already, and may still be taken up by another', async () => {
    const { code: again } = await invite(['administrator']);
    expect(await tess.refused('POST', '/api/session/memberships', await take(tess, again ?? ''))).toMatchObject({
      code: 'works-here',
    });
    expect((await look(tess, again ?? '')).status).toBe(200);
  });

  it('lets each administrator see the membership of their own house alone', async () => {
    const { people } = await house.as('otto').get<Shapes['Members']>('/api/people');
    const found = people.find(({ name }) => name === 'Tess Arden');
    expect(found).toMatchObject({ roles: ['technician'], authorisations: [], organisation: null });
    const { people: own } = await house.as('ada').get<Shapes['Members']>('/api/people');
    expect(own.filter(({ name }) => name === 'Tess Arden')).toHaveLength(1);
    await house.as('otto').post(`/api/people/${found?.id}/leaving`, { reason: 'Contract over.' });
    tess = await house.client(tess.secret).signIn('tess');
    expect((await tess.get<Shapes['SessionView']>('/api/session')).operator?.code).toBe('QNW');
  });

  it('brings back who worked there before, in the roles of the new one', async () => {
    const { code: back } = await invite(['engineer']);
    await tess.post('/api/session/memberships', (await take(tess, back ?? '')).body);
    const { operators } = await tess.get<Shapes['SessionView']>('/api/session');
    expect(operators.find(({ code: of }) => of === 'QOT')?.roles).toEqual(['engineer']);
  });

  it('is not taken up with a first secret', async () => {
    const { code: fresh } = await invite();
    const made = await house.as('ada').post<Shapes['AccountMade']>('/api/people', {
      name: 'Una Wint',
      signInName: 'una',
      roles: ['technician'],
    });
    const una = await house.client(made.body.firstSecret ?? '').signIn('una');
    expect(await una.refused('POST', '/api/session/memberships', await take(una, fresh ?? ''))).toMatchObject({
      code: 'own-secret-needed',
    });
  });

  it('stands in the record of the house that invited, and in no other', async () => {
    const whats = async (of: string) => {
      const operator = (await house.server.store.operatorsServed()).find((one) => one.code === of);
      if (!operator) throw new Error(of);
      return house.server.store.withOperator(operator.id, null, async (tx) => {
        const rows = await tx.query<{ what: string }>('select what from record_entry where operator_id = $1', [
          operator.id,
        ]);
        return rows.map(({ what }) => what).filter((what) => /invit/.test(what)).length;
      });
    };
    expect(await whats('QOT')).toBeGreaterThan(4);
    expect(await whats('QNW')).toBe(0);
    const compared = await house.proviso('record', 'compare');
    expect(compared).toMatchObject({ stderr: '', code: 0 });
  });
});
