import { Inject, Injectable } from '@nestjs/common';
import {
  atStation,
  planQuestions,
  propose,
  type QuestionPlan,
  type Situation,
  type Verdict,
  whatHelps,
  type WhatHelps,
} from '#dispatch';
import type { Mel } from '#mel';
import type { AircraftRow, DefectRow, FlightRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { retired } from '../fleet/entering/retired.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, TZDB } from '../http/tokens.js';
import { keptEntries, type RowTried } from '../mel/kept-entries.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { type OperatorSettings, settingsOf } from '../people/operator-settings.js';
import { BothJudges } from './both-judges.js';
import { changed, NO_CHANGES, type Changes } from './changes.js';
import type { Proposal } from './readable-gates.js';
import { onRoute } from './route-facts.js';
import { loadSituation } from './situation-loader.js';
import { stationFacts, stationNames } from './station-book.js';

export interface Question {
  aircraftId: string;
  flightId: string | null;
  at?: string;
  proposals?: readonly Proposal[];
  changes?: Changes;
  /** The open defects, when they were read already in this transaction. */
  opened?: readonly OpenedDefect[];
}

const MAY_BE_HELPED = new Set<Verdict['verdict']>(['may-not-fly', 'not-settled']);

/** Answers "may it fly?" from what is stored. */
@Injectable()
export class DispatchService {
  constructor(
    private readonly shelf: MelShelf,
    private readonly judges: BothJudges,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
  ) {}

  async answer(tx: Tx, question: Question): Promise<Verdict> {
    const { aircraft, flight, settings } = await this.about(tx, question);
    return this.judgeNow(tx, aircraft, flight, settings, question);
  }

  /**
   * The answer to what is tried, perhaps on a flight that is planned for another aircraft. Where changes are tried and it is
   * not yes: with what would help then.
   */
  async tryOut(tx: Tx, question: Question): Promise<Verdict & { helps?: WhatHelps & { at: string } }> {
    const { aircraft, flight, settings } = await this.about(tx, question, true);
    const { mel, tried, verdict } = await this.judged(tx, aircraft, flight, settings, question);
    if (question.changes === undefined || !MAY_BE_HELPED.has(verdict.verdict)) return verdict;
    return { ...verdict, helps: { at: tried.at, ...(await whatHelps(mel, tried, verdict)) } };
  }

  async judgeNow(
    tx: Tx,
    aircraft: AircraftRow,
    flight: FlightRow | null,
    settings: OperatorSettings,
    question: Partial<Question>,
  ): Promise<Verdict> {
    return (await this.judged(tx, aircraft, flight, settings, question)).verdict;
  }

  private async about(tx: Tx, { aircraftId, flightId }: Question, instead = false) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    if (aircraft.retiredAt !== null) throw retired(aircraft);
    const flight =
      flightId === null ? null : await (instead ? anyFlightOr404(tx, flightId) : flightOr404(tx, aircraft, flightId));
    return { aircraft, flight, settings: await this.settings(tx) };
  }

  private async judged(
    tx: Tx,
    aircraft: AircraftRow,
    flight: FlightRow | null,
    settings: OperatorSettings,
    { at = this.now(), proposals = [], changes = NO_CHANGES, opened }: Partial<Question>,
  ): Promise<{ mel: Mel; tried: Situation; verdict: Verdict }> {
    const fixed = changes.fix;
    const asked = { aircraft, flight, at, settings, proposals, fixed, ...(opened ? { opened } : {}) };
    const { situation, opened: open } = await loadSituation(tx, asked);
    const tries = [...proposals, ...changes.broken];
    const mel = await this.melFor(tx, aircraft, rowsOf(open), tries);
    const flown =
      flight === null || flight.aircraftId === aircraft.id ? situation : await onRoute(tx, situation, flight);
    const tried = await atItsStation(tx, mel, changed(flown, changes, mel), aircraft);
    // What is tried without a row is judged under the best one there is.
    const lacksRow = changes.broken.some(({ row }) => row === undefined);
    const verdict = lacksRow ? (await propose(mel, tried)).verdict : await this.judges.judge(mel, tried);
    return { mel, tried, verdict };
  }

  /** The question to ask next about what stands, and what after each reply. */
  async questions(tx: Tx, aircraftId: string, flightId: string | null): Promise<QuestionPlan> {
    const { mel, situation } = await this.standing(tx, aircraftId, flightId);
    return planQuestions(mel, situation);
  }

  /** What would help where the answer is no, or not settled: other rows, the least to fix, why each row is refused. */
  async whatHelps(tx: Tx, aircraftId: string, flightId: string | null): Promise<WhatHelps & { at: string }> {
    const { mel, situation } = await this.standing(tx, aircraftId, flightId);
    const verdict = await this.judges.judge(mel, situation);
    return { at: situation.at, ...(await whatHelps(mel, situation, verdict)) };
  }

  /** As it stands now, with nothing tried. */
  private async standing(tx: Tx, aircraftId: string, flightId: string | null) {
    const aircraft = await aircraftOr404(tx, aircraftId);
    const flight = flightId === null ? null : await flightOr404(tx, aircraft, flightId);
    const settings = await this.settings(tx);
    const asked = { aircraft, flight, at: this.now(), settings, proposals: [] };
    const { situation, opened } = await loadSituation(tx, asked);
    const mel = await this.melFor(tx, aircraft, rowsOf(opened));
    return { mel, situation: await atItsStation(tx, mel, situation, aircraft) };
  }

  /**
   * The MEL that an aircraft is judged by: the one in force, with the entries of open deferrals as they were signed.
   * @param tried rows that nobody signed yet
   * @throws Problem when no MEL is in force for the type
   */
  async melFor(
    tx: Tx,
    { id, type }: AircraftRow,
    open?: readonly DefectRow[],
    tried: readonly RowTried[] = [],
  ): Promise<Mel> {
    const shelved = await this.shelf.inForce(tx, type);
    if (!shelved) throw new Problem('row-not-available', `No MEL is in force for the type ${type}.`);
    const kept = keptEntries(open ?? (await tx.defects.open(id)), tried, shelved.revision.id);
    return kept.size === 0 ? shelved.mel : this.shelf.keeping(tx, shelved, kept);
  }

  async settings(tx: Tx): Promise<OperatorSettings> {
    return settingsOf(await tx.operators.current(), this.tzdb);
  }
}

