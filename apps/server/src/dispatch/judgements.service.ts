import { Inject, Injectable } from '@nestjs/common';
import { admitSignature } from '#deferrals';
import type { GivenOn } from '#dispatch';
import type { Role } from '#mel';
import { type AircraftRow, type FlightRow, lockAircraft, newId, type Tx } from '#store';
import { livesOf } from '../defects/defect-book.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import type { Proof } from '../people/proof.js';
import { signatureOf } from '../people/signer.js';
import type { JudgementBody } from './bodies.js';
import { ALWAYS_LOOKED_AT, lookedAt } from './combination.js';
import { aircraftOr404, DispatchService, flightOr404 } from './dispatch.service.js';
import { factBook } from './fact-book.js';
import { FLIGHTS_AHEAD } from './next-flights.service.js';

interface AskedOf {
  question: string;
  role: Role;
}

/** Who judges, proved to be that person. */
export interface Judging {
  session: Session;
  proof: Proof;
}

/** Questions that only a named person can settle: the combination of open items, and those that a row asks. */
@Injectable()
export class JudgementsService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly shelf: MelShelf,
    private readonly dispatch: DispatchService,
  ) {}

  async statement(tx: Tx, aircraftId: string, judgement: string, accepted: boolean) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    const { question } = await this.asked(tx, aircraft, judgement);
    return { act: 'judge', statement: statementOf(aircraft, question, accepted) };
  }

  async judge(tx: Tx, { session, proof }: Judging, aircraftId: string, body: JudgementBody) {
    const aircraft = await lockAircraft(tx, aircraftId);
    if (!aircraft) throw new Problem('not-found', `There is no aircraft ${aircraftId} here.`);
    const flight = body.flight === undefined ? null : await flightOr404(tx, aircraft, body.flight);
    const { question, role } = await this.asked(tx, aircraft, body.judgement);
    if (!session.roles.includes(role)) {
      throw new Problem('role-missing', `Only ${role} may answer: ${question}`, { mayAnswer: [role] });
    }
    const statement = statementOf(aircraft, question, body.accepted);
    if (body.sign.statement !== statement) {
      throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
    }
    const now = this.now();
    const privilege = body.judgement === 'combination' ? ('judge-combination' as const) : null;
    const operator = await tx.operators.current();
    const by = await signatureOf(tx, {
      operatorCode: operator.code,
      personId: session.personId,
      role,
      aircraftType: aircraft.type,
      privilege: privilege ?? 'sign-procedure',
      statement,
      now,
      proof,
    });
    const { registration, type } = aircraft;
    const of = { aircraft: { registration, type, operator: operator.code }, enteredAt: now, act: body.judgement };
    admitSignature(by, privilege, of);
    const items = await this.openItems(tx, aircraft);
    const flights = body.judgement === 'combination' ? await this.lookedAt(tx, aircraft, flight) : [];
    const payload = {
      judgement: body.judgement,
      question,
      accepted: body.accepted,
      ...(body.reason === undefined ? {} : { reason: body.reason }),
      flight: flight?.id ?? null,
      validUntil: body.validUntil ?? null,
      items,
      ...(flights.length === 0 ? {} : { flights }),
      signature: signedPart(by),
    };
    const entry = await tx.record.append({
      who: session.personId,
      authorisation: by.authorisation.number,
      organisation: by.organisation,
      what: 'judgement.given',
      aircraft: { id: aircraft.id, registration },
      times: { enteredAt: now },
      payload,
    });
    await keepSignature(tx, entry, by);
    const id = await tx.judgements.add({
      id: newId(),
      aircraftId,
      flightId: flight?.id ?? null,
      judgement: body.judgement,
      accepted: body.accepted,
      personId: session.personId,
      role,
      covers: { items, flights },
      at: now,
      validUntil: body.validUntil === undefined ? null : new Date(body.validUntil).toISOString(),
      entryId: entry.id,
    });
    await tx.aircraft.touch(aircraft);
    return { id, judgement: body.judgement, accepted: body.accepted };
  }

  private async asked(tx: Tx, aircraft: AircraftRow, judgement: string): Promise<AskedOf> {
    if (judgement === 'combination') {
      return { question: 'May these open items be flown together?', role: 'maintenance-control' };
    }
    const [number = '', rowId = '', id] = judgement.split('/');
    const shelved = await this.shelf.inForce(tx, aircraft.type);
    const asked = shelved?.mel.row(number, rowId, aircraft)?.row.judgements?.find((one) => one.id === id);
    if (!asked) throw new Problem('not-found', `No row asks for the judgement ${judgement}.`);
    return { question: asked.question, role: asked.by };
  }

  /** The flight it is given for, or all that are planned ahead: their routes, and what is known of them and was used. */
  private async lookedAt(tx: Tx, aircraft: AircraftRow, flight: FlightRow | null): Promise<GivenOn['flights']> {
    const settings = await this.dispatch.settings(tx);
    const at = this.now();
    const flights = flight === null ? await tx.flights.planned(aircraft.id, at, FLIGHTS_AHEAD) : [flight];
    const seen: GivenOn['flights'] = [];
    for (const one of flights) {
      const verdict = await this.dispatch.judgeNow(tx, aircraft, one, settings, { at });
      const book = factBook(await tx.facts.current(aircraft.id, [one.id]));
      const always = ALWAYS_LOOKED_AT.map((key) => [key, book[key]?.value ?? one.facts[key]]);
      seen.push(lookedAt(one, verdict, Object.fromEntries(always)));
    }
    return seen;
  }

  private async openItems(tx: Tx, aircraft: AircraftRow) {
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    return opened.map(({ life }) => ({
      defect: life.defect,
      entry: life.item?.entry ?? null,
      row: life.deferral?.basis.kind === 'mel-row' ? life.deferral.basis.row : null,
    }));
  }
}

function statementOf(aircraft: AircraftRow, question: string, accepted: boolean): string {
  return `I have considered for ${aircraft.registration}: ${question} My answer is ${accepted ? 'yes' : 'no'}.`;
}
