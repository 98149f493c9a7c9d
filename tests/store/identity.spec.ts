import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newId, type SignedIn, type Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { anOperator, openedStore, type AnOperator } from './an-operator.js';

let database: FreshDatabase;
let store: Store;
let north: AnOperator;
let south: AnOperator;

const at = '2026-05-01T10:00:00.000Z';
const expiresAt = '2026-05-01T22:00:00.000Z';
let tokens = 0;
const newToken = () => (tokens += 1).toString(16).padStart(64, '0');

beforeAll(async () => {
  database = await freshDatabase();
  store = await openedStore(database);
  north = await anOperator(database, store, 'NA');
  south = await anOperator(database, store, 'SA');
  await store.withOperator(north.id, null, (tx) => tx.people.giveCredential(north.person, 'nora', 'hash-of-nora'));
});

afterAll(async () => {
  await store.close();
  await database.drop();
});

async function signIn(personId = north.person): Promise<SignedIn> {
  const tokenHash = newToken();
  await store.identity.begin({ tokenHash, personId, createdAt: at, expiresAt });
  const session = await store.identity.session(tokenHash, at);
  if (!session) throw new Error('no session');
  return session;
}

describe('a credential', () => {
  it('is found by its name before any operator is known, and no other with it', async () => {
    expect(await store.identity.credential('nora')).toMatchObject({ personId: north.person, hash: 'hash-of-nora' });
    for (const name of ['Nora', 'nora ', '', '%', "' or true --"])
      expect(await store.identity.credential(name)).toBeNull();
  });

  it('has a name that nobody else can take', async () => {
    const take = store.withOperator(south.id, null, (tx) => tx.people.giveCredential(south.person, 'nora', 'mine'));
    await expect(take).rejects.toMatchObject({ driverError: { code: '23505' } });
  });

  it('is given to members of the operator only, and once', async () => {
    const give = (to: string, name: string) =>
      store.withOperator(south.id, south.person, (tx) => tx.people.giveCredential(to, name, 'set by another'));
    await expect(give(north.person, 'nora2')).rejects.toMatchObject({ driverError: { code: '42501' } });
    await give(south.person, 'sam');
    await expect(give(south.person, 'sam2')).rejects.toMatchObject({ driverError: { code: '23505' } });
  });

  it('is not changed by anybody else, an administrator of the operator among them', async () => {
    const changed = await store.withOperator(north.id, south.person, (tx) =>
      tx.query("with c as (update credential set hash = 'x' where person_id = $1 returning 1) select * from c", [
        north.person,
      ]),
    );
    expect(changed).toEqual([]);
    expect(await store.identity.credential('nora')).toMatchObject({ hash: 'hash-of-nora' });
  });

  it('is proved again at signing by its own person', async () => {
    expect(await store.identity.credentialOf(north.person)).toEqual({
      personId: north.person,
      signInName: 'nora',
      hash: 'hash-of-nora',
      lockedUntil: null,
    });
    await store.identity.changeHash(north.person, 'hash-of-nora');
    expect(await store.identity.credentialOf(newId())).toBeNull();
  });
});

describe('an attempt to prove a secret', () => {
  const lock = (after: string) => ({ at: after, from: 2, until: minutesAfter(after, 5) });
  const minutesAfter = (instant: string, minutes: number) =>
    new Date(Date.parse(instant) + minutes * 60_000).toISOString();

  it('is counted, locks the name, and is taken back after a right one', async () => {
    const counted = { counted: true, lockedUntil: null };
    expect(await store.identity.attempt('nora', lock(at))).toEqual(counted);
    const until = minutesAfter(at, 5);
    expect(await store.identity.attempt('nora', lock(at))).toEqual({ counted: true, lockedUntil: until });
    expect(await store.identity.attempt('nora', lock(at))).toEqual({ counted: false, lockedUntil: until });
    expect(await store.identity.credentialOf(north.person)).toMatchObject({ lockedUntil: until });
    expect(await store.identity.attempt('Nora', lock(at))).toEqual(counted);
    // One more once the lock is over, and the name is locked anew.
    expect(await store.identity.attempt('nora', lock(until))).toEqual({
      counted: true,
      lockedUntil: minutesAfter(until, 5),
    });
    await store.identity.takeBackAttempts('nora');
    expect(await store.identity.attempt('nora', lock(at))).toEqual(counted);
    await store.identity.takeBackAttempts('nora');
  });

  it.each(['nora', 'nobody'])('of many at once is counted as often as the lock allows, for %s', async (name) => {
    const five = { at, from: 5, until: expiresAt };
    const thirty = await Promise.all(Array.from({ length: 30 }, () => store.identity.attempt(name, five)));
    expect(thirty.filter(({ counted }) => counted)).toHaveLength(5);
    expect(thirty.filter(({ counted }) => !counted).map(({ lockedUntil }) => lockedUntil)).toEqual(
      Array<string>(25).fill(expiresAt),
    );
    await store.identity.takeBackAttempts(name);
  });

  it('is forgotten after a day, so that made-up names do not pile up', async () => {
    for (let n = 0; n < 20; n += 1) await store.identity.attempt(`made up ${n}`, lock(at));
    for (let n = 0; n < 15; n += 1) await store.identity.attempt('nobody', lock(minutesAfter(at, 24 * 60 + 1)));
    const kept = await withClient(database.adminUrl, (client) => client.query('select from sign_in_attempt'));
    expect(kept.rowCount).toBe(1);
  });

  it('is kept without the name, and no server reads it', async () => {
    const read = withClient(database.appUrl, (client) => client.query('select * from sign_in_attempt'));
    await expect(read).rejects.toMatchObject({ code: '42501' });
  });
});

