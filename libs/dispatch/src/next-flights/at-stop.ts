/**
 * The situation at one stop of the plan: one flight about to leave, with what its station has.
 *
 * Whether work can be done is a question about one stop. A record that names a flight is about the stop before that
 * flight, one that names none about the first stop; afterwards it is asked anew.
 */
import type { Mel } from '#mel';
import { millisOf } from '../frame/moment.js';
import { Fitted } from '../units/fitted.js';
import type { PlannedFlight, Situation, WorkState } from '../situation.js';
import type { StationFacts, StationNames } from './next-flights.js';
import { maintenanceWork } from './maintenance-work.js';

export const PERSON = 'flight.authorisedPersonAtStation';

export interface Stops {
  mel: Mel;
  fitted: Fitted;
  stations: readonly StationFacts[];
  names: StationNames;
}

export function stopsOf(
  mel: Mel,
  { aircraft }: Situation,
  stations: readonly StationFacts[],
  names: StationNames = new Map(),
): Stops {
  return { mel, fitted: new Fitted(mel, aircraft), stations, names };
}

/** As people call it, with its code, such as "Hathing Moor (QHT)"; the code alone where nobody gave the name. */
export function sayStation({ names }: Pick<Stops, 'names'>, code: string): string {
  const name = names.get(code);
  return name === undefined || name === code ? code : `${name} (${code})`;
}

/** The situation of one flight with what is known of the station it leaves from. */
export function atStation(
  mel: Mel,
  situation: Situation,
  stations: readonly StationFacts[],
  names?: StationNames,
): Situation {
  const { flight } = situation;
  return flight === null ? situation : atStop(stopsOf(mel, situation, stations, names), situation, flight, true);
}

export function atStop(stops: Stops, flown: Situation, flight: PlannedFlight, isFirst: boolean): Situation {
  const work = flown.work.filter((record) => isAboutStop(record, flight, isFirst));
  const maintenance = maintenanceAt(stops, flown, flight);
  if (maintenance === undefined) return { ...flown, flight, work };
  const { source = `what is known of ${sayStation(stops, flight.from)}`, until } = coverAt(stops, flight) ?? {};
  const person = { [PERSON]: { value: maintenance, source, ...(until === undefined ? {} : { validUntil: until }) } };
  const facts = PERSON in flown.facts ? { ...flight.facts } : { ...person, ...flight.facts };
  return {
    ...flown,
    flight: { ...flight, facts },
    work: maintenance === true ? work : [...work, ...cannot(stops, flown, flight, maintenance)],
  };
}

/**
 * True, false, or null when nobody knows; undefined when nothing is said of the station. A person sent there counts, and
 * so does what somebody answered about this one departure.
 */
export function maintenanceAt(stops: Stops, { facts }: Situation, flight: PlannedFlight): boolean | null | undefined {
  const given = flight.facts?.[PERSON] ?? facts[PERSON];
  const sent = typeof given === 'object' && given !== null ? given.value : given;
  return sent === true ? true : coverAt(stops, flight)?.maintenance;
}

/** What holds at the departure: somebody there the longest first, then nobody there, then not known. */
function coverAt({ stations }: Stops, { from, offBlockAt }: PlannedFlight): StationFacts | undefined {
  const leaves = millisOf('offBlockAt', offBlockAt);
  const holding = stations.filter(
    (one) =>
      one.station === from &&
      (one.from === undefined || millisOf('station.from', one.from) <= leaves) &&
      (one.until === undefined || leaves < millisOf('station.until', one.until)),
  );
  return holding.toSorted((a, b) => rank(b) - rank(a) || lasts(b) - lasts(a))[0];
}

function rank({ maintenance }: StationFacts): number {
  return maintenance === true ? 2 : maintenance === false ? 1 : 0;
}

function lasts({ until }: StationFacts): number {
  return until === undefined ? Number.MAX_SAFE_INTEGER : millisOf('station.until', until);
}

function isAboutStop({ doneAt, forFlight }: WorkState, flight: PlannedFlight, isFirst: boolean): boolean {
  if (doneAt !== undefined) return true;
  return forFlight === undefined ? isFirst : forFlight === flight.id;
}

function cannot(
  { mel, fitted, names }: Stops,
  { defects }: Situation,
  { from, id }: PlannedFlight,
  maintenance: false | null,
): WorkState[] {
  const at = sayStation({ names }, from);
  const because =
    maintenance === false
      ? `nobody authorised and equipped is at ${at}`
      : `whether somebody authorised and equipped is at ${at} is not known`;
  return maintenanceWork(mel, fitted, defects).map((work) => ({
    ...work,
    forFlight: id,
    possible: maintenance === false ? false : null,
    because,
  }));
}
