import { Inject, Injectable } from '@nestjs/common';
import {
  actsAsCorrected,
  admitSignature,
  type Before,
  type DefectLife,
  recognise,
  type Recognised,
  type RepetitiveRule,
  stateOf,
  type WrittenLike,
} from '#deferrals';
import { dayOf, hasFlown, type Leg, readInstant } from '#intervals';
import { type AircraftRow, type DefectRow, lockAircraft, newId, type Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { flownLegs } from '../movements/flown-legs.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import type { Proof } from '../people/proof.js';
import { signatureOf } from '../people/signer.js';
import type { RecurrenceBody } from './bodies.js';
import { recurrenceKind } from './recurrence-kind.js';

/** Finds what came before a write-up and is like it, and keeps what maintenance control decides about it. */
@Injectable()
export class RecurrenceService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
  ) {}

  async view(tx: Tx, defectId: string) {
    const { row, aircraft } = await this.found(tx, defectId);
    const { rule, recognised, all } = await this.recognised(tx, aircraft, row);
    const by = (id: string) => all.find((one) => one.row.id === id);
    const columns = [defectId, ...recognised.occurrences.map(({ defect }) => defect)];
    const body = {
      at: this.now(),
      defect: defectId,
      number: defectNumber(aircraft, row),
      rule: ruleWords(rule),
      times: recognised.times,
      repetitive: recognised.repetitive,
      writeUps: columns.flatMap((id) => {
        const one = by(id);
        const seen = recognised.occurrences.find(({ defect }) => defect === id);
        return one ? [column(aircraft, one, seen?.alikeBy ?? [], seen?.certain ?? true)] : [];
      }),
      decided: await decisions(tx, aircraft.id, defectId),
    };
    return { version: row.version, body };
  }

  async statement(tx: Tx, defectId: string, repetitive: boolean) {
    const { row, aircraft } = await this.found(tx, defectId);
    return { act: 'recurrence', statement: statementOf(aircraft, row, repetitive) };
  }

  async decide(
    tx: Tx,
    { session, proof, seen }: { session: Session; proof: Proof; seen: number },
    defectId: string,
    body: RecurrenceBody,
  ) {
    const aircraft = await lockAircraft(tx, (await this.found(tx, defectId)).row.aircraftId);
    if (!aircraft) throw new Error('The aircraft was there and is gone.');
    const { row } = await this.found(tx, defectId);
    if (row.version !== seen) {
      const number = defectNumber(aircraft, row);
      throw new Problem('changed-meanwhile', `Defect ${number} is at version ${row.version}, not ${seen}.`, {
        current: row.version,
      });
    }
    if (!session.roles.includes('maintenance-control')) {
      throw new Problem('role-missing', 'Maintenance control decides whether a defect is repetitive.', {
        mayAnswer: ['maintenance-control'],
      });
    }
    const { repetitive, reason, sign } = body;
    const statement = statementOf(aircraft, row, repetitive);
    if (sign.statement !== statement) {
      throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
    }
    const now = this.now();
    const { code } = await tx.operators.current();
    const by = await signatureOf(tx, {
      operatorCode: code,
      personId: session.personId,
      role: 'maintenance-control',
      aircraftType: aircraft.type,
      privilege: 'judge-combination',
      statement,
      now,
      proof,
    });
    const of = { registration: aircraft.registration, type: aircraft.type, operator: code };
    admitSignature(by, null, { aircraft: of, enteredAt: now, act: 'decision on a repetitive defect' });
    const { recognised } = await this.recognised(tx, aircraft, row);
    const occurrences = recognised.occurrences.map(({ defect }) => defect);
    const entry = await tx.record.append({
      who: session.personId,
      authorisation: by.authorisation.number,
      organisation: by.organisation,
      what: 'defect.recurrence-decided',
      aircraft: { id: aircraft.id, registration: aircraft.registration },
      times: { enteredAt: now },
      payload: { number: row.number, repetitive, reason, occurrences, signature: signedPart(by) },
    });
    await keepSignature(tx, entry, by);
    await tx.judgements.add({
      id: newId(),
      aircraftId: aircraft.id,
      flightId: null,
      judgement: recurrenceKind(defectId),
      accepted: repetitive,
      personId: session.personId,
      role: 'maintenance-control',
      covers: { reason, occurrences },
      at: now,
      validUntil: null,
      entryId: entry.id,
    });
    return { repetitive, reason };
  }

  private async found(tx: Tx, id: string): Promise<{ row: DefectRow; aircraft: AircraftRow }> {
    const row = await tx.defects.get(id);
    const aircraft = row ? await tx.aircraft.get(row.aircraftId) : null;
    if (!row || !aircraft) throw new Problem('not-found', `There is no defect ${id} here.`);
    return { row, aircraft };
  }

  private async recognised(
    tx: Tx,
    aircraft: AircraftRow,
    row: DefectRow,
  ): Promise<{ rule: RepetitiveRule; recognised: Recognised; all: OpenedDefect[] }> {
    const settings = await this.dispatch.settings(tx);
    const rows = (await tx.defects.ofAircraft(aircraft.id)).filter(
      (one) => one.id === row.id || Date.parse(one.recordedAt) <= Date.parse(row.recordedAt),
    );
    const all = await livesOf(tx, rows);
    const self = all.find((one) => one.row.id === row.id);
    if (!self) throw new Error(`Defect ${row.id} has no life.`);
    const others = all.filter((one) => one !== self);
    const first = others.reduce(
      (from, one) => (one.row.recordedAt < from ? one.row.recordedAt : from),
      row.recordedAt,
    );
    const legs = await flownLegs(tx, aircraft.id, first);
    const before = others.map((one) => beforeOf(one, row.recordedAt, legs, settings.deferral.base));
    const rule = settings.repetitive;
    return { rule, recognised: recognise(likeOf(self.life), before, rule), all };
  }
}