describe('a session', () => {
  it('begins without an operator', async () => {
    expect(await signIn()).toMatchObject({
      person: { id: north.person, reference: north.reference },
      operatorId: null,
      roles: [],
    });
  });

  it('ends at its instant, and not before', async () => {
    const { tokenHash } = await signIn();
    expect(await store.identity.session(tokenHash, '2026-05-01T21:59:59.999Z')).not.toBeNull();
    expect(await store.identity.session(tokenHash, expiresAt)).toBeNull();
  });

  it('is found with the credential of its own person, who may have none', async () => {
    const { tokenHash, ...session } = await signIn();
    expect(await store.identity.sessionToSign(tokenHash, at)).toEqual({
      session: { tokenHash, ...session },
      credential: await store.identity.credentialOf(north.person),
    });
    const other = await signIn((await anOperator(database, store, 'NC')).person);
    expect(await store.identity.sessionToSign(other.tokenHash, at)).toEqual({ session: other, credential: null });
    expect(await store.identity.sessionToSign(tokenHash, expiresAt)).toBeNull();
    expect(await store.identity.sessionToSign(newToken(), at)).toBeNull();
  });

  it('goes on for one operator under a new token, the old one being dead', async () => {
    const before = await signIn();
    const next = newToken();
    expect(await store.identity.chooseOperator(before, north.id, next)).toBe(true);
    expect(await store.identity.session(before.tokenHash, at)).toBeNull();
    const after = await store.identity.session(next, at);
    expect(after).toMatchObject({
      sessionId: before.sessionId,
      operatorId: north.id,
      operatorCode: 'NA',
      roles: ['technician'],
    });
  });

  it('is not for an operator the person does not work for, not even by hand', async () => {
    const session = await signIn();
    expect(await store.identity.chooseOperator(session, south.id, newToken())).toBe(false);
    const forced = store.withOperator(north.id, north.person, (tx) =>
      tx.query('update session set operator_id = $1 where token_hash = $2', [south.id, session.tokenHash]),
    );
    await expect(forced).rejects.toMatchObject({ driverError: { code: '23503' } });
  });

  it('carries no roles while the membership is not valid', async () => {
    await store.withOperator(north.id, null, (tx) => tx.people.changeMembership(north.person, 1, { validUntil: at }));
    const before = await signIn();
    const next = newToken();
    await store.identity.chooseOperator(before, north.id, next);
    expect(await store.identity.session(next, at)).toMatchObject({ operatorId: north.id, roles: [] });
    expect(await store.identity.session(next, '2026-05-01T09:59:59.999Z')).toMatchObject({ roles: ['technician'] });
    await store.withOperator(north.id, null, (tx) =>
      tx.people.changeMembership(north.person, 2, { validUntil: null }),
    );
  });

  it('is ended alone, or with all of the same person', async () => {
    const [one, two] = [await signIn(), await signIn()];
    const ofAnother = await signIn(south.person);
    await store.identity.end(one);
    expect(await store.identity.session(one.tokenHash, at)).toBeNull();
    expect(await store.identity.session(two.tokenHash, at)).not.toBeNull();
    await store.identity.endAll(north.person);
    expect(await store.identity.session(two.tokenHash, at)).toBeNull();
    expect(await store.identity.session(ofAnother.tokenHash, at)).not.toBeNull();
  });
});

it('a person of two operators sees both memberships before choosing, and one operator afterwards', async () => {
  await store.withOperator(south.id, null, (tx) =>
    tx.people.join({ personId: north.person, roles: ['engineer'], validFrom: at }),
  );
  const memberships = await store.identity.membershipsOf(north.person);
  expect(memberships.map(({ code, roles }) => ({ code, roles }))).toEqual([
    { code: 'NA', roles: ['technician'] },
    { code: 'SA', roles: ['engineer'] },
  ]);
  const seen = await store.withOperator(south.id, north.person, (tx) =>
    tx.query('select distinct operator_id from membership'),
  );
  expect(seen).toEqual([{ operator_id: south.id }]);
});
