/**
 * The situation at one stop of the plan: one flight about to leave, with what its station has.
 *
 * Whether work can be done is a question about one stop. A record that names a flight is about the stop before that
 * flight, one that names none about the first stop; afterwards it is asked anew.
 */
import type { Mel } from '#mel';
import { Fitted } from '../units/fitted.js';
import type { PlannedFlight, Situation, WorkState } from '../situation.js';
import type { StationFacts } from './next-flights.js';
import { maintenanceWork } from './maintenance-work.js';

export const PERSON = 'flight.authorisedPersonAtStation';

export interface Stops {
  mel: Mel;
  fitted: Fitted;
  stations: ReadonlyMap<string, StationFacts>;
}

export function stopsOf(mel: Mel, { aircraft }: Situation, stations: readonly StationFacts[]): Stops {
  return { mel, fitted: new Fitted(mel, aircraft), stations: new Map(stations.map((one) => [one.station, one])) };
}

export function atStop(stops: Stops, flown: Situation, flight: PlannedFlight, isFirst: boolean): Situation {
  const work = flown.work.filter((record) => isAboutStop(record, flight, isFirst));
  const maintenance = maintenanceAt(stops, flown, flight);
  if (maintenance === undefined) return { ...flown, flight, work };
  const person = { [PERSON]: { value: maintenance, source: `what is known of ${flight.from}` } };
  const facts = PERSON in flown.facts ? { ...flight.facts } : { ...person, ...flight.facts };
  return {
    ...flown,
    flight: { ...flight, facts },
    work: maintenance === true ? work : [...work, ...cannot(stops, flown, flight, maintenance)],
  };
}

/** True, false, or null when nobody knows; undefined when nothing is said of the station. A person sent there counts. */
export function maintenanceAt(
  { stations }: Stops,
  { facts }: Situation,
  flight: PlannedFlight,
): boolean | null | undefined {
  const given = flight.facts?.[PERSON] ?? facts[PERSON];
  const sent = typeof given === 'object' && given !== null ? given.value : given;
  return sent === true ? true : stations.get(flight.from)?.maintenance;
}

function isAboutStop({ doneAt, forFlight }: WorkState, flight: PlannedFlight, isFirst: boolean): boolean {
  if (doneAt !== undefined) return true;
  return forFlight === undefined ? isFirst : forFlight === flight.id;
}

function cannot(
  { mel, fitted }: Stops,
  { defects }: Situation,
  { from, id }: PlannedFlight,
  maintenance: false | null,
): WorkState[] {
  const because =
    maintenance === false
      ? `nobody authorised and equipped is at ${from}`
      : `whether somebody authorised and equipped is at ${from} is not known`;
  return maintenanceWork(mel, fitted, defects).map((work) => ({
    ...work,
    forFlight: id,
    possible: maintenance === false ? false : null,
    because,
  }));
}
