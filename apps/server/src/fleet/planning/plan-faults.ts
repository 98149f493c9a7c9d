/** What stands against a line of a list of planned flights, each fault with its line and column and what to do. */
import type { AircraftRow, FlightRow } from '#store';
import type { Fault, PlannedLine } from './read-plan.js';

export interface Known {
  now: string;
  /** Codes. */
  stations: ReadonlySet<string>;
  /** Those named in the list, held. */
  aircraft: readonly AircraftRow[];
  fleet: readonly AircraftRow[];
  /** Of the whole fleet, from now on. */
  planned: readonly FlightRow[];
}

export interface Planned {
  aircraft: AircraftRow;
  line: PlannedLine;
}

const DAY_MS = 24 * 60 * 60_000;

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
  if (Date.parse(onBlockAt) - Date.parse(offBlockAt) > DAY_MS) {
    return [`line ${line}, arrival: a flight of more than 24 hours is none`];
  }
  if (offBlockAt > now) return [];
  return [`line ${line}, departure: it lies in the past; take the line out, and enter what was flown as a leg`];
}

function ofAircraft({ line, registration }: PlannedLine, { aircraft }: Known): Fault[] {
  const row = aircraft.find((one) => one.registration === registration);
  if (row === undefined) return [`line ${line}, aircraft: there is no aircraft ${registration} in the fleet`];
  return row.retiredAt === null ? [] : [`line ${line}, aircraft: ${registration} has left the fleet`];
}

/** The same number on the same day is the same flight. Planned just so it is left; otherwise somebody decides, not a list. */
function ofRepeat(line: PlannedLine, { planned, fleet }: Known): Fault[] {
  const same = planned.find((one) => one.number === line.number && dayOf(one.offBlockAt) === dayOf(line.offBlockAt));
  if (same === undefined) return [];
  const on = fleet.find(({ id }) => id === same.aircraftId)?.registration ?? 'another aircraft';
  const isSo =
    on === line.registration &&
    same.fromStation === line.from &&
    same.toStation === line.to &&
    same.offBlockAt === line.offBlockAt &&
    same.onBlockAt === line.onBlockAt;
  if (isSo) return [];
  const { number, fromStation, toStation, offBlockAt, onBlockAt } = same;
  const times = `${said(offBlockAt)}${onBlockAt === null ? '' : ` to ${said(onBlockAt)}`}`;
  const as = `${on}, ${fromStation} to ${toStation}, ${times}`;
  return [
    `line ${line.line}, flight: ${number} is planned otherwise that day (${as}); cancel that one first, or take the line out`,
  ];
}

/** An aircraft is in one place at a time, and a flight stands in the list once. */
export function faultsBetween(lines: readonly PlannedLine[], { planned, aircraft }: Known): Fault[] {
  return lines.flatMap((line, index) => {
    const before = lines.slice(0, index);
    const twice = before.find(
      (one) => one.number === line.number && dayOf(one.offBlockAt) === dayOf(line.offBlockAt),
    );
    if (twice) return [`line ${line.line}, flight: ${line.number} of that day stands in line ${twice.line} already`];
    const other = before.find((one) => one.registration === line.registration && overlaps(one, line));
    if (other)
      return [`line ${line.line}, departure: ${line.registration} is on ${other.number} of line ${other.line} then`];
    const id = aircraft.find(({ registration }) => registration === line.registration)?.id;
    const there = planned.find((one) => one.aircraftId === id && one.number !== line.number && overlaps(one, line));
    if (!there) return [];
    const from = said(there.offBlockAt);
    return [`line ${line.line}, departure: ${line.registration} is planned for ${there.number} then, from ${from}`];
  });
}

type Span = Pick<FlightRow, 'offBlockAt' | 'onBlockAt'>;

function overlaps(one: Span, other: Span): boolean {
  return one.offBlockAt < endOf(other) && other.offBlockAt < endOf(one);
}

const endOf = ({ offBlockAt, onBlockAt }: Span): string => onBlockAt ?? offBlockAt;
const dayOf = (at: string): string => at.slice(0, 10);
const said = (at: string): string => `${at.slice(0, 16)}Z`;
