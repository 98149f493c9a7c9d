import { Inject, Injectable } from '@nestjs/common';
import type { Authorised, Member, Store, Tx } from '#store';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import type { Called } from '../http/called.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { LeavingBody } from './bodies.js';

/** The people of the operator: who they are, what they may sign, and the day somebody leaves. */
@Injectable()
export class MembersService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async list(tx: Tx): Promise<object> {
    const at = this.now();
    const people: object[] = [];
    for (const member of await tx.people.members()) {
      people.push(memberView(member, await tx.people.authorisationsOf(member.personId), at));
    }
    const organisations = await tx.people.organisations();
    const types = new Set((await tx.aircraft.list()).map(({ type }) => type));
    return {
      at,
      people,
      organisations: organisations.map(({ id, name, approvalNumber }) => ({ id, name, approval: approvalNumber })),
      aircraftTypes: [...types].toSorted(),
    };
  }

  /**
   * Somebody leaves, at this moment: the membership ends, every authorisation is revoked, and every session with them.
   * Nothing that was signed is touched (published requirements E-10, E-21 on electronic signatures).
   */
  async leaves({ session, request, reply, id }: Called, { reason }: LeavingBody): Promise<object> {
    if (id === session.personId) throw new Problem('not-for-oneself', 'Another administrator enters that you leave.');
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const member = await tx.people.member(id);
      const now = this.now();
      if (!member || !works(member, now)) throw new Problem('not-found', `Nobody with the id ${id} works here now.`);
      await tx.people.changeMembership(id, member.version, { validUntil: now });
      const standing = (await tx.people.authorisationsOf(id)).filter((one) => one.revokedAt === null);
      for (const one of standing) await tx.people.revoke(one.id, one.version, now);
      await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: 'person.left',
        aircraft: null,
        times: { enteredAt: now },
        payload: { person: member.reference, reason, revoked: standing.map(({ number }) => number) },
      });
      const gone = await tx.people.member(id);
      if (!gone) throw new Error(`Member ${id} was changed and is not there.`);
      return { status: 200, body: { person: memberView(gone, await tx.people.authorisationsOf(id), now) } };
    });
    await this.store.identity.endAllFor(session.operatorId, id);
    return answer;
  }
}

export function works({ validFrom, validUntil }: Member, at: string): boolean {
  return validFrom <= at && (validUntil === null || at < validUntil);
}

export function memberView(member: Member, authorisations: readonly Authorised[], at: string) {
  const { personId, name, licenceNumber, roles, validFrom, validUntil, organisationName } = member;
  return {
    id: personId,
    name,
    licence: licenceNumber,
    roles,
    organisation: organisationName,
    validFrom,
    validUntil,
    works: works(member, at),
    lockedAt: member.lockedAt,
    authorisations: authorisations.map((one) => ({
      id: one.id,
      number: one.number,
      organisation: `${one.organisationName} (${one.approvalNumber})`,
      aircraftTypes: one.aircraftTypes,
      licenceCategories: one.licenceCategories,
      privileges: one.privileges,
      validFrom: one.validFrom,
      validUntil: one.validUntil,
      revokedAt: one.revokedAt,
      oneOff: one.defectId === null ? null : { defect: one.defectId, because: one.because ?? '' },
    })),
  };
}
