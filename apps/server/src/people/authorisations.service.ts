/**
 * Standing authorisations: quality grants one to somebody else, signed, with its scope and its validity, and takes it
 * back. What was signed under one keeps a copy of it (published requirements E-10, E-15 on electronic signatures).
 */
import { Inject, Injectable } from '@nestjs/common';
import type { Member, OrganisationRow, Store, Tx } from '#store';
import type { Called } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import {
  ALL_PRIVILEGES,
  type AuthorisationBody,
  type AuthorisationQuery,
  LICENCE_CATEGORIES,
  type ReasonBody,
} from './account-bodies.js';
import { keepSignature, signedPart } from './kept-signature.js';
import { memberView, works } from './members.service.js';
import { SignInService } from './sign-in.service.js';

interface Scope {
  number: string;
  organisation: OrganisationRow;
  aircraftTypes: string[];
  licenceCategories: string[];
  privileges: string[];
  validFrom: string;
  validUntil: string | null;
}

@Injectable()
export class AuthorisationsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
  ) {}

  async statement(tx: Tx, id: string, query: AuthorisationQuery): Promise<object> {
    return { act: 'authorise', statement: statementOf(await this.holder(tx, id), await scopeOf(tx, query)) };
  }

  async grant({ session, request, reply, id }: Called, body: AuthorisationBody): Promise<object> {
    if (id === session.personId) throw new Problem('not-for-oneself', 'Nobody authorises themselves.');
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const member = await this.holder(tx, id);
      const scope = await scopeOf(tx, body);
      const statement = statementOf(member, scope);
      if (body.sign.statement !== statement) {
        throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
      }
      const { organisation, ...given } = scope;
      const taken = await tx.people.numberTaken(organisation.id, given.number);
      if (taken) throw new Problem('number-taken', `${organisation.name} gave ${given.number} before.`);
      const now = this.now();
      await tx.people.authorise({ personId: id, organisationId: organisation.id, ...given });
      const role = 'quality' as const;
      const authorisation = { roles: session.roles };
      const signature = { person: session.personId, role, statement, ...proof, signedAt: now, authorisation };
      const entry = await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: 'authorisation.granted',
        aircraft: null,
        times: { enteredAt: now },
        payload: {
          person: member.reference,
          ...given,
          organisation: { name: organisation.name, approval: organisation.approvalNumber },
          signature: signedPart(signature),
        },
      });
      await keepSignature(tx, entry, signature);
      return { status: 201, body: { person: memberView(member, await tx.people.authorisationsOf(id), now) } };
    });
  }

  revoke({ session, request, reply, id }: Called, authorisation: string, { reason }: ReasonBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const member = await tx.people.member(id);
      const found = (await tx.people.authorisationsOf(id)).find((one) => one.id === authorisation);
      if (!member || !found || found.revokedAt !== null) {
        throw new Problem('not-found', `There is no authorisation ${authorisation} in force here.`);
      }
      const now = this.now();
      await tx.people.revoke(found.id, found.version, now);
      await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: 'authorisation.revoked',
        aircraft: null,
        times: { enteredAt: now },
        payload: { person: member.reference, number: found.number, reason },
      });
      return { status: 200, body: { person: memberView(member, await tx.people.authorisationsOf(id), now) } };
    });
  }

  private async holder(tx: Tx, id: string): Promise<Member> {
    const member = await tx.people.member(id);
    if (!member || !works(member, this.now())) {
      throw new Problem('not-found', `Nobody with the id ${id} works here now.`);
    }
    return member;
  }
}

/** The scope in its parts, each looked at. Throws Problem. */
async function scopeOf(tx: Tx, query: AuthorisationQuery): Promise<Scope> {
  const organisation = (await tx.people.organisations()).find(({ id }) => id === query.organisation);
  if (!organisation) throw wrong('/organisation', 'is no organisation here');
  const known = new Set((await tx.aircraft.list()).map(({ type }) => type));
  const validUntil = query.validUntil === undefined ? null : new Date(query.validUntil).toISOString();
  const validFrom = new Date(query.validFrom).toISOString();
  if (validUntil !== null && validUntil <= validFrom) throw wrong('/validUntil', 'is not after the beginning');
  return {
    number: query.number.trim(),
    organisation,
    aircraftTypes: parts('/aircraftTypes', query.aircraftTypes, [...known]),
    licenceCategories: parts('/licenceCategories', query.licenceCategories ?? '', LICENCE_CATEGORIES),
    privileges: parts('/privileges', query.privileges, ALL_PRIVILEGES),
    validFrom,
    validUntil,
  };
}

function parts(pointer: string, text: string, known: readonly string[]): string[] {
  const found = [...new Set(text.split(',').map((one) => one.trim()))].filter((one) => one !== '');
  const strange = found.find((one) => !known.includes(one));
  if (strange !== undefined) throw wrong(pointer, `has ${strange}, which is none of ${known.join(', ')}`);
  if (found.length === 0 && text !== '') throw wrong(pointer, 'names nothing');
  return found;
}

function wrong(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', `${pointer.slice(1)} ${reason}.`, { errors: [{ pointer, reason }] });
}

/** It is kept for ever, so it names the person by the reference that the record has; the name stands beside it on the page. */
function statementOf({ reference }: Member, scope: Scope): string {
  const { number, organisation, aircraftTypes, licenceCategories, privileges, validFrom, validUntil } = scope;
  const categories = licenceCategories.length === 0 ? '' : `, licence category ${licenceCategories.join(', ')}`;
  return `I grant the person chosen (reference ${reference.slice(0, 16)} in the record) authorisation ${number} of ${organisation.name} (${organisation.approvalNumber}) on ${aircraftTypes.join(', ')}${categories}: ${privileges.join(', ')}. Valid from ${validFrom}${validUntil === null ? '' : ` until before ${validUntil}`}.`;
}
