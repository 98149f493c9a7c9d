import { Inject, Injectable } from '@nestjs/common';
import { type AircraftRow, lockAircraft, type Tx } from '#store';
import { Problem } from '../../http/problem.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock } from '../../http/tokens.js';
import { flightLine } from '../flight-line.js';
import { flightsNear, LONGEST_MS, overlaps, type Span } from '../flights-near.js';
import type { FlightBody, ServiceBody } from './bodies.js';
import { refusedField } from './refused-field.js';
import { retired } from './retired.js';

/** The most that one answer lists; what stands behind them counts all the same. */
const MOST_LISTED = 1000;

/** Flights planned for an aircraft, as somebody enters them one by one, and those that are cancelled. */
@Injectable()
export class FlightEntriesService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async list(tx: Tx, aircraftId: string) {
    const aircraft = await tx.aircraft.get(aircraftId);
    if (!aircraft) throw none(aircraftId);
    const stations = await tx.operators.stations();
    const planned = await tx.flights.planned(aircraftId, this.now(), MOST_LISTED + 1);
    const flights = planned.slice(0, MOST_LISTED).map((flight) => flightLine(flight, stations));
    return { registration: aircraft.registration, flights, hasMore: planned.length > MOST_LISTED };
  }

  async plan(tx: Tx, session: Session, aircraftId: string, body: FlightBody) {
    const aircraft = await held(tx, aircraftId);
    if (aircraft.retiredAt !== null) throw retired(aircraft);
    const stations = await tx.operators.stations();
    for (const end of ['from', 'to'] as const) {
      if (!stations.some(({ code }) => code === body[end])) {
        throw refusedField(`/${end}`, `there is no station ${body[end]}; enter it first`);
      }
    }
    const [offBlockAt, onBlockAt] = [body.offBlockAt, body.onBlockAt].map((at) => new Date(at).toISOString());
    if (offBlockAt === undefined || onBlockAt === undefined) throw new Error('A flight has two ends.');
    const minutes = (Date.parse(onBlockAt) - Date.parse(offBlockAt)) / 60_000;
    if (minutes <= 0) throw refusedField('/onBlockAt', 'it would arrive before it leaves');
    if (minutes * 60_000 > LONGEST_MS) throw refusedField('/onBlockAt', 'a flight of more than 24 hours is none');
    if ((body.flightMinutes ?? 0) > minutes) throw refusedField('/flightMinutes', 'is longer than block to block');
    if (offBlockAt <= this.now())
      throw refusedField('/offBlockAt', 'lies in the past; what was flown is entered as a leg');
    await this.refuseOverlap(tx, aircraft, { offBlockAt, onBlockAt });
    const { number, from, to, flightMinutes = null } = body;
    const ends = { fromStation: from, toStation: to, offBlockAt, onBlockAt };
    const id = await tx.flights.add({ aircraftId, number, ...ends, flightMinutes });
    await this.done(tx, session, aircraft, 'flight.planned', { id, number, ...ends, flightMinutes });
    const flight = await tx.flights.get(id);
    if (!flight) throw new Error(`Flight ${id} was planned and is not there.`);
    return { flight: flightLine(flight, stations) };
  }

  async cancel(tx: Tx, session: Session, aircraftId: string, id: string, { reason }: ServiceBody) {
    const aircraft = await held(tx, aircraftId);
    const flight = await tx.flights.plannedStill(id, aircraftId, this.now());
    if (!flight)
      throw new Problem('not-found', `No flight ${id} is planned for ${aircraft.registration} from now on.`);
    await tx.flights.change(id, flight.version, { state: 'cancelled' });
    await this.done(tx, session, aircraft, 'flight.cancelled', { id, number: flight.number, reason });
    return { flight: flightLine(flight, await tx.operators.stations()) };
  }

  /** An aircraft is in one place at a time, and one that left is nowhere else until it is on blocks. */
  private async refuseOverlap(tx: Tx, { id, registration }: AircraftRow, wanted: Span): Promise<void> {
    const { holding } = await flightsNear(tx, [id], [wanted], this.now());
    const other = holding.find((one) => overlaps(one, wanted));
    if (!other) return;
    throw refusedField('/offBlockAt', `${registration} is on flight ${other.number} then, from ${other.offBlockAt}`);
  }

  private async done(tx: Tx, { personId }: Session, aircraft: AircraftRow, what: string, payload: object) {
    await tx.aircraft.touch(aircraft);
    const now = this.now();
    const { id, registration } = aircraft;
    await tx.record.append({
      who: personId,
      authorisation: null,
      organisation: null,
      what,
      aircraft: { id, registration },
      times: { recordedAt: now, enteredAt: now },
      payload,
    });
  }
}

async function held(tx: Tx, id: string): Promise<AircraftRow> {
  const aircraft = await lockAircraft(tx, id);
  if (!aircraft) throw none(id);
  return aircraft;
}

const none = (id: string): Problem => new Problem('not-found', `There is no aircraft ${id} here.`);
