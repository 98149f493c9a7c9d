/** A small operator of a test's own: its people with what they may sign, its aircraft, its flights. */
import type { Privilege } from '#deferrals';
import type { Role } from '#mel';
import { createOperator, newId } from '#store';
import { hashSecret } from '../../apps/server/src/index.js';
import { demoSecret, type RunningServer } from '../support/running-server.js';

export interface PersonAsked {
  signIn: string;
  name: string;
  roles: Role[];
  privileges?: Privilege[];
  /** Absent: the type of the airline. */
  aircraftTypes?: string[];
  validUntil?: string;
}

export interface FlightAsked {
  number: string;
  aircraft: string;
  offBlockAt: string;
  onBlockAt: string;
  facts?: Record<string, unknown>;
}

export interface AirlineAsked {
  code: string;
  base: string;
  aircraftType: string;
  settings?: Record<string, unknown>;
  people: PersonAsked[];
  /** Marks. */
  aircraft: string[];
  flights?: FlightAsked[];
}

/** Ids by the names that were asked for. */
export interface Airline {
  operator: string;
  aircraft: Record<string, string>;
  flights: Record<string, string>;
}

const SINCE = '2020-01-01T00:00:00.000Z';
const STATIONS = ['QWA', 'QWB'] as const;

/** Enters it beside the server, as an administrator would; its MEL is loaded through the interface. */
export async function anAirline({ ownerUrl, store }: RunningServer, asked: AirlineAsked): Promise<Airline> {
  const { code, base, aircraftType, settings = {} } = asked;
  const operator = await createOperator(ownerUrl, { code, name: `Operator ${code}`, invented: true, base, settings });
  const hash = await hashSecret(demoSecret());
  const airline: Airline = { operator, aircraft: {}, flights: {} };
  await store.withOperator(operator, null, async (tx) => {
    const organisationId = await tx.people.addOrganisation({ name: `Works of ${code}`, approvalNumber: `Q.${code}` });
    for (const { signIn, name, roles, privileges = [], aircraftTypes = [aircraftType], validUntil } of asked.people) {
      const id = newId();
      await tx.people.add({ id, name, licenceNumber: `QX.${signIn}` });
      await tx.people.join({ personId: id, organisationId, roles, validFrom: SINCE });
      await tx.people.giveCredential(id, signIn, hash);
      const until = validUntil === undefined ? {} : { validUntil };
      const given = { number: `${code}-${signIn}`, aircraftTypes, licenceCategories: ['B1'], privileges, ...until };
      if (privileges.length > 0)
        await tx.people.authorise({ personId: id, organisationId, validFrom: SINCE, ...given });
    }
    for (const station of STATIONS) await tx.operators.addStation({ code: station, name: station, zone: base });
    for (const registration of asked.aircraft) {
      const one = { registration, type: aircraftType, serial: 1, configuration: [] };
      airline.aircraft[registration] = await tx.aircraft.add(one);
    }
    for (const { number, aircraft, offBlockAt, onBlockAt, facts = {} } of asked.flights ?? []) {
      airline.flights[number] = await tx.flights.add({
        aircraftId: airline.aircraft[aircraft] ?? '',
        number,
        fromStation: STATIONS[0],
        toStation: STATIONS[1],
        offBlockAt,
        onBlockAt,
        flightMinutes: 60,
        facts: { 'flight.kind': 'passenger', ...facts },
      });
    }
  });
  return airline;
}
