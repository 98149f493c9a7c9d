/** Documents of authorities as the reasoner takes them, with how many of their flights are used before the one asked for. */
import { deadlineOf, type DefectLife, type GrantTerms } from '#deferrals';
import type { GrantInForce, JudgeSettings } from '#dispatch';
import type { AircraftRow, FlightRow, LegRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';

/** A flight, planned or flown, as far as it may use a document up. */
export interface UsesUp {
  id: string;
  offBlockAt: string;
  onBlockAt: string | null;
  flown: boolean;
  /** The kind that its plan says. */
  kind: unknown;
}

/** What this aircraft flies while a document of an open defect is good; nothing is read where there is none. */
export async function flightsUnderGrants(
  tx: Tx,
  aircraft: AircraftRow,
  defects: readonly OpenedDefect[],
): Promise<UsesUp[]> {
  const grants = defects.flatMap(({ life }) => life.grants);
  if (grants.length === 0) return [];
  const from = inUtc(grants.map((grant) => grant.from)).reduce((one, other) => (one < other ? one : other));
  const until = inUtc(grants.map((grant) => grant.until)).reduce((one, other) => (one > other ? one : other));
  const flights = await tx.flights.between([aircraft.id], from, until);
  const legs = await tx.legs.flown(aircraft.id, from, until);
  return [...flights.map((flight) => plannedOrFlown(flight, legs)), ...unplanned(legs, flights)];
}

function plannedOrFlown({ id, offBlockAt, onBlockAt, state, facts }: FlightRow, legs: readonly LegRow[]): UsesUp {
  const flown = state === 'flown' || legs.some(({ flightId, ending }) => flightId === id && ending !== 'ramp');
  return { id, offBlockAt, onBlockAt, flown, kind: facts['flight.kind'] };
}

function unplanned(legs: readonly LegRow[], flights: readonly FlightRow[]): UsesUp[] {
  const planned = new Set(flights.map(({ id }) => id));
  return legs
    .filter(({ flightId, ending }) => ending !== 'ramp' && (flightId === null || !planned.has(flightId)))
    .map(({ id, offBlockAt, onBlockAt }) => ({ id, offBlockAt, onBlockAt, flown: true, kind: undefined }));
}

/** The documents entered for a defect, each with the flights that were flown under it or are planned to be before this one. */
export function grantsInForce(
  life: DefectLife,
  flights: readonly UsesUp[],
  asked: Pick<FlightRow, 'id' | 'offBlockAt'> | null,
  expiryInFlight: JudgeSettings['expiryInFlight'],
): GrantInForce[] {
  const { endsAt } = deadlineOf(life.limits);
  const late = flights.filter((flight) => flight.id !== asked?.id && isPast(flight, endsAt, expiryInFlight));
  return life.grants.map((grant) => {
    const { document, limit, from, until, flights: good, kindsOfFlight } = grant;
    const used = late.filter((flight) => usesUp(flight, grant, asked?.offBlockAt ?? null)).length;
    return { document, limit, from, until, flights: good, kindsOfFlight, flightsUsed: used };
  });
}

/** Without a fixed end nobody knows which flights were still inside, so all of them are taken to be past it. */
function isPast(
  { offBlockAt, onBlockAt }: UsesUp,
  endsAt: string | null,
  expiryInFlight: JudgeSettings['expiryInFlight'],
): boolean {
  if (endsAt === null) return true;
  const must = expiryInFlight === 'arrival-inside' ? (onBlockAt ?? offBlockAt) : offBlockAt;
  return Date.parse(must) >= Date.parse(endsAt);
}

/** A flight flown past the deadline used the document, whatever kind it was; a plan uses it if it may. */
function usesUp(flight: UsesUp, { from, until, kindsOfFlight }: GrantTerms, beforeAt: string | null): boolean {
  const leaves = Date.parse(flight.offBlockAt);
  if (leaves < Date.parse(from) || leaves >= Date.parse(until)) return false;
  if (flight.flown) return true;
  if (beforeAt === null || leaves > Date.parse(beforeAt)) return false;
  return kindsOfFlight === null || typeof flight.kind !== 'string' || kindsOfFlight.includes(flight.kind);
}

function inUtc(instants: readonly string[]): string[] {
  return instants.map((at) => new Date(at).toISOString());
}
