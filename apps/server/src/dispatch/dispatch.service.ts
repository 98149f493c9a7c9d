import { Inject, Injectable } from '@nestjs/common';
import { judge, type Verdict } from '#dispatch';
import type { AircraftRow, FlightRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, TZDB } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { type OperatorSettings, settingsOf } from '../people/operator-settings.js';
import type { Proposal } from './readable-gates.js';
import { loadSituation } from './situation-loader.js';

export interface Question {
  aircraftId: string;
  flightId: string | null;
  at?: string;
  proposals?: readonly Proposal[];
  /** The open defects, when they were read already in this transaction. */
  opened?: readonly OpenedDefect[];
}

/** Answers "may it fly?" from what is stored. */
@Injectable()
export class DispatchService {
  constructor(
    private readonly shelf: MelShelf,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
  ) {}

  async answer(tx: Tx, question: Question): Promise<Verdict> {
    const aircraft = await aircraftOr404(tx, question.aircraftId);
    const flight = question.flightId === null ? null : await flightOr404(tx, aircraft, question.flightId);
    const settings = await this.settings(tx);
    return this.judgeNow(tx, aircraft, flight, settings, question);
  }

  async judgeNow(
    tx: Tx,
    aircraft: AircraftRow,
    flight: FlightRow | null,
    settings: OperatorSettings,
    { at = this.now(), proposals = [], opened }: Partial<Question>,
  ): Promise<Verdict> {
    const shelved = await this.shelf.inForce(tx, aircraft.type);
    if (!shelved) throw new Problem('row-not-available', `No MEL is in force for the type ${aircraft.type}.`);
    const asked = { aircraft, flight, at, settings, proposals, ...(opened ? { opened } : {}) };
    const { situation } = await loadSituation(tx, asked);
    return judge(shelved.mel, situation);
  }

  async settings(tx: Tx): Promise<OperatorSettings> {
    return settingsOf(await tx.operators.current(), this.tzdb);
  }
}

export async function aircraftOr404(tx: Tx, id: string): Promise<AircraftRow> {
  const aircraft = await tx.aircraft.get(id);
  if (!aircraft) throw new Problem('not-found', `There is no aircraft ${id} here.`);
  return aircraft;
}

export async function flightOr404(tx: Tx, aircraft: AircraftRow, id: string): Promise<FlightRow> {
  const flight = await tx.flights.get(id);
  if (!flight || flight.aircraftId !== aircraft.id) {
    throw new Problem('not-found', `There is no flight ${id} of ${aircraft.registration} here.`);
  }
  return flight;
}
