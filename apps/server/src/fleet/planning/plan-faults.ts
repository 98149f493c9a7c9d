/** What stands against a line of a list of planned flights, each fault with its line and column and what to do. */
import type { AircraftRow, FlightRow } from '#store';
import { grouped } from '../../defects/grouped.js';
import { type FlightsNear, LONGEST_MS, overlaps } from '../flights-near.js';
import type { Fault, PlannedLine } from './read-plan.js';

interface Around {
  now: string;
  /** Codes. */
  stations: ReadonlySet<string>;
  fleet: readonly AircraftRow[];
}

export interface Known extends Around {
  /** By registration, those named in the list, held. */
  aircraft: ReadonlyMap<string, AircraftRow>;
  /** Of the whole fleet, by number and UTC day, those that left included. */
  ofDay: ReadonlyMap<string, readonly FlightRow[]>;
  /** By id of the aircraft that they keep. */
  holding: ReadonlyMap<string, readonly FlightRow[]>;
}

export function knownOf(
  { aircraft, ...around }: Around & { aircraft: readonly AircraftRow[] },
  { standing, holding }: FlightsNear,
): Known {
  return {
    ...around,
    aircraft: new Map(aircraft.map((row) => [row.registration, row])),
    ofDay: grouped(standing, flightOfDay),
    holding: grouped(holding, ({ aircraftId }) => aircraftId),
  };
}

export interface Planned {
  aircraft: AircraftRow;
  line: PlannedLine;
}

export function faultsOfLine(line: PlannedLine, known: Known): Fault[] {
  return [...ofEnds(line, known), ...ofTimes(line, known), ...ofAircraft(line, known), ...ofRepeat(line, known)];
}

function ofEnds({ line, from, to }: PlannedLine, { stations }: Known): Fault[] {
  const ends = [
    ['from', from],
    ['to', to],
  ] as const;
  return ends
    .filter(([, code]) => !stations.has(code))
    .map(([column, code]) => `line ${line}, ${column}: there is no station ${code}; enter it under Stations first`);
}

function ofTimes({ line, offBlockAt, onBlockAt }: PlannedLine, { now }: Known): Fault[] {
  if (onBlockAt <= offBlockAt) return [`line ${line}, arrival: it would arrive before it leaves`];
  if (Date.parse(onBlockAt) - Date.parse(offBlockAt) > LONGEST_MS) {
    return [`line ${line}, arrival: a flight of more than 24 hours is none`];
  }
  if (offBlockAt > now) return [];
  return [`line ${line}, departure: it lies in the past; take the line out, and enter what was flown as a leg`];
}

function ofAircraft({ line, registration }: PlannedLine, { aircraft }: Known): Fault[] {
  const row = aircraft.get(registration);
  if (row === undefined) return [`line ${line}, aircraft: there is no aircraft ${registration} in the fleet`];
  return row.retiredAt === null ? [] : [`line ${line}, aircraft: ${registration} has left the fleet`];
}

/** The same number on the same day is the same flight. Planned just so it is left; otherwise somebody decides, not a list. */
function ofRepeat(line: PlannedLine, known: Known): Fault[] {
  const [same] = known.ofDay.get(flightOfDay(line)) ?? [];
  if (same === undefined || isPlannedSo(line, known)) return [];
  const on = known.fleet.find(({ id }) => id === same.aircraftId)?.registration ?? 'another aircraft';
  const { number, fromStation, toStation, offBlockAt, onBlockAt } = same;
  const times = `${said(offBlockAt)}${onBlockAt === null ? '' : ` to ${said(onBlockAt)}`}`;
  const as = `${on}, ${fromStation} to ${toStation}, ${times}`;
  const next =
    offBlockAt > known.now
      ? 'cancel that one first, or take the line out'
      : 'its time to leave is past, so take the line out, and plan it by itself at the aircraft if both are meant';
  return [`line ${line.line}, flight: ${number} is planned otherwise that day (${as}); ${next}`];
}

/** Whether this very flight stands in the plan. */
export function isPlannedSo(line: PlannedLine, { ofDay, aircraft }: Known): boolean {
  const id = aircraft.get(line.registration)?.id;
  return (ofDay.get(flightOfDay(line)) ?? []).some((one) => one.aircraftId === id && isSo(one, line));
}

function isSo(one: FlightRow, line: PlannedLine): boolean {
  return (
    one.number === line.number &&
    one.fromStation === line.from &&
    one.toStation === line.to &&
    one.offBlockAt === line.offBlockAt &&
    one.onBlockAt === line.onBlockAt
  );
}

/** An aircraft is in one place at a time, and a flight stands in the list once. */
export function faultsBetween(lines: readonly PlannedLine[], known: Known): Fault[] {
  const seen = new Map<string, PlannedLine>();
  const flying = new Map<string, PlannedLine[]>();
  return lines.flatMap((line) => {
    const before = flying.get(line.registration) ?? [];
    const fault = betweenLines(line, seen.get(flightOfDay(line)), before) ?? withPlanned(line, known);
    seen.set(flightOfDay(line), seen.get(flightOfDay(line)) ?? line);
    before.push(line);
    flying.set(line.registration, before);
    return fault ?? [];
  });
}

function betweenLines(
  line: PlannedLine,
  twice: PlannedLine | undefined,
  before: readonly PlannedLine[],
): Fault | null {
  if (twice) return `line ${line.line}, flight: ${line.number} of that day stands in line ${twice.line} already`;
  const other = before.find((one) => overlaps(one, line));
  if (!other) return null;
  return `line ${line.line}, departure: ${line.registration} is on ${other.number} of line ${other.line} then`;
}

/** Only the very flight of the line is left out: the same number may leave again after midnight, and is another one. */
function withPlanned(line: PlannedLine, { aircraft, holding }: Known): Fault | null {
  const kept = holding.get(aircraft.get(line.registration)?.id ?? '') ?? [];
  const there = kept.find((one) => !isSo(one, line) && overlaps(one, line));
  if (!there) return null;
  const from = said(there.offBlockAt);
  return `line ${line.line}, departure: ${line.registration} is planned for ${there.number} then, from ${from}`;
}

function flightOfDay({ number, offBlockAt }: { number: string; offBlockAt: string }): string {
  return `${number} ${offBlockAt.slice(0, 10)}`;
}

const said = (at: string): string => `${at.slice(0, 16)}Z`;