/** Who is at a station says something of a departure; without a flight nobody is asked for. */
async function atItsStation(tx: Tx, mel: Mel, situation: Situation, { type }: AircraftRow): Promise<Situation> {
  if (situation.flight === null) return situation;
  const [facts, names] = await Promise.all([stationFacts(tx, type), stationNames(tx)]);
  return atStation(mel, situation, facts, names);
}

function rowsOf(opened: readonly OpenedDefect[]): DefectRow[] {
  return opened.map(({ row }) => row);
}

export async function aircraftOr404(tx: Tx, id: string): Promise<AircraftRow> {
  const aircraft = await tx.aircraft.get(id);
  if (!aircraft) throw new Problem('not-found', `There is no aircraft ${id} here.`);
  return aircraft;
}

async function anyFlightOr404(tx: Tx, id: string): Promise<FlightRow> {
  const flight = await tx.flights.get(id);
  if (!flight) throw new Problem('not-found', `There is no flight ${id} here.`);
  return flight;
}

export async function flightOr404(tx: Tx, aircraft: AircraftRow, id: string): Promise<FlightRow> {
  const flight = await tx.flights.get(id);
  if (!flight || flight.aircraftId !== aircraft.id) {
    throw new Problem('not-found', `There is no flight ${id} of ${aircraft.registration} here.`);
  }
  return flight;
}
