import { Inject, Injectable } from '@nestjs/common';
import type { AircraftRow, DefectRow, Member, Store, Tx } from '#store';
import { defectNumber } from '../defects/views.js';
import type { Called } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { OneOffBody, OneOffPrivilege, OneOffQuery } from './bodies.js';
import { keepSignature, signedPart } from './kept-signature.js';
import { memberView } from './members.service.js';
import { SignInService } from './sign-in.service.js';

interface Job {
  member: Member;
  row: DefectRow;
  aircraft: AircraftRow;
}

/**
 * One-off authorisations: somebody whose standing scope does not cover a job is authorised for one signature on it, by
 * somebody else, signed (145.A.30(j)(5), FROM MEMORY). What it is used for, the signature itself keeps.
 */
@Injectable()
export class OneOffsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
  ) {}

  async statement(tx: Tx, personId: string, query: OneOffQuery): Promise<object> {
    return { act: 'one-off', statement: statementOf(await jobOf(tx, personId, query.defect), query) };
  }

  async issue({ session, request, reply, id }: Called, body: OneOffBody): Promise<object> {
    if (id === session.personId) throw new Problem('not-for-oneself', 'Nobody authorises themselves.');
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const now = this.now();
      if (Date.parse(body.validUntil) <= Date.parse(now)) throw over(body.validUntil);
      const job = await jobOf(tx, id, body.defect);
      const statement = statementOf(job, body);
      if (body.sign.statement !== statement) {
        throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
      }
      const role = issuing(session);
      const number = await this.enter(tx, session, job, body, role, now);
      const authorisation = { roles: session.roles };
      const given = { person: session.personId, role, statement, ...proof, signedAt: now, authorisation };
      const entry = await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: 'authorisation.issued-once',
        aircraft: { id: job.aircraft.id, registration: job.aircraft.registration },
        times: { enteredAt: now },
        payload: {
          number,
          person: job.member.reference,
          defect: job.row.number,
          privilege: body.privilege,
          validUntil: body.validUntil,
          because: body.because,
          signature: signedPart(given),
        },
      });
      await keepSignature(tx, entry, given);
      return { status: 201, body: { person: memberView(job.member, await tx.people.authorisationsOf(id), now) } };
    });
  }

  private async enter(
    tx: Tx,
    session: Session,
    { member, row, aircraft }: Job,
    { privilege, validUntil, because }: OneOffBody,
    issuedAs: string,
    now: string,
  ): Promise<string> {
    const organisationId = member.organisationId ?? (await tx.people.member(session.personId))?.organisationId;
    if (!organisationId) throw new Problem('role-missing', `${member.name} comes from no organisation.`);
    const others = await tx.people.oneOffsFor(row.id);
    const number = `${defectNumber(aircraft, row)} one-off ${others + 1}`;
    await tx.people.authorise({
      personId: member.personId,
      organisationId,
      number,
      aircraftTypes: [aircraft.type],
      licenceCategories: [],
      privileges: [privilege],
      validFrom: now,
      validUntil: new Date(validUntil).toISOString(),
      defectId: row.id,
      issuedBy: session.personId,
      issuedAs,
      because,
    });
    return number;
  }
}

export const ISSUING_ROLES = ['quality', 'maintenance-control'] as const;

function issuing({ roles }: Session): (typeof ISSUING_ROLES)[number] {
  return ISSUING_ROLES.find((role) => roles.includes(role)) ?? 'quality';
}

/** Somebody who works here now, and an open defect; the aircraft is locked, so that numbers are given one by one. */
async function jobOf(tx: Tx, personId: string, defectId: string): Promise<Job> {
  const member = await tx.people.member(personId);
  if (!member) throw new Problem('not-found', `Nobody with the id ${personId} works here.`);
  const aircraft = await tx.aircraft.lockOfDefect(defectId);
  const row = aircraft ? await tx.defects.get(defectId) : null;
  if (!aircraft || !row || row.closedAt !== null) {
    throw new Problem('not-found', `There is no open defect ${defectId} here.`);
  }
  return { member, row, aircraft };
}

/** It is kept for ever, so it names the person by the reference that the record has; the name stands beside it on the page. */
function statementOf({ member, row, aircraft }: Job, { privilege, validUntil, because }: OneOffQuery): string {
  const person = `the person chosen (reference ${member.reference.slice(0, 16)} in the record)`;
  return `I authorise ${person} for one signature on defect ${defectNumber(aircraft, row)}: ${PRIVILEGE_WORDS[privilege]}, until ${validUntil}, because ${because}`;
}

const PRIVILEGE_WORDS: Record<OneOffPrivilege, string> = {
  defer: 'to defer',
  'sign-procedure': 'to sign work done',
  inspect: 'to inspect',
  release: 'to release',
};

function over(validUntil: string): Problem {
  const reason = 'lies in the past';
  return new Problem('invalid-input', `${validUntil} ${reason}.`, { errors: [{ pointer: '/validUntil', reason }] });
}
