/**
 * Somebody who has an account here comes to work for one more operator. An administrator makes an invitation without
 * naming anybody, and hands its code over; who holds it takes it up, signed in with their own account. So no administrator
 * learns who has an account on this server or where else somebody works, and nobody is joined without having signed it.
 */
import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Role } from '#mel';
import type { InvitationRow, Store, Tx } from '#store';
import type { Called } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import type { Session, SignedIn } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { InvitationBody, TakeUpBody } from './account-bodies.js';
import { needOrganisation } from './accounts.service.js';
import { randomLetters } from './first-secret.js';
import { keepSignature, signedPart } from './kept-signature.js';
import { works } from './members.service.js';
import { SignInService } from './sign-in.service.js';

const HOURS = 72;
/** The code of the operator, and letters by chance. */
const CODE = /^(.+)-((?:[a-z2-9]{5}-){3}[a-z2-9]{5})$/;

type Addressed = Parameters<SignInService['proveFor']>[3];

@Injectable()
export class InvitationsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
  ) {}

  /** Also those that let nobody in, with why: they stay in sight until somebody withdraws them. */
  async open(tx: Tx) {
    const rows = await tx.invitations.open();
    return { invitations: await Promise.all(rows.map((row) => this.line(tx, row))) };
  }

  /** The code is told with the first answer and kept nowhere. */
  async invite({ session, request, reply }: Omit<Called, 'id'>, body: InvitationBody): Promise<object> {
    const letters = randomLetters();
    const invitedAt = this.now();
    const untilAt = new Date(Date.parse(invitedAt) + HOURS * 3_600_000).toISOString();
    let code: string | null = null;
    const answer = await once(this.store, session, request, reply, async (tx) => {
      const organisationId = body.organisation ?? null;
      await needOrganisation(tx, organisationId);
      const row = { codeHash: hashOf(letters), roles: body.roles, organisationId, invitedAt, untilAt };
      const id = await tx.invitations.add({ ...row, invitedBy: session.personId });
      await this.record(tx, session.personId, 'person.invited', { invitation: id, roles: body.roles, untilAt });
      code = `${(await tx.operators.current()).code}-${letters}`;
      return { status: 201, body: { invitation: { id, roles: body.roles, untilAt, notUsable: null } } };
    });
    return { ...answer, code };
  }

  withdraw({ session, request, reply, id }: Called): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const row = await tx.invitations.toChange(id);
      if (!row || isClosed(row)) throw new Problem('not-found', `No invitation ${id} waits here.`);
      const invitation = await this.line(tx, row);
      await tx.invitations.change(id, row.version, { withdrawnAt: this.now() });
      await this.record(tx, session.personId, 'person.invitation-withdrawn', { invitation: id });
      return { status: 200, body: { invitation } };
    });
  }

  /** What is taken up with a code: which operator, in which roles, and the words to sign. */
  async look(person: SignedIn, code: string): Promise<object> {
    const { operatorName, row } = await this.found(person, code);
    const { roles, untilAt } = row;
    return { operator: operatorName, roles, untilAt, statement: statementOf(operatorName, roles) };
  }

  async takeUp(person: SignedIn, { code, sign }: TakeUpBody, request: Addressed): Promise<object> {
    const { operatorId, operatorName, row } = await this.found(person, code);
    const proof = await this.signIn.proveFor(person, sign, statementOf(operatorName, row.roles), request);
    await this.store.withOperator(operatorId, person.personId, async (tx) => {
      await tx.people.holdMembership(person.personId);
      const held = await tx.invitations.toChange(row.id);
      const now = this.now();
      if (!held || !(await this.good(tx, held))) throw notGood();
      await this.join(tx, person.personId, held, now);
      await tx.invitations.change(held.id, held.version, { takenUpBy: person.personId, takenUpAt: now });
      const { roles } = held;
      const { personId } = person;
      const { statement } = sign;
      const role = roles[0] as Role;
      const given = { person: personId, role, statement, ...proof, signedAt: now, authorisation: { roles } };
      const entry = await this.record(tx, personId, 'person.joined', {
        person: await tx.people.referenceOf(personId),
        roles,
        organisation: held.organisationId,
        invitation: held.id,
        signature: signedPart(given),
      });
      await keepSignature(tx, entry, given);
    });
    return { operator: operatorName };
  }

  /**
   * Who worked here before comes back under the same membership, locked where it was locked; who works here now keeps the
   * roles there are.
   */
  private async join(tx: Tx, personId: string, { roles, organisationId }: InvitationRow, now: string): Promise<void> {
    const member = await tx.people.member(personId);
    if (member === null) return tx.people.join({ personId, organisationId, roles, validFrom: now });
    if (works(member, now)) throw new Problem('works-here', 'You work for this operator already.');
    const again = { roles, organisationId, validFrom: now, validUntil: null };
    return tx.people.changeMembership(personId, member.version, again);
  }

  /** A code that never was, was taken up, withdrawn, is over or was made by somebody who may not: one answer for all. */
  private async found(person: SignedIn, code: string) {
    const [, operatorCode, letters] = CODE.exec(code.trim().toLowerCase()) ?? [];
    const operators = await this.store.operatorsServed();
    const operator = operators.find((one) => one.code.toLowerCase() === operatorCode);
    if (!operator || letters === undefined) throw notGood();
    return this.store.withOperator(operator.id, person.personId, async (tx) => {
      const row = await tx.invitations.withCode(hashOf(letters));
      if (!row || !(await this.good(tx, row))) throw notGood();
      return { operatorId: operator.id, operatorName: (await tx.operators.current()).name, row };
    });
  }

  private async good(tx: Tx, row: InvitationRow): Promise<boolean> {
    return !isClosed(row) && (await this.notUsable(tx, row)) === null;
  }

  /**
   * Why one that was neither taken up nor withdrawn lets nobody in; null where it does. It is worth what its maker is now:
   * somebody who left lets nobody in any longer, least of all themselves.
   */
  private async notUsable(tx: Tx, { untilAt, invitedBy }: InvitationRow): Promise<string | null> {
    const now = this.now();
    const maker = await tx.people.member(invitedBy);
    if (now >= untilAt) return 'its time is over';
    if (maker === null || !works(maker, now)) return 'whoever made it does not work here any longer';
    if (maker.lockedAt !== null) return 'whoever made it is locked';
    return maker.roles.includes('administrator') ? null : 'whoever made it is no administrator any longer';
  }

  private async line(tx: Tx, row: InvitationRow) {
    const { id, roles, untilAt } = row;
    return { id, roles, untilAt, notUsable: await this.notUsable(tx, row) };
  }

  private record(
    tx: Tx,
    who: Session['personId'],
    what: string,
    payload: object,
  ): Promise<{ id: string; leaf: string }> {
    return tx.record.append({
      who,
      authorisation: null,
      organisation: null,
      what,
      aircraft: null,
      times: { enteredAt: this.now() },
      payload,
    });
  }
}

const isClosed = ({ takenUpAt, withdrawnAt }: InvitationRow): boolean => takenUpAt !== null || withdrawnAt !== null;

function statementOf(operator: string, roles: readonly string[]): string {
  return `I take up the invitation of ${operator} and work for it from now on as ${roles.join(', ')}.`;
}

function notGood(): Problem {
  return new Problem('invitation-not-good', 'No invitation waits under this code.');
}

const hashOf = (letters: string): string => createHash('sha256').update(letters).digest('hex');
