/** Turns the week of flights into instants and facts, from the day it is loaded. */
import { readInstant, rectificationWindow, writeInstant } from '#intervals';
import type { FactSet, FlightData, RouteData, Seed, SeedTime } from './seed-files.js';

/** A flight with its times as instants (UTC) and every fact that the files give it. */
export interface SeedFlight {
  id: string;
  number: string;
  /** Mark of the aircraft. */
  aircraft: string;
  from: string;
  to: string;
  offBlockAt: string;
  onBlockAt: string;
  flightMinutes: number;
  facts: FactSet;
}

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/**
 * The instant of a seed time (UTC); `dayZero` is YYYY-MM-DD. A clock reading is read as a record in the log is: local to
 * its zone, the earlier of two, and the nearest on that day where the clocks left it out.
 */
export const instantOf = ({ day, time, station }: SeedTime, dayZero: string, seed: Seed): string => {
  const { zone } = found(seed.operator.stations, ({ code }) => code === station, `station ${station}`);
  const on = new Date(Date.parse(`${dayZero}T00:00Z`) + day * DAY).toISOString().slice(0, 10);
  // No length of any interval is asked, so the version of the zone data is no matter.
  const { recordedAt } = rectificationWindow({ category: 'B', recordedAt: `${on}T${time}`, base: zone, tzdb: 'any' });
  return writeInstant(readInstant('recordedAt', recordedAt));
};

const later = (instant: string, minutes: number): string =>
  `${new Date(Date.parse(instant) + minutes * MINUTE).toISOString().slice(0, 19)}Z`;

/** Every flight of every rotation, in the order of the file. */
export const plannedFlights = (seed: Seed, dayZero: string): SeedFlight[] =>
  seed.flights.rotations.flatMap(({ aircraft, flights }) =>
    flights.map((flight) => plannedFlight(seed, dayZero, aircraft, flight)),
  );

function plannedFlight(seed: Seed, dayZero: string, aircraft: string, flight: FlightData): SeedFlight {
  const { id, number, day, off, route: routeId } = flight;
  const route = found(seed.flights.routes, (one) => one.id === routeId, `route ${routeId}`);
  const offBlockAt = instantOf({ day, time: off, station: route.from }, dayZero, seed);
  const onBlockAt = later(offBlockAt, route.blockMinutes);
  const { from, to, flightMinutes } = route;
  const facts = factsOf(seed, aircraft, flight, route);
  return { id, number, aircraft, from, to, offBlockAt, onBlockAt, flightMinutes, facts };
}

/** Later parts override earlier ones, as flights.yaml says. */
function factsOf({ fleet, flights }: Seed, mark: string, flight: FlightData, route: RouteData): FactSet {
  const { operator } = found(fleet.aircraft, (one) => one.mark === mark, `aircraft ${mark}`);
  return {
    ...flights.defaults[operator],
    ...flights.departing[route.from],
    ...route.facts,
    ...setsOf(flights, flight.with ?? []),
    ...flight.facts,
  };
}

function setsOf({ sets }: Seed['flights'], names: readonly string[]): FactSet {
  const chosen = names.map((name) => found(Object.entries(sets), ([one]) => one === name, `fact set ${name}`)[1]);
  return Object.assign({}, ...chosen) as FactSet;
}

function found<T>(list: readonly T[], is: (one: T) => boolean, what: string): T {
  const one = list.find(is);
  if (one === undefined) throw new Error(`the seed names ${what}, which stands in none of its files`);
  return one;
}
