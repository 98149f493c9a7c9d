/** The seed's data files as they are read: what each holds, and where. MEL files have a loader of their own in #mel. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { LicenceCategory, Privilege } from '#deferrals';
import type { Role } from '#mel';

export type FactValue = string | number | boolean | null;
export type FactSet = Record<string, FactValue>;

export interface Setting {
  key: string;
  value: unknown;
  reason: string;
}

export interface OperatorFile {
  demo: { only: boolean; secret: string };
  operators: {
    id: string;
    name: string;
    code: string;
    /** IANA zone of the base; calendar days are counted in it. */
    base: string;
    /** File name of its MEL, beside this file. */
    mel: string;
    /** File name of its library of work cards, where it keeps one. */
    cards?: string;
    preset: string;
    settings: Setting[];
  }[];
  /** `operator` is null for an organisation that works for several. */
  organisations: { id: string; name: string; operator: string | null; kind: string; approval: string }[];
  stations: { id: string; code: string; name: string; zone: string; note: string; base: boolean }[];
}

export interface PeopleFile {
  people: { id: string; name: string; signIn: string; does: string }[];
  memberships: {
    id: string;
    person: string;
    operator: string;
    organisation: string;
    roles: Role[];
    /** Code of the station where the person usually works. */
    station: string;
  }[];
  authorisations: {
    id: string;
    person: string;
    operator: string;
    organisation: string;
    number: string;
    licence: string;
    licenceCategories: LicenceCategory[];
    aircraftTypes: string[];
    privileges: Privilege[];
    /** What the manual asks for beyond a licence. */
    trained: string[];
    /** Days relative to day 0: valid from the start of the first until the start of the last. */
    fromDay: number;
    toDay: number;
  }[];
  /** Without a person: nobody authorised and equipped is there. */
  atStations: { operator: string; station: string; person?: string; equipment?: string[]; source: string }[];
}

export interface FleetFile {
  types: { id: string; name: string; engines: number; configurations: { code: string; text: string }[] }[];
  aircraft: {
    id: string;
    mark: string;
    operator: string;
    type: string;
    serial: number;
    configuration: string[];
  }[];
}

export interface RouteData {
  id: string;
  from: string;
  to: string;
  blockMinutes: number;
  flightMinutes: number;
  facts: FactSet;
}

export interface FlightData {
  id: string;
  number: string;
  /** Day relative to day 0 and wall-clock time of off-block, both at the station of departure. */
  day: number;
  off: string;
  route: string;
  /** Names of fact sets, later ones overriding. */
  with?: string[];
  facts?: FactSet;
}

export interface FlightsFile {
  /** By operator id. */
  defaults: Record<string, FactSet>;
  /** By code of the station of departure. */
  departing: Record<string, FactSet>;
  sets: Record<string, FactSet>;
  routes: RouteData[];
  rotations: { aircraft: string; flights: FlightData[] }[];
}

/** A day relative to day 0, and a wall-clock time there and then at a station. */
export interface SeedTime {
  day: number;
  time: string;
  station: string;
}

interface ActData<Kind extends string> {
  act: Kind;
  at: SeedTime;
  /** Id of the person who does and signs it. */
  by: string;
}

export type SeedAct =
  | (ActData<'written-up'> & {
      origin: 'technician' | 'crew' | 'cabin';
      sheet: string;
      system: string;
      faultMessage: string;
      description: string;
    })
  | (ActData<'deferred'> & { concurs: string; entry: string; units: string[]; row: string })
  /** `work` is the procedure's id in the row; `tags` number what it leaves, in the row's order. */
  | (ActData<'procedure-signed'> & { work: string; tags: string[] })
  | (ActData<'placard-fitted'> & { tag: string })
  | (ActData<'placard-removed'> & { tag: string })
  | (ActData<'handed-over'> & { to: string; note: string })
  | (ActData<'rectification'> & {
      workDone: string;
      reference: string;
      complete: boolean;
      testAsked: boolean;
      inspectionAsked: boolean;
      part: { partNumber: string; serialOff: string; serialOn: string };
    })
  | (ActData<'tested'> & { test: string; result: 'good' | 'not-good' })
  | (ActData<'restored'> & { reference: string })
  | (ActData<'released'> & { outcome: 'closed' | 'stays-open' });

/** A named person's answer to the whole of what is open on one aircraft. */
export type CombinationJudged = ActData<'combination-judged'> & { accepted: boolean; note: string };

export interface OpenItemsFile {
  aircraft: { mark: string; items: { id: string; acts: SeedAct[] }[]; acts?: CombinationJudged[] }[];
}

export interface Seed {
  operator: OperatorFile;
  people: PeopleFile;
  fleet: FleetFile;
  flights: FlightsFile;
  openItems: OpenItemsFile;
}

/** The parsed content of one file of the folder. */
export const readSeedFile = (folder: string, name: string): unknown =>
  parse(readFileSync(`${folder}/${name}`, 'utf8')) as unknown;

/** Reads all files but the MELs. They are our own: data.spec.ts checks them, nothing else does. */
export const readSeed = (folder: string): Seed => ({
  operator: readSeedFile(folder, 'operator.yaml') as OperatorFile,
  people: readSeedFile(folder, 'people.yaml') as PeopleFile,
  fleet: readSeedFile(folder, 'fleet.yaml') as FleetFile,
  flights: readSeedFile(folder, 'flights.yaml') as FlightsFile,
  openItems: readSeedFile(folder, 'open-items.yaml') as OpenItemsFile,
});
