import { Inject, Injectable } from '@nestjs/common';
import {
  nextFlights,
  proposeSwap,
  SwapInputError,
  type Rotation,
  type StandingAircraft,
  type SwapAnswer,
  type SwapProposal,
  type SwapQuestion,
} from '#dispatch';
import type { AircraftRow, FlightRow, Tx } from '#store';
import { loadDay } from '../dispatch/day-plan.js';
import { aircraftOr404, DispatchService } from '../dispatch/dispatch.service.js';
import { routeFacts } from '../dispatch/route-facts.js';
import { stationFacts } from '../dispatch/station-book.js';
import { FLIGHTS_AHEAD } from '../dispatch/next-flights.service.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import type { SpareBody, SwapBody } from './swap.body.js';

interface PlannedRotation {
  aircraft: AircraftRow;
  flights: FlightRow[];
}

/** Puts the question of a swap together: who stands where, what each aircraft could fly, and whom operations allow. */
@Injectable()
export class SwapService {
  constructor(
    private readonly dispatch: DispatchService,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async propose(tx: Tx, { aircraft: ids, allowed, spares = [] }: SwapBody) {
    const at = this.now();
    const rotations: PlannedRotation[] = [];
    for (const id of ids) {
      const aircraft = await aircraftOr404(tx, id);
      const flights = await tx.flights.planned(id, at, FLIGHTS_AHEAD);
      if (flights.length === 0)
        throw refused('/aircraft', `${aircraft.registration} has no planned flight: name it as standing by`);
      rotations.push({ aircraft, flights });
    }
    const standing = [...rotations.map((one) => standingOf(one, at)), ...(await spareAircraft(tx, spares, at))];
    const marks = new Map(standing.map(({ row }) => [row.id, row.registration]));
    const lists = new Map(allowed.map(({ flight, aircraft }) => [flight, aircraft]));
    const answers: SwapAnswer[] = [];
    for (const { row, place } of standing) {
      for (const rotation of rotations) {
        const isAllowed = rotation.flights.some(({ id }) => lists.get(id)?.includes(row.id));
        const standsThere = rotation.flights[0]?.fromStation === place.at;
        if (isAllowed && standsThere) answers.push(...(await this.answersFor(tx, row, rotation, at)));
      }
    }
    const proposal = await proposed({
      aircraft: standing.map(({ place }) => place),
      rotations: rotations.map((rotation) => rotationOf(rotation, lists, marks)),
      answers,
    });
    return told(proposal);
  }

  /** Flight by flight along the rotation, as if this aircraft flew it from now on. */
  private async answersFor(
    tx: Tx,
    aircraft: AircraftRow,
    rotation: PlannedRotation,
    at: string,
  ): Promise<SwapAnswer[]> {
    const settings = await this.dispatch.settings(tx);
    const mel = await this.dispatch.melFor(tx, aircraft);
    const asked = { aircraft, at, settings, proposals: [] };
    const { situation, flights } = await loadDay(tx, asked, rotation.flights, (flight) => routeFacts(tx, flight));
    const stations = await stationFacts(tx, aircraft.type);
    const ahead = await nextFlights(mel, situation, flights, { savingBudget: 0, stations });
    return ahead.flights.map(({ verdict }, index) => ({
      aircraft: aircraft.registration,
      flight: labelOf(rotation.flights[index]!),
      verdict: verdict.verdict,
      minutes: verdict.workMinutes,
      because: verdict.reasons[0] ?? '',
    }));
  }
}

function standingOf({ aircraft, flights }: PlannedRotation, readyAt: string) {
  return { row: aircraft, place: { id: aircraft.registration, at: flights[0]?.fromStation ?? '', readyAt } };
}

async function spareAircraft(tx: Tx, spares: readonly SpareBody[], at: string) {
  const found: { row: AircraftRow; place: StandingAircraft }[] = [];
  for (const { aircraft, at: station, readyAt = at } of spares) {
    const row = await aircraftOr404(tx, aircraft);
    found.push({ row, place: { id: row.registration, at: station, readyAt } });
  }
  return found;
}

function rotationOf(
  { aircraft, flights }: PlannedRotation,
  lists: ReadonlyMap<string, readonly string[]>,
  marks: ReadonlyMap<string, string>,
): Rotation {
  return {
    id: aircraft.id,
    planned: aircraft.registration,
    flights: flights.map((flight) => {
      const allowed = lists.get(flight.id)?.flatMap((id) => marks.get(id) ?? []);
      return {
        id: labelOf(flight),
        from: flight.fromStation,
        to: flight.toStation,
        offBlockAt: flight.offBlockAt,
        ...(allowed === undefined ? {} : { allowed }),
      };
    }),
  };
}

/** A number alone may come again the next day. */
function labelOf({ number, offBlockAt }: FlightRow): string {
  return `${number} of ${offBlockAt.slice(0, 16)}Z`;
}

async function proposed(question: SwapQuestion): Promise<SwapProposal> {
  try {
    return await proposeSwap(question);
  } catch (error) {
    if (error instanceof SwapInputError) throw refused('', error.message);
    throw error;
  }
}

function told(proposal: SwapProposal) {
  if (proposal.answer === 'proposed') {
    const { changedFlights } = proposal;
    const because =
      changedFlights === 0 ? 'All flights may be flown as planned.' : `${changedFlights} flights change aircraft.`;
    return { ...proposal, because };
  }
  if (proposal.answer === 'impossible') return proposal;
  return { ...proposal, flights: proposal.flights.map((flight) => ({ flight, because: [], couldBe: [] })) };
}

function refused(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}
