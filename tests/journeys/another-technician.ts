/** Somebody who has done nothing yet and may do what another technician of the demo may: to leave and to be erased. */
import { newId, recordedOperators } from '#store';
import type { RunningServer } from '../support/running-server.js';

export const TAVIK = { signIn: 'tavik', name: 'Tavik Sorremond', licence: 'QX.66.30417' };
/** Whatever names Tavik. */
export const TAVIKS = ['Sorremond', TAVIK.licence, TAVIK.signIn];

/** @returns the person's id */
export async function anotherTechnician({ store, ownerUrl }: RunningServer): Promise<string> {
  const operator = (await recordedOperators(ownerUrl)).find(({ code }) => code === 'QOF')?.id ?? '';
  const like = await store.identity.credential('wick');
  const id = newId();
  await store.withOperator(operator, null, async (tx) => {
    const member = await tx.people.member(like?.personId ?? '');
    if (!member || !like) throw new Error('Nobody to take the authorisations of.');
    await tx.people.add({ id, name: TAVIK.name, licenceNumber: TAVIK.licence });
    const { organisationId, roles, validFrom } = member;
    await tx.people.join({ personId: id, organisationId, roles, validFrom });
    await tx.people.giveCredential(id, TAVIK.signIn, like.hash);
    for (const one of await tx.people.authorisationsOf(member.personId)) {
      const { number, aircraftTypes, licenceCategories, privileges } = one;
      const scope = { aircraftTypes, licenceCategories, privileges };
      const given = { organisationId: one.organisationId, number: `${number}-T`, validFrom: one.validFrom };
      await tx.people.authorise({ personId: id, ...given, ...scope });
    }
  });
  return id;
}
