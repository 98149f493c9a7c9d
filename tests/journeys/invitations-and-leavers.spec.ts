/** Nobody comes back by an invitation that their own operator would not make today; a lock stays until it is opened. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shapes } from '../support/api-client.js';
import { firstSecretIn, NewHouse } from './new-house-scene.js';

let house: NewHouse;
/** How far the server's clock is ahead, in milliseconds. */
let ahead = 0;
const ids: Record<string, string> = {};

beforeAll(async () => {
  house = await NewHouse.begin({ now: () => new Date(Date.now() + ahead).toISOString() });
  await house.enter('ada', firstSecretIn((await house.add()).stdout));
  for (const name of ['xan', 'yve', 'wil'])
    ids[name] = await house.account(name, `${name} Arden`, ['administrator', 'technician']);
});

afterAll(() => house.server.stop());

const invites = async (name: string) => {
  const { body } = await house
    .as(name)
    .post<Shapes['InvitationMade']>('/api/invitations', { roles: ['administrator'] });
  return body.code ?? '';
};
const change = (name: string, what: string, more: object = {}) => {
  const send = what === 'roles' ? 'put' : 'post';
  return house.as('ada')[send](`/api/people/${ids[name]}/${what}`, { reason: 'Contract over.', ...more });
};
const signIn = (name: string) => house.client(house.as(name).secret).signIn(name);
const look = async (name: string, code: string) =>
  (await signIn(name)).send<Shapes['InvitationSeen']>('POST', '/api/session/invitation', { body: { code } });
const taking = (name: string, code: string, statement: string) => ({
  body: { code, sign: { secret: house.as(name).secret, statement } },
});
/** Why each of those in sight lets nobody in. */
const notUsable = async () => {
  const { invitations } = await house.as('ada').get<Shapes['Invitations']>('/api/invitations');
  return invitations.map((one) => one.notUsable);
};
const operatorsOf = async (name: string) =>
  (await (await signIn(name)).get<Shapes['SessionView']>('/api/session')).operators;

describe('an invitation', () => {
  it('lets nobody in again who made it and was entered as leaving', async () => {
    const code = await invites('xan');
    const { statement } = (await look('yve', code)).body;
    await change('xan', 'leaving');
    expect(await operatorsOf('xan')).toEqual([]);
    for (const name of ['xan', 'yve']) expect((await look(name, code)).status).toBe(404);
    const xan = await signIn('xan');
    const refused = await xan.refused('POST', '/api/session/memberships', taking('xan', code, statement));
    expect(refused.code).toBe('invitation-not-good');
    expect(await operatorsOf('xan')).toEqual([]);
    expect(await notUsable()).toEqual(['whoever made it does not work here any longer']);
  });

  it('is good while whoever made it is an administrator, and not locked', async () => {
    const code = await invites('yve');
    const good = async () => (await look('xan', code)).status;
    expect(await good()).toBe(200);
    const why = async () => (await notUsable())[0];
    expect(await why()).toBeNull();
    await change('yve', 'lock');
    expect([await good(), await why()]).toEqual([404, 'whoever made it is locked']);
    await change('yve', 'unlock');
    expect([await good(), await why()]).toEqual([200, null]);
    await change('yve', 'roles', { roles: ['technician'] });
    expect([await good(), await why()]).toEqual([404, 'whoever made it is no administrator any longer']);
  });

  it('opens no lock: who comes back is locked as before, until an administrator unlocks', async () => {
    await change('wil', 'lock');
    await change('wil', 'leaving');
    const code = await invites('ada');
    const { statement } = (await look('wil', code)).body;
    await (await signIn('wil')).post('/api/session/memberships', taking('wil', code, statement).body);
    expect(await operatorsOf('wil')).toEqual([]);
    const { people } = await house.as('ada').get<Shapes['Members']>('/api/people');
    expect(people.find(({ id }) => id === ids['wil'])).toMatchObject({ works: true, lockedAt: expect.any(String) });
    await change('wil', 'unlock');
    expect((await operatorsOf('wil')).map(({ roles }) => roles)).toEqual([['administrator']]);
  });

  it('is taken up once by somebody who takes up several at the same moment, new here or back', async () => {
    const names = { code: 'QOT', name: 'Otherhouse', administrator: 'Otto Lind', 'sign-in': 'otto' };
    const other = await house.add({ ...names, preset: 'faa', base: 'UTC' });
    await house.enter('otto', firstSecretIn(other.stdout));
    const otto = house.as('otto');
    for (const round of ['new', 'back']) {
      const made = Array.from({ length: 4 }, () =>
        otto.post<Shapes['InvitationMade']>('/api/invitations', { roles: ['technician'] }),
      );
      const codes = (await Promise.all(made)).map(({ body }) => body.code ?? '');
      const { statement } = (await look('ada', codes[0] ?? '')).body;
      const ada = await signIn('ada');
      const taken = await Promise.all(
        codes.map((code) =>
          ada.send<{ type?: string }>('POST', '/api/session/memberships', taking('ada', code, statement)),
        ),
      );
      const refused = taken.filter(({ status }) => status !== 200);
      expect(
        refused.map(({ body }) => body.type?.split('/').at(-1)),
        round,
      ).toEqual(['works-here', 'works-here', 'works-here']);
      const { invitations } = await otto.get<Shapes['Invitations']>('/api/invitations');
      expect(invitations).toHaveLength(3);
      for (const { id } of invitations) await otto.post(`/api/invitations/${id}/withdrawal`, undefined);
      const { people } = await otto.get<Shapes['Members']>('/api/people');
      const [member, ...more] = people.filter(({ name }) => name === 'Ada Brenn');
      expect([member?.works, more]).toEqual([true, []]);
      if (round === 'new') await otto.post(`/api/people/${member?.id}/leaving`, { reason: 'Contract over.' });
    }
  });

  it('that nobody took up in its time stays in sight, with why it is not good, until it is withdrawn', async () => {
    const before = await notUsable();
    const { statement } = (await look('yve', await invites('ada'))).body;
    expect(statement).toContain('I take up the invitation');
    expect(await notUsable()).toEqual([null, ...before]);
    ahead = 73 * 3_600_000;
    const ada = await house.client(house.as('ada').secret).signIn('ada', 'QNW');
    const { invitations } = await ada.get<Shapes['Invitations']>('/api/invitations');
    expect(invitations.map((one) => one.notUsable)).toEqual([null, ...before].map(() => 'its time is over'));
    for (const { id } of invitations) await ada.post(`/api/invitations/${id}/withdrawal`, undefined);
    expect((await ada.get<Shapes['Invitations']>('/api/invitations')).invitations).toEqual([]);
  });
});
