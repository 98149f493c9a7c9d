import { Inject, Injectable } from '@nestjs/common';
import { admitSignature, type Signature } from '#deferrals';
import { engineCounters } from '#intervals';
import { type AircraftRow, type EngineCountRow, newId, type Tx } from '#store';
import { aircraftOr404 } from '../../dispatch/dispatch.service.js';
import type { SignBody } from '../../http/fields.js';
import { Problem } from '../../http/problem.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock } from '../../http/tokens.js';
import { keepSignature, signedPart } from '../../people/kept-signature.js';
import type { Proof } from '../../people/proof.js';
import { signatureOf } from '../../people/signer.js';
import { movedLegs } from '../flown-legs.js';
import { StandingsService } from '../standings.service.js';
import { namesOf } from '../views.js';
import { type ENGINE_ACTS, type EngineCountBody, type WithdrawCountBody } from './bodies.js';
import { type CountContent, countOf } from './engine-count.js';
import { engineCountsOf, hourClockOf } from './counts-of-engines.js';
import { countLines, counterLine } from './engine-views.js';

type EngineAct = (typeof ENGINE_ACTS)[number];

export interface Signing {
  session: Session;
  proof: Proof;
  sign: SignBody;
}

/** The counters of engines: what people read on them, with what was flown since. A signed statement is never altered. */
@Injectable()
export class EnginesService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly standings: StandingsService,
  ) {}

  async view(tx: Tx, aircraftId: string) {
    const { id, registration } = await aircraftOr404(tx, aircraftId);
    const at = this.now();
    const versions = await tx.engineCounts.versions(id);
    const names = await namesOf(
      tx,
      versions.map(({ personId }) => personId),
    );
    const counters = await this.counters(tx, id, at);
    return { at, aircraft: id, registration, counters, counts: countLines(versions, names) };
  }

  async statement(tx: Tx, aircraftId: string, act: EngineAct) {
    return { act, statement: statementOf(await aircraftOr404(tx, aircraftId), act) };
  }

  async enter(tx: Tx, signing: Signing, aircraftId: string, body: EngineCountBody) {
    const aircraft = await held(tx, aircraftId);
    const content = countOf(body, await tx.engineCounts.inForce(aircraftId), this.now());
    return this.write(tx, signing, aircraft, { id: newId(), version: 1, content, was: null });
  }

  async correct(
    tx: Tx,
    signing: Signing,
    { aircraftId, countId, seen }: { aircraftId: string; countId: string; seen: number },
    body: EngineCountBody | WithdrawCountBody,
  ) {
    const aircraft = await held(tx, aircraftId);
    const inForce = await tx.engineCounts.inForce(aircraftId);
    const of = inForce.find(({ id }) => id === countId);
    if (!of) throw new Problem('not-found', `Nothing of that id is in force for ${aircraft.registration}.`);
    if (of.version !== seen) {
      const detail = `It is at version ${of.version}, not ${seen}.`;
      throw new Problem('changed-meanwhile', detail, { current: of.version });
    }
    const others = inForce.filter((one) => one !== of);
    const content = 'kind' in body ? countOf(body, others, this.now()) : withdrawn(of, body.reason);
    return this.write(tx, signing, aircraft, { id: of.id, version: of.version + 1, content, was: of });
  }

  private async write(
    tx: Tx,
    signing: Signing,
    aircraft: AircraftRow,
    { id, version, content, was }: { id: string; version: number; content: CountContent; was: EngineCountRow | null },
  ) {
    const now = this.now();
    const by = await this.signed(tx, signing, aircraft, content.kind);
    const { done, items, answers } = await this.standings.changedBy(tx, [aircraft], now, async () => {
      const entry = await tx.record.append({
        who: signing.session.personId,
        authorisation: by.authorisation.number,
        organisation: by.organisation,
        what: whatOf(content.kind, was),
        aircraft: { id: aircraft.id, registration: aircraft.registration },
        times: { occurredAt: content.at, enteredAt: now },
        payload: { count: id, version, ...content, signature: signedPart(by) },
      });
      await keepSignature(tx, entry, by);
      const row = { ...content, id, version, aircraftId: aircraft.id, personId: signing.session.personId };
      await tx.engineCounts.add({ ...row, writtenAt: now, entryId: entry.id });
      await tx.aircraft.touch(aircraft);
      return this.counters(tx, aircraft.id, now);
    });
    return { id, version, counters: done, items, answers };
  }

  private async counters(tx: Tx, aircraftId: string, at: string) {
    const counts = engineCountsOf(await tx.engineCounts.inForce(aircraftId));
    const first = counts.readings.map(({ readAt }) => readAt).toSorted()[0];
    if (first === undefined) return [];
    const legs = await movedLegs(tx, aircraftId, first);
    return engineCounters(counts, legs, { at, hourClock: await hourClockOf(tx) }).map(counterLine);
  }

  private async signed(
    tx: Tx,
    { session, proof, sign }: Signing,
    aircraft: AircraftRow,
    act: EngineAct,
  ): Promise<Signature> {
    const statement = statementOf(aircraft, act);
    if (sign.statement !== statement) {
      throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
    }
    const now = this.now();
    const { code } = await tx.operators.current();
    const privilege = 'sign-procedure' as const;
    const by = await signatureOf(tx, {
      operatorCode: code,
      personId: session.personId,
      role: session.roles[0] ?? 'technician',
      aircraftType: aircraft.type,
      privilege,
      statement,
      now,
      proof,
    });
    const of = { registration: aircraft.registration, type: aircraft.type, operator: code };
    admitSignature(by, privilege, { aircraft: of, enteredAt: now, act: 'statement of an engine' });
    return by;
  }
}

async function held(tx: Tx, aircraftId: string): Promise<AircraftRow> {
  const aircraft = await tx.aircraft.lock(aircraftId);
  if (!aircraft) throw new Problem('not-found', `There is no aircraft ${aircraftId} here.`);
  return aircraft;
}

function withdrawn(of: EngineCountRow, reason: string): CountContent {
  const { position, serial, at, minutes, cycles } = of;
  return { kind: 'withdrawn', position, serial, at, minutes, cycles, reason };
}

function whatOf(kind: EngineCountRow['kind'], was: EngineCountRow | null): string {
  return was === null || kind === 'withdrawn' ? `engine.${kind}` : `engine.${kind}-corrected`;
}

function statementOf({ registration }: AircraftRow, act: EngineAct): string {
  switch (act) {
    case 'reading':
      return `The counters of the engine named on ${registration} read as I state at the instant I state, by the record that I name.`;
    case 'run':
      return `The engine named on ${registration} ran, or was started, as I state, and no leg of the aircraft tells it.`;
    case 'withdrawn':
      return `What was stated of the engine named on ${registration} was never so, for the reason given.`;
  }
}
