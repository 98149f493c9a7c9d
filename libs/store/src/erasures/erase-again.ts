import type { KeyObject } from 'node:crypto';
import { dataSource } from '../data-source.js';
import { openStore, type Store } from '../store.js';
import { type CheckedErasures, checkErasures, type ErasureFile } from './check-erasures.js';

/** What a list of erasures did to a database. */
export interface ErasedAgain {
  operator: string;
  /** Name of the file. */
  list: string;
  signedAt: string;
  /** On the list. */
  named: number;
  /** Stood in the database with name and sign-in, and no longer do. */
  erased: number;
}

/**
 * Erases whoever is on a list of erasures and stands in the database all the same, as after a backup was restored that is
 * older than the erasure. Membership and authorisations end at the moment of the first erasure; the record says that it was
 * done again. All of an operator's people or none.
 * @param ownerUrl signs in as the owner of the tables, at this program's schema
 * @param now ISO 8601
 * @throws ErasuresRefused before anything is changed
 */
export async function eraseAgain(
  ownerUrl: string,
  files: readonly ErasureFile[],
  { keys = [], now }: { keys?: readonly KeyObject[]; now: string },
): Promise<ErasedAgain[]> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  const checked = await source
    .transaction((manager) => checkErasures(manager, files, keys))
    .finally(() => source.destroy());
  return eraseChecked(ownerUrl, checked, now);
}

export async function eraseChecked(
  ownerUrl: string,
  checked: readonly CheckedErasures[],
  now: string,
): Promise<ErasedAgain[]> {
  const store = await openStore(ownerUrl, { connections: 1 });
  try {
    await endMemberships(store, checked, now);
    const done: ErasedAgain[] = [];
    for (const one of checked) done.push(await eraseOf(store, one, now));
    return done;
  } finally {
    await store.close();
  }
}

/** Whoever was erased had left every operator of the server, whichever of them the list is of. */
async function endMemberships(store: Store, checked: readonly CheckedErasures[], now: string): Promise<void> {
  const erasedAt = new Map(
    checked.flatMap(({ list }) => list.people.map((one) => [one.person, one.erasedAt] as const)),
  );
  for (const { id } of await store.operatorsServed()) {
    await store.withOperator(id, null, async (tx) => {
      for (const member of await tx.people.members()) {
        const { personId, validUntil, version, reference } = member;
        const at = erasedAt.get(personId);
        if (at === undefined || (validUntil !== null && validUntil <= at)) continue;
        await tx.people.changeMembership(personId, version, { validUntil: at });
        const standing = (await tx.people.authorisationsOf(personId)).filter(({ revokedAt }) => revokedAt === null);
        for (const one of standing) await tx.people.revoke(one.id, one.version, at);
        await tx.record.append({
          ...byProgram(now),
          what: 'person.left',
          payload: {
            person: reference,
            reason: 'On a list of erasures.',
            revoked: standing.map((one) => one.number),
          },
        });
      }
    });
  }
}

function eraseOf(store: Store, { name, list }: CheckedErasures, now: string): Promise<ErasedAgain> {
  return store.withOperator(list.log, null, async (tx) => {
    let erased = 0;
    for (const { person, reference, erasedAt, by } of list.people) {
      if (!(await tx.people.erase(person, erasedAt, by))) continue;
      erased += 1;
      const reason = `Erased before, as the list of erasures signed ${list.signedAt} says; it stood in a restored backup.`;
      await tx.record.append({
        ...byProgram(now),
        what: 'person.erased',
        payload: { person: reference, reason, again: { erasedAt, by, listSignedAt: list.signedAt } },
      });
    }
    const { operator, signedAt, people } = list;
    return { operator, list: name, signedAt, named: people.length, erased };
  });
}

const byProgram = (now: string) => ({
  who: null,
  authorisation: null,
  organisation: null,
  aircraft: null,
  times: { enteredAt: now },
});
