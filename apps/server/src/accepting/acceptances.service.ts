import { Inject, Injectable } from '@nestjs/common';
import {
  type Acceptance,
  acceptFlight,
  type AcceptingRole,
  proceduresBrought,
  proceduresOwed,
  rowsBroughtBy,
} from '#deferrals';
import type { Verdict } from '#dispatch';
import { type AircraftRow, type FlightRow, lockAircraft, newId, type Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { DefectViews } from '../defects/defect-views.service.js';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { aircraftOr404, DispatchService, flightOr404 } from '../dispatch/dispatch.service.js';
import { flightLine } from '../fleet/flight-line.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import type { Proof } from '../people/proof.js';
import { signatureOf } from '../people/signer.js';
import { ACCEPTANCE } from './acceptance-kind.js';
import { acceptancesGiven, shownOf } from './acceptances-for.js';
import type { AcceptanceBody } from './bodies.js';

const WORDS: Record<AcceptingRole, string> = {
  commander: 'I accept',
  dispatcher: 'I acknowledge the limits of',
};

/** The commander's acceptance of the aircraft for one flight, and the dispatcher's acknowledgement of its limits. */
@Injectable()
export class AcceptancesService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
    private readonly views: DefectViews,
  ) {}

  async view(tx: Tx, aircraftId: string, flightId: string) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    const flight = await flightOr404(tx, aircraft, flightId);
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    const verdict = await this.verdictFor(tx, aircraft, flight);
    const shown = await shownOf(tx, aircraft, flight, opened, verdict.validUntil?.at ?? null);
    const lines = await this.views.ofAircraft(tx, aircraft);
    return {
      at: this.now(),
      aircraft: aircraft.id,
      registration: aircraft.registration,
      flight: flightLine(flight, await tx.operators.stations()),
      verdict: verdict.verdict,
      words: verdict.words,
      reasons: verdict.reasons,
      goodUntil: shown.goodUntil,
      items: opened.map((one) => ({
        defect: one.row.id,
        number: defectNumber(aircraft, one.row),
        title: lines.find(({ id }) => id === one.row.id)?.title ?? firstWords(one.life.description, 60),
        basis: lines.find(({ id }) => id === one.row.id)?.basis ?? null,
        until: lines.find(({ id }) => id === one.row.id)?.deadline?.words ?? null,
        limits: limitsOf(verdict, one),
        operations: operationsOf(one),
      })),
      left: (await tx.register.ofAircraft(aircraft.id)).length,
      given: await acceptancesGiven(tx, shown, this.now()),
    };
  }

  async statement(tx: Tx, aircraftId: string, flightId: string, role: AcceptingRole, accepted: boolean) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    const flight = await flightOr404(tx, aircraft, flightId);
    const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
    return { act: 'accept', statement: statementOf(aircraft, flight, opened, role, accepted) };
  }

  async accept(
    tx: Tx,
    { session, proof }: { session: Session; proof: Proof },
    { aircraftId, flightId }: { aircraftId: string; flightId: string },
    body: AcceptanceBody,
  ) {
    const row = await lockAircraft(tx, aircraftId);
    if (!row) throw new Problem('not-found', `There is no aircraft ${aircraftId} here.`);
    const flight = await flightOr404(tx, row, flightId);
    const { role, accepted, reason, sign } = body;
    if (!session.roles.includes(role)) {
      throw new Problem('role-missing', `Only a ${role} may sign this.`, { mayAnswer: [role] });
    }
    const opened = await livesOf(tx, await tx.defects.open(row.id));
    const statement = statementOf(row, flight, opened, role, accepted);
    if (sign.statement !== statement) {
      throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
    }
    const verdict = await this.verdictFor(tx, row, flight);
    const shown = await shownOf(tx, row, flight, opened, verdict.validUntil?.at ?? null);
    const now = this.now();
    const { code } = await tx.operators.current();
    const by = await signatureOf(tx, {
      operatorCode: code,
      personId: session.personId,
      role,
      aircraftType: row.type,
      privilege: 'sign-procedure',
      statement,
      now,
      proof,
    });
    const aircraft = { registration: row.registration, type: row.type, operator: code };
    const given = acceptFlight(aircraft, shown, { role, accepted, by, ...(reason ? { reason } : {}) }, now);
    await this.keep(tx, row, flight, given);
    await tx.aircraft.touch(row);
    return { accepted, role, reason: given.reason };
  }

  private async verdictFor(tx: Tx, aircraft: AircraftRow, flight: FlightRow): Promise<Verdict> {
    return this.dispatch.judgeNow(tx, aircraft, flight, await this.dispatch.settings(tx), {});
  }

  private async keep(tx: Tx, aircraft: AircraftRow, flight: FlightRow, given: Acceptance): Promise<void> {
    const { by, role, accepted, reason, shown, at } = given;
    const entry = await tx.record.append({
      who: by.person,
      authorisation: by.authorisation.number,
      organisation: by.organisation,
      what: accepted ? 'flight.accepted' : 'flight.declined',
      aircraft: { id: aircraft.id, registration: aircraft.registration },
      times: { enteredAt: at },
      payload: { role, accepted, reason, flight: flight.number, shown, signature: signedPart(by) },
    });
    await keepSignature(tx, entry, by);
    await tx.judgements.add({
      id: newId(),
      aircraftId: aircraft.id,
      flightId: flight.id,
      judgement: ACCEPTANCE,
      accepted,
      personId: by.person,
      role,
      covers: { shown, reason },
      at,
      validUntil: shown.goodUntil === null ? null : new Date(shown.goodUntil).toISOString(),
      entryId: entry.id,
    });
  }
}

/** What each open item asks of the flight: the conditions its row puts on it, in words. */
function limitsOf({ items }: Verdict, { life }: OpenedDefect): string[] {
  const { entry, units } = life.item ?? { entry: null, units: [] };
  return items
    .filter((item) => item.entry === entry && units.includes(item.unit))
    .flatMap(({ conditions }) => conditions.filter(({ kind }) => kind === 'proviso').map(({ text }) => text));
}

function operationsOf({ life }: OpenedDefect): { work: string; text: string }[] {
  const basis = life.deferral?.basis;
  if (basis === undefined) return [];
  const owed = [...proceduresOwed(basis), ...rowsBroughtBy(basis).flatMap(proceduresBrought)];
  return owed
    .filter(({ procedure }) => procedure.kind === 'O')
    .map(({ work, procedure }) => ({ work, text: procedure.text }));
}

/** The statement names each open item: when one comes or goes, another one is shown. */
function statementOf(
  aircraft: AircraftRow,
  flight: FlightRow,
  opened: readonly OpenedDefect[],
  role: AcceptingRole,
  accepted: boolean,
): string {
  const open = opened.map(({ row }) => defectNumber(aircraft, row)).join(', ');
  const what = `${aircraft.registration} for flight ${flight.number}`;
  const with_ =
    open === '' ? 'Nothing is open on it.' : `Open on it: ${open}. I have read what each asks of the flight.`;
  return accepted
    ? `${WORDS[role]} ${what}. ${with_}`
    : `I decline ${what}, for the reason given. ${open === '' ? with_ : `Open on it: ${open}.`}`;
}
