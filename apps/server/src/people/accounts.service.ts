/**
 * Accounts, as an administrator makes them. The first secret is shown once and opens one thing: choosing an own one.
 * From then on nobody gives out another, so that an administrator can sign for nobody (published requirements E-01, E-02
 * on electronic signatures). Nothing here touches what was signed.
 */
import { Inject, Injectable } from '@nestjs/common';
import type { Member, Store, Tx } from '#store';
import type { Called } from '../http/called.js';
import { type Done, once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { AccountBody, ReasonBody, RolesBody } from './account-bodies.js';
import { memberView, works } from './members.service.js';
import { firstSecret, isNameTaken } from './first-secret.js';

@Injectable()
export class AccountsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async create({ session, request, reply }: Omit<Called, 'id'>, body: AccountBody): Promise<object> {
    const now = this.now();
    const { secret, hash, until } = await firstSecret(now);
    let made = false;
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const organisation = body.organisation ?? null;
      if (await this.store.identity.credential(body.signInName)) throw nameTaken();
      await needOrganisation(tx, organisation);
      const { id } = await tx.people.add({ name: body.name, licenceNumber: body.licence ?? null });
      await tx.people.join({ personId: id, organisationId: organisation, roles: body.roles, validFrom: now });
      await tx.people.giveCredential(id, body.signInName, hash, until);
      made = true;
      return this.done(tx, id, session.personId, 'person.joined', { roles: body.roles, organisation });
    }).catch((error: unknown) => {
      throw isNameTaken(error) ? nameTaken() : error;
    });
    return { ...answer, firstSecret: made ? secret : null, firstUntil: made ? until : null };
  }

  /** Another first secret, where the first was never used. */
  async anotherFirst({ session, request, reply, id }: Called): Promise<object> {
    const { secret, hash, until } = await firstSecret(this.now());
    let made = false;
    const answer = await once(this.store, session, request, reply, async (tx) => {
      await this.another(tx, id, session.personId);
      if (!(await this.store.identity.renewFirst(id, hash, until))) {
        throw new Problem('has-own-secret', 'The first secret was used.');
      }
      made = true;
      return this.done(tx, id, session.personId, 'person.first-secret', {});
    });
    return { ...answer, firstSecret: made ? secret : null, firstUntil: made ? until : null };
  }

  roles({ session, request, reply, id }: Called, { roles, reason }: RolesBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const member = await this.another(tx, id, session.personId);
      await tx.people.changeMembership(id, member.version, { roles });
      return this.done(tx, id, session.personId, 'person.roles', { was: member.roles, roles, reason });
    });
  }

  /** Nobody gets in until it is unlocked; authorisations and signatures stay as they are. */
  async lock({ session, request, reply, id }: Called, { reason }: ReasonBody): Promise<object> {
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const member = await this.another(tx, id, session.personId);
      await tx.people.changeMembership(id, member.version, { lockedAt: member.lockedAt ?? this.now() });
      return this.done(tx, id, session.personId, 'person.locked', { reason });
    });
    await this.store.identity.endAllFor(session.operatorId, id);
    return answer;
  }

  /** Access is open again, and a name that was locked by wrong secrets is free. */
  async unlock({ session, request, reply, id }: Called, { reason }: ReasonBody): Promise<object> {
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const member = await this.another(tx, id, session.personId);
      await tx.people.changeMembership(id, member.version, { lockedAt: null });
      return this.done(tx, id, session.personId, 'person.unlocked', { reason });
    });
    const credential = await this.store.identity.credentialOf(id);
    if (credential) await this.store.identity.takeBackAttempts(credential.signInName);
    return answer;
  }

  /** Somebody who works here and is not who acts. */
  private async another(tx: Tx, id: string, actor: string): Promise<Member> {
    if (id === actor) throw new Problem('not-for-oneself', 'Another administrator does it.');
    const member = await tx.people.member(id);
    if (!member || !works(member, this.now())) {
      throw new Problem('not-found', `Nobody with the id ${id} works here now.`);
    }
    return member;
  }

  private async done(tx: Tx, id: string, who: string, what: string, payload: object): Promise<Done> {
    const member = await tx.people.member(id);
    if (!member) throw new Error(`Member ${id} was changed and is not there.`);
    const now = this.now();
    await tx.record.append({
      who,
      authorisation: null,
      organisation: null,
      what,
      aircraft: null,
      times: { enteredAt: now },
      payload: { person: member.reference, ...payload },
    });
    return { status: 200, body: { person: memberView(member, await tx.people.authorisationsOf(id), now) } };
  }
}

export async function needOrganisation(tx: Tx, id: string | null): Promise<void> {
  if (id === null || (await tx.people.organisations()).some((one) => one.id === id)) return;
  const reason = 'is no organisation here';
  throw new Problem('invalid-input', `${id} ${reason}.`, { errors: [{ pointer: '/organisation', reason }] });
}

function nameTaken(): Problem {
  const reason = 'is taken';
  return new Problem('sign-in-name-taken', 'The sign-in name is taken.', {
    errors: [{ pointer: '/signInName', reason }],
  });
}
