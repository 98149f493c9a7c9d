import { Inject, Injectable } from '@nestjs/common';
import { type AircraftRow, lockAircraft, type Tx } from '#store';
import { Problem } from '../../http/problem.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock } from '../../http/tokens.js';
import { flightsNear } from '../flights-near.js';
import { faultsBetween, faultsOfLine, isPlannedSo, type Known, knownOf, type Planned } from './plan-faults.js';
import { type Fault, type PlannedLine, readPlan } from './read-plan.js';

const MOST_TOLD = 40;

/** A whole list of flights is planned, or none of it. */
@Injectable()
export class FlightPlansService {
  constructor(@Inject(CLOCK) private readonly now: Clock) {}

  async plan(tx: Tx, session: Session, text: string) {
    const { lines, faults } = readPlan(text);
    const known = await this.known(tx, lines);
    const found = lines.flatMap((line) => faultsOfLine(line, known));
    refuse([...faults, ...found]);
    const fresh = lines.flatMap((line) => asPlanned(line, known));
    const kept = lines.length - fresh.length;
    refuse(faultsBetween(lines, known));
    for (const one of fresh) await this.add(tx, session, one);
    const aircraft = [...new Set(fresh.map((one) => one.aircraft))];
    for (const one of aircraft) await tx.aircraft.touch(one);
    return { planned: fresh.length, kept, aircraft: aircraft.map(({ id, registration }) => ({ id, registration })) };
  }

  /**
   * A list is checked against the whole fleet, so lists come one after the other. Aircraft are held in one order, so that
   * nobody who holds several waits for somebody who waits for them.
   */
  private async known(tx: Tx, lines: readonly PlannedLine[]): Promise<Known> {
    await tx.flights.holdLists();
    const named = new Set(lines.map(({ registration }) => registration));
    const fleet = (await tx.aircraft.list()).toSorted((a, b) => (a.id < b.id ? -1 : 1));
    const held: AircraftRow[] = [];
    for (const { id, registration } of fleet) {
      const row = named.has(registration) ? await lockAircraft(tx, id) : null;
      if (row !== null) held.push(row);
    }
    const now = this.now();
    const ids = fleet.map(({ id }) => id);
    const near = await flightsNear(tx, ids, lines, now);
    const stations = new Set((await tx.operators.stations()).map(({ code }) => code));
    return knownOf({ now, stations, aircraft: held, fleet }, near);
  }

  private async add(tx: Tx, { personId }: Session, { aircraft, line }: Planned): Promise<void> {
    const { id: aircraftId, registration } = aircraft;
    const { number, from: fromStation, to: toStation, offBlockAt, onBlockAt } = line;
    const flight = { number, fromStation, toStation, offBlockAt, onBlockAt, flightMinutes: null };
    const id = await tx.flights.add({ aircraftId, ...flight });
    const now = this.now();
    await tx.record.append({
      who: personId,
      authorisation: null,
      organisation: null,
      what: 'flight.planned',
      aircraft: { id: aircraftId, registration },
      times: { recordedAt: now, enteredAt: now },
      payload: { id, ...flight },
    });
  }
}

/** Nothing for a flight that is planned just so already. */
function asPlanned(line: PlannedLine, known: Known): Planned[] {
  const aircraft = known.aircraft.get(line.registration);
  return aircraft === undefined || isPlannedSo(line, known) ? [] : [{ aircraft, line }];
}

function refuse(faults: readonly Fault[]): void {
  if (faults.length === 0) return;
  const told = faults.slice(0, MOST_TOLD).map((reason) => ({ pointer: '/text', reason }));
  const more = faults.length - told.length;
  throw new Problem(
    'invalid-input',
    `${faults.length === 1 ? 'One thing is' : `${faults.length} things are`} not right in the list; nothing of it was planned.`,
    { errors: more > 0 ? [...told, { pointer: '/text', reason: `and ${more} more` }] : told },
  );
}
