/** Lets an administrator in where nobody can any more: the first who never used the secret, or one more. */
import { listOperators, type Store } from '#store';
import { firstSecret, isNameTaken, type FirstSecret } from '../people/first-secret.js';
import {
  type Administrator,
  enterAdministrator,
  holdAdministrator,
  OpeningRefused,
  record,
  taken,
} from './open-operator.js';

export interface LetIn extends Omit<FirstSecret, 'hash'> {
  operator: string;
  /** False: somebody who was there and had never chosen a secret got another first one. */
  isNew: boolean;
}

export type AdministratorAsked = Omit<Administrator, 'name'> & { name: string | null };

/**
 * A name that is free makes an administrator; one that belongs to an administrator of this operator who has never chosen a
 * secret gets another first secret. Nobody's own secret is ever replaced.
 * @throws OpeningRefused
 */
export async function letAdministratorIn(
  ownerUrl: string,
  store: Store,
  code: string,
  asked: AdministratorAsked,
  now: string,
): Promise<LetIn> {
  const operator = (await listOperators(ownerUrl)).find((one) => one.code === code);
  if (!operator) throw new OpeningRefused('code', 'is no operator of this server');
  const { secret, hash, until } = await firstSecret(now);
  const credential = await store.identity.credential(asked.signInName);
  if (credential === null) {
    const { name } = asked;
    if (name === null) throw new OpeningRefused('administrator', 'is missing: nobody here signs in by that name yet');
    const administrator = { ...asked, name };
    holdAdministrator(administrator);
    await store
      .withOperator(operator.id, null, (tx) =>
        enterAdministrator(tx, administrator, { organisationId: null, hash, until, now }),
      )
      .catch((error: unknown) => {
        throw isNameTaken(error) ? taken(asked.signInName) : error;
      });
    return { operator: operator.name, isNew: true, secret, until };
  }
  const { personId } = credential;
  await store.withOperator(operator.id, null, async (tx) => {
    const member = await tx.people.member(personId);
    const administers = member?.roles.includes('administrator') && member.validUntil === null;
    if (!member || !administers) throw taken(asked.signInName);
    if (!(await store.identity.renewFirst(personId, hash, until))) {
      throw new OpeningRefused('signInName', 'has a secret of their own, which nobody else replaces');
    }
    await record(tx, 'person.first-secret', { person: member.reference, by: 'the command' }, now);
  });
  return { operator: operator.name, isNew: false, secret, until };
}
