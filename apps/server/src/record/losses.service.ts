/**
 * Part of a record was lost and made anew: that is stated, signed, and told to the authority (published requirement E-14 on
 * electronic records). What was made anew is entered as what it is, late and with its reason; the statement stands in the
 * aircraft's history for as long as that is kept.
 */
import { Inject, Injectable } from '@nestjs/common';
import type { AircraftRow, Store, Tx } from '#store';
import { sayInstant } from '../deferrals/say-time.js';
import type { Called } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { type Given, keepSignature, signedPart } from '../people/kept-signature.js';
import { SignInService } from '../people/sign-in.service.js';
import type { LossBody, LossQuery } from './losses.bodies.js';

export const STATING_ROLES = ['quality'] as const;
export const LOSS_STATED = 'record.loss-stated';

type Stated = LossQuery & { signature: Pick<Given, 'statement' | 'signedAt'> };

@Injectable()
export class LossesService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly signIn: SignInService,
  ) {}

  async statement(tx: Tx, id: string, query: LossQuery): Promise<object> {
    return { act: 'loss', statement: this.statementOf(await aircraftOf(tx, id), query) };
  }

  async list(tx: Tx, id: string): Promise<object> {
    const { id: aircraftId } = await aircraftOf(tx, id);
    const stated = await tx.record.ofAircraftAndKind(aircraftId, LOSS_STATED);
    const names = await tx.people.namesOf(stated.flatMap(({ entry }) => entry.who ?? []));
    return {
      losses: stated.map(({ entry, number }) => {
        const { from, until, lost, madeFrom, authority, reference, signature } = entry.payload as unknown as Stated;
        const by = names.get(entry.who ?? '') ?? '(name erased)';
        const { statement, signedAt } = signature;
        return { from, until, lost, madeFrom, authority, reference, statement, by, signedAt, sealedAs: number };
      }),
    };
  }

  async state({ session, request, reply, id }: Called, body: LossBody): Promise<object> {
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const aircraft = await aircraftOf(tx, id);
      const statement = this.statementOf(aircraft, body);
      if (body.sign.statement !== statement) {
        throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
      }
      const now = this.now();
      const authorisation = { roles: session.roles };
      const given: Given = {
        person: session.personId,
        role: 'quality',
        statement,
        ...proof,
        signedAt: now,
        authorisation,
      };
      const { from, until, lost, madeFrom, authority, reference } = body;
      const entry = await tx.record.append({
        who: session.personId,
        authorisation: null,
        organisation: null,
        what: LOSS_STATED,
        aircraft: { id: aircraft.id, registration: aircraft.registration },
        times: { enteredAt: now },
        payload: { from, until, lost, madeFrom, authority, reference, signature: signedPart(given) },
      });
      await keepSignature(tx, entry, given);
      return { status: 201, body: await this.list(tx, id) };
    });
  }

  private statementOf({ registration }: AircraftRow, body: LossQuery): string {
    const { from, until, lost, madeFrom, authority, reference } = body;
    if (Date.parse(until) <= Date.parse(from)) throw misplaced('/until', 'must lie after the beginning');
    if (Date.parse(from) > Date.parse(this.now())) throw misplaced('/from', 'lies in the future');
    return `Part of the record of ${registration} was lost, from ${sayInstant(from)} to ${sayInstant(until)}: ${lost}. It was made anew from: ${madeFrom}. ${authority} was told under ${reference}. Nothing else is known to be missing.`;
  }
}

async function aircraftOf(tx: Tx, id: string): Promise<AircraftRow> {
  const aircraft = await tx.aircraft.get(id);
  if (!aircraft) throw new Problem('not-found', `There is no aircraft ${id} here.`);
  return aircraft;
}

function misplaced(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', `The time ${reason}.`, { errors: [{ pointer, reason }] });
}
