/**
 * What an aircraft flew, in one place for everything that counts.
 *
 * Legs told by movement messages, or entered by a person, are what was flown. A planned flight marked as flown counts
 * only where no leg speaks of it: none is linked to it and none lies in its time. So the first message about an aircraft
 * takes nothing away from what was used before it came, and no flight is counted twice.
 */
import type { Departure } from '#deferrals';
import type { Leg } from '#intervals';
import type { FlightRow, LegRow, Tx } from '#store';
import { grouped } from '../defects/grouped.js';
import { legsWithEngines } from './engines/counts-of-engines.js';
import { overlap } from './leg-content.js';

const DAY = 86_400_000;

/**
 * In the order flown, with what engines used beside them. Legs from two days before `from` on, so that one under way then
 * is among them.
 */
export async function flownLegs(tx: Tx, aircraftId: string, from: string): Promise<Leg[]> {
  return legsWithEngines(tx, aircraftId, from, (first) => movedLegs(tx, aircraftId, first));
}

/** The same without the engines by themselves. */
export async function movedLegs(tx: Tx, aircraftId: string, from: string): Promise<Leg[]> {
  return (await flownDepartures(tx, aircraftId, from)).map(({ leg }) => leg);
}

/** The same, each with the flight and the station that it left. */
export async function flownDepartures(tx: Tx, aircraftId: string, from: string): Promise<Departure[]> {
  const told = await tx.legs.flown(aircraftId, twoDaysBefore(from));
  return departuresOf(told, await tx.flights.flown(aircraftId, from));
}

/** What each of these aircraft flew, in three questions where nothing is stated of engines. @param from by aircraft */
export async function flownLegsOfAll(tx: Tx, from: ReadonlyMap<string, string>): Promise<Map<string, Leg[]>> {
  const ids = [...from.keys()];
  const [first] = [...from.values()].toSorted();
  if (first === undefined) return new Map();
  const told = grouped(await tx.legs.flownByAll(ids, twoDaysBefore(first)), ofAircraft);
  const planned = grouped(await tx.flights.flownByAll(ids, first), ofAircraft);
  const flown = new Map(
    [...from].map(([id, since]) => {
      const legs = (told.get(id) ?? []).filter(({ offBlockAt }) => offBlockAt >= twoDaysBefore(since));
      const flights = (planned.get(id) ?? []).filter(({ offBlockAt }) => offBlockAt >= since);
      return [id, departuresOf(legs, flights).map(({ leg }) => leg)];
    }),
  );
  // Where somebody stated something of an engine, older legs may be needed: those aircraft are read by themselves.
  for (const id of await tx.engineCounts.statedOf(ids)) flown.set(id, await flownLegs(tx, id, from.get(id) ?? first));
  return flown;
}

function departuresOf(told: readonly LegRow[], planned: readonly FlightRow[]): Departure[] {
  const untold = planned.filter((flight) => !told.some((leg) => leg.flightId === flight.id || overlap(leg, flight)));
  const departures = [
    ...told.map((row) => ({ flight: row.flightId, from: row.fromStation, flown: true, leg: legOfRow(row) })),
    ...untold.map((row) => ({ ...plannedDeparture(row), flown: true })),
  ];
  return departures.sort((one, other) => (one.leg.offBlockAt < other.leg.offBlockAt ? -1 : 1));
}

function ofAircraft({ aircraftId }: LegRow | FlightRow): string {
  return aircraftId;
}

function twoDaysBefore(from: string): string {
  return new Date(Date.parse(from) - 2 * DAY).toISOString();
}

export function plannedDeparture(flight: FlightRow): Departure {
  return { flight: flight.id, from: flight.fromStation, flown: false, leg: legOfPlan(flight) };
}

export function legOfRow(row: LegRow): Leg {
  const { offBlockAt, airborneAt, landedAt, onBlockAt, blockMinutes, flightMinutes, cycles, landings } = row;
  const { fromStation: from, toStation: to } = row;
  return {
    from,
    to,
    offBlockAt,
    ...(airborneAt === null ? {} : { airborneAt }),
    ...(landedAt === null ? {} : { landedAt }),
    ...(onBlockAt === null ? {} : { onBlockAt }),
    blockMinutes,
    flightMinutes,
    cycles,
    landings,
  };
}

/**
 * Where the plan holds no airborne minutes they are taken as the block's, so that they are not understated. Nobody tells
 * when it landed: no later than it was on the blocks, so that a flight which ended before a count began uses nothing of
 * it.
 */
export function legOfPlan({
  offBlockAt,
  onBlockAt,
  flightMinutes,
  fromStation: from,
  toStation: to,
}: FlightRow): Leg {
  const block = onBlockAt === null ? 0 : Math.round((Date.parse(onBlockAt) - Date.parse(offBlockAt)) / 60_000);
  const minutes = flightMinutes ?? block;
  return {
    from,
    to,
    offBlockAt,
    ...(onBlockAt === null ? {} : { onBlockAt, landedAt: onBlockAt }),
    blockMinutes: Math.max(block, minutes),
    flightMinutes: minutes,
    cycles: 1,
    landings: 1,
  };
}
