import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SignedIn, Store } from '#store';
import { freshDatabase, type FreshDatabase } from '../support/postgres.js';
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

  it('counts wrong secrets, locks, and starts anew after a right one', async () => {
    expect(await store.identity.failed(north.person, { from: 2, until: expiresAt })).toBe(1);
    expect(await store.identity.credential('nora')).toMatchObject({ failedCount: 1, lockedUntil: null });
    expect(await store.identity.failed(north.person, { from: 2, until: expiresAt })).toBe(2);
    expect(await store.identity.credential('nora')).toMatchObject({ failedCount: 2, lockedUntil: expiresAt });
    await store.identity.succeeded(north.person);
    expect(await store.identity.credential('nora')).toMatchObject({ failedCount: 0, lockedUntil: null });
  });

  it('counts each of many wrong secrets sent at once, and is locked from then on', async () => {
    const lock = { from: 5, until: expiresAt };
    const counts = await Promise.all(Array.from({ length: 8 }, () => store.identity.failed(north.person, lock)));
    expect(counts.sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(await store.identity.credential('nora')).toMatchObject({ failedCount: 8, lockedUntil: expiresAt });
    await store.identity.succeeded(north.person);
  });

  it('is proved again at signing by its own person', async () => {
    const own = await store.withOperator(north.id, north.person, (tx) => tx.people.ownCredential());
    expect(own).toMatchObject({ hash: 'hash-of-nora' });
    await store.identity.changeHash(north.person, 'hash-of-nora');
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
