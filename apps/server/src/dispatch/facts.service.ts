import { Inject, Injectable } from '@nestjs/common';
import { type FactDefinition, readFactKey, slipOf } from '#mel';
import { lockAircraft, type Tx } from '#store';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import type { FactBody } from './bodies.js';
import { flightOr404 } from './dispatch.service.js';

/** Answers to questions. An answer is never changed: a later one stands beside it and counts from then on. */
@Injectable()
export class FactsService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async answer(tx: Tx, session: Session, aircraftId: string, body: FactBody) {
    const aircraft = await lockAircraft(tx, aircraftId);
    if (!aircraft) throw new Problem('not-found', `There is no aircraft ${aircraftId} here.`);
    const flight = body.flight === undefined ? null : await flightOr404(tx, aircraft, body.flight);
    const now = this.now();
    this.check(session, body, now);
    const fact = {
      aircraftId,
      flightId: flight?.id ?? null,
      key: body.key,
      value: body.value,
      source: body.source,
      observedAt: new Date(body.observedAt).toISOString(),
      validUntil: body.validUntil === undefined ? null : new Date(body.validUntil).toISOString(),
    };
    const id = await tx.facts.add({ ...fact, answeredBy: session.personId, enteredAt: now });
    await tx.aircraft.touch(aircraft);
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what: 'fact.answered',
      aircraft: { id: aircraft.id, registration: aircraft.registration },
      times: { recordedAt: fact.observedAt, enteredAt: now },
      payload: fact,
    });
    return { id, key: body.key, value: body.value };
  }

  private check(session: Session, body: FactBody, now: string): void {
    const known = readFactKey(body.key);
    if (!known || !['aircraft', 'flight'].includes(known.fact.family)) {
      throw refused('/key', `${body.key} is no fact that somebody answers`);
    }
    if (known.fact.family === 'flight' && body.flight === undefined) {
      throw refused('/flight', `${body.key} is about one flight: name it`);
    }
    if (known.fact.family === 'aircraft' && body.flight !== undefined) {
      throw refused('/flight', `${body.key} is about the aircraft, not about a flight`);
    }
    const misfit = slipOf(known.fact, body.value);
    if (misfit) throw refused('/value', misfit);
    if (Date.parse(body.observedAt) > Date.parse(now))
      throw refused('/observedAt', 'an observation lies in the future');
    if (body.validUntil !== undefined && Date.parse(body.validUntil) <= Date.parse(body.observedAt)) {
      throw refused('/validUntil', 'an answer cannot end before it was observed');
    }
    const { mayAnswer } = known.fact;
    if (!mayAnswer.some((role) => session.roles.includes(role))) {
      throw new Problem('role-missing', `${known.fact.label}: only ${mayAnswer.join(' or ')} may answer this.`, {
        mayAnswer,
      });
    }
  }
}

function refused(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}

/** A fact as a page needs it to offer an input of the right kind. */
export function factView({ id, label, type, unit, choices, mayAnswer, validity, subject }: FactDefinition) {
  return {
    id,
    subject,
    label,
    type,
    unit: unit ?? null,
    choices: choices ? [...choices] : null,
    mayAnswer: [...mayAnswer],
    goodForMinutes: typeof validity === 'number' ? validity : null,
  };
}
