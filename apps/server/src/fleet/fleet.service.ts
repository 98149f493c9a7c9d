import { Inject, Injectable } from '@nestjs/common';
import { type GlanceAhead, VERDICT_WORDS, type Verdict, type VerdictCode } from '#dispatch';
import type { AircraftRow, FlightRow, StationRow, Tx } from '#store';
import { DefectViews, endOf } from '../defects/defect-views.service.js';
import { type DefectLine, leftLine } from '../defects/views.js';
import { aircraftOr404, DispatchService } from '../dispatch/dispatch.service.js';
import { FLIGHTS_AHEAD, NextFlightsService } from '../dispatch/next-flights.service.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import { MelShelf } from '../mel/mel-shelf.js';
import { acceptancesFor } from '../accepting/acceptances-for.js';
import { flightLine } from './flight-line.js';
import { whyInOneLine } from './why-in-one-line.js';

/** So many aircraft are asked about together: their questions go out in one turn, and wait for each other's answers once. */
const AT_ONCE = 20;

/** The fleet as maintenance control sees it, and one aircraft as the technician at the gate does. */
@Injectable()
export class FleetService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
    private readonly ahead: NextFlightsService,
    private readonly views: DefectViews,
    private readonly shelf: MelShelf,
  ) {}

  async fleet(tx: Tx) {
    const stations = await tx.operators.stations();
    const lines = [];
    const fleet = await tx.aircraft.inService();
    for (let first = 0; first < fleet.length; first += AT_ONCE) {
      const some = fleet.slice(first, first + AT_ONCE);
      lines.push(...(await Promise.all(some.map((aircraft) => this.fleetLine(tx, aircraft, stations)))));
    }
    const { deferral } = await this.dispatch.settings(tx);
    return { at: this.now(), base: deferral.base, aircraft: lines };
  }

  async aircraft(tx: Tx, id: string) {
    const aircraft = await aircraftOr404(tx, id);
    const stations = await tx.operators.stations();
    const flights = await tx.flights.planned(aircraft.id, this.now(), FLIGHTS_AHEAD);
    const shelved = await this.shelf.inForce(tx, aircraft.type);
    const defects = await tx.defects.open(aircraft.id);
    const left = await tx.register.ofAircraft(aircraft.id);
    const { registration, type, serial, configuration, version } = aircraft;
    return {
      at: this.now(),
      id,
      registration,
      type,
      serial,
      configuration,
      version,
      mel: shelved
        ? {
            document: shelved.revision.document,
            revision: shelved.revision.revision,
            effectiveOn: shelved.revision.effectiveOn,
            notice: shelved.mel.content.notice ?? null,
          }
        : null,
      items: await this.views.ofAircraft(tx, aircraft),
      left: left.map((item) => leftLine(item, aircraft, defects)),
      flights: flights.map((flight) => flightLine(flight, stations)),
    };
  }

  private async fleetLine(tx: Tx, aircraft: AircraftRow, stations: readonly StationRow[]) {
    const items = await this.views.ofAircraft(tx, aircraft);
    const planned = await tx.flights.planned(aircraft.id, this.now(), FLIGHTS_AHEAD);
    return {
      id: aircraft.id,
      registration: aircraft.registration,
      type: aircraft.type,
      openItems: items.length,
      unanswered: items.filter(({ state }) => state === 'unanswered').length,
      leftOnAircraft: (await tx.register.ofAircraft(aircraft.id)).length,
      nextDeadline: nextDeadline(items),
      ...(await this.flightsOf(tx, aircraft, planned, stations)),
    };
  }

  private async flightsOf(
    tx: Tx,
    aircraft: AircraftRow,
    planned: readonly FlightRow[],
    stations: readonly StationRow[],
  ) {
    const [next] = planned;
    if (next === undefined) return { nextFlight: null, ahead: null };
    const settings = await this.dispatch.settings(tx);
    const { ahead, opened } = await this.ahead.glance(tx, aircraft, planned, settings);
    return {
      nextFlight: {
        flight: flightLine(next, stations),
        accepted: await acceptancesFor(tx, aircraft, next, this.now()),
        ...(await this.dispatch.judgeNow(tx, aircraft, next, settings, { opened }).then(told, untold)),
      },
      ahead: glanced(ahead, planned, stations),
    };
  }
}

function glanced(
  { flights, kept, possible }: GlanceAhead,
  planned: readonly FlightRow[],
  stations: readonly StationRow[],
) {
  const [broken, flight] = [flights[kept], planned[kept]];
  return {
    flights: flights.length,
    kept,
    possible,
    breaks:
      broken === undefined || flight === undefined
        ? null
        : { flight: flightLine(flight, stations), verdict: broken.verdict, words: VERDICT_WORDS[broken.verdict] },
  };
}

function told(verdict: Verdict) {
  return { verdict: verdict.verdict, words: verdict.words, why: whyInOneLine(verdict) };
}

/** One aircraft without an answer leaves the others theirs. */
function untold(thrown: unknown) {
  if (!(thrown instanceof Problem) || thrown.code !== 'judges-disagree') throw thrown;
  const verdict: VerdictCode = 'not-settled';
  return {
    verdict,
    words: VERDICT_WORDS[verdict],
    why: `Two ways of computing the answer disagree. ${thrown.message}`,
  };
}

function nextDeadline(items: readonly DefectLine[]) {
  const ending = items.filter(({ deadline }) => deadline?.endsAt || deadline?.counted);
  const first = ending.toSorted((one, other) => endOf(one).localeCompare(endOf(other)))[0];
  if (!first?.deadline) return null;
  return { defect: first.id, number: first.number, title: first.title, deadline: first.deadline };
}