function likeOf({ item, system, faultMessage }: DefectLife): WrittenLike {
  return {
    entry: item?.entry ?? null,
    subEntry: item?.subEntry ?? null,
    units: item?.units ?? [],
    system,
    faultMessage,
  };
}

/** Where nothing was flown in between by what is known, that is not the same as knowing that nothing was. */
function beforeOf({ row, life }: OpenedDefect, now: string, legs: readonly Leg[], base: string): Before {
  const between = legs.filter(
    (leg) => hasFlown(leg) && leg.offBlockAt >= row.recordedAt && Date.parse(leg.offBlockAt) < Date.parse(now),
  );
  const counted = legs.length > 0;
  const [from, to] = [dayOf(readInstant('log', row.recordedAt), base), dayOf(readInstant('log', now), base)];
  return {
    ...likeOf(life),
    defect: row.id,
    how: life.closed?.how ?? null,
    ago: {
      days: from.until(to, { largestUnit: 'day' }).days,
      flights: counted ? between.length : null,
      flightMinutes: counted ? between.reduce((sum, { flightMinutes }) => sum + flightMinutes, 0) : null,
    },
  };
}

function column(aircraft: AircraftRow, { row, life }: OpenedDefect, alikeBy: string[], certain: boolean) {
  return {
    defect: row.id,
    number: defectNumber(aircraft, row),
    recordedAt: life.recordedAt,
    description: life.description,
    faultMessage: life.faultMessage,
    system: life.system,
    entry: life.item?.entry ?? null,
    units: life.item?.units ?? [],
    state: life.closed?.how ?? stateOf(life),
    work: actsAsCorrected(life).flatMap((act) => {
      if (act.kind === 'rectification') return [`${act.workDone} (${act.reference})`];
      if (act.kind === 'no-fault-found') return [`Checked: ${act.checks} (${act.reference})`];
      return act.kind === 'reset-and-watch' ? [`Reset (${act.reference}): ${act.watch}`] : [];
    }),
    alikeBy,
    certain,
  };
}

async function decisions(tx: Tx, aircraftId: string, defectId: string) {
  const rows = (await tx.judgements.ofAircraft(aircraftId)).filter(
    ({ judgement }) => judgement === recurrenceKind(defectId),
  );
  const people = await tx.people.known(rows.map(({ personId }) => personId));
  return rows.map(({ accepted, covers, personId, at }) => ({
    repetitive: accepted,
    reason: String(covers['reason'] ?? ''),
    by: people.get(personId)?.name ?? '(name erased)',
    at,
  }));
}

function ruleWords({ times, within, alikeBy }: RepetitiveRule): string {
  const { days, flights, flightMinutes } = within;
  const windows = [
    ...(days === null ? [] : [`${days} days`]),
    ...(flights === null ? [] : [`${flights} flights`]),
    ...(flightMinutes === null ? [] : [`${flightMinutes / 60} flight hours`]),
  ];
  return `${times} write-ups within ${windows.join(' or ') || 'no window'}, alike by ${alikeBy.join(', ') || 'nothing'}`;
}

function statementOf(aircraft: AircraftRow, row: DefectRow, repetitive: boolean): string {
  const what = `defect ${defectNumber(aircraft, row)} on ${aircraft.registration}`;
  return `I have read the write-ups before ${what} side by side, and decide that it is ${repetitive ? '' : 'not '}a repetitive defect.`;
}
