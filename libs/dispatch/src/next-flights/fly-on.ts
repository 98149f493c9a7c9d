/**
 * The situation after a flight was flown as planned, with the work done that it owed (rule 9).
 *
 * The work counts as done at its off-block: as late as it could be. Work that cannot be done stays owed, though the
 * flight be flown after all.
 */
import type { FlightFlown } from '#intervals';
import { workOf } from '../answer/work-list.js';
import type { JudgedChoice } from '../choice.js';
import { millisOf } from '../frame/moment.js';
import type { GrantInForce, OpenDefect, PlannedFlight, Situation, WorkState } from '../situation.js';
import type { ConditionAnswer, WorkToDo } from '../verdict.js';
import { countFlight, flownAs } from './count-flight.js';

export const NOTHING_USED = {
  flights: 0,
  flightDays: 0,
  lastFlightDayOn: null,
  flightMinutes: 0,
  blockMinutes: 0,
  cycles: 0,
} as const;

/** `flown` is the situation before, without what was known of that one stop. */
export function flyOn(flown: Situation, flight: PlannedFlight, judged: JudgedChoice | null): Situation {
  const done = judged === null ? [] : workOf(judged);
  const signed = new Set(done.filter(isSignature).flatMap(({ defect }) => defect ?? []));
  const work = [...flown.work, ...done.filter((one) => !isSignature(one)).map((one) => doneFor(flight, one))];
  const counted = flownAs(flight, flown);
  return {
    ...flown,
    at: later(flown.at, flight.onBlockAt ?? flight.offBlockAt),
    defects: flown.defects.map((defect) => afterFlight(defect, signed.has(defect.id), flown, counted, judged)),
    work: work.map((record) => workAfter(record, flown, counted)),
  };
}

function later(one: string, other: string): string {
  return millisOf('at', one) >= millisOf('onBlockAt', other) ? one : other;
}

export function isSignature({ work }: Pick<WorkToDo, 'work'>): boolean {
  return work.endsWith('/signature');
}

export function doneFor(flight: PlannedFlight, { work, defect }: Pick<WorkToDo, 'work' | 'defect'>): WorkState {
  return {
    work,
    ...(defect === undefined ? {} : { defect }),
    doneAt: flight.offBlockAt,
    forFlight: flight.id,
    usedSince: NOTHING_USED,
  };
}

function afterFlight(
  defect: OpenDefect,
  isSigned: boolean,
  flown: Situation,
  flight: FlightFlown,
  judged: JudgedChoice | null,
): OpenDefect {
  const { used, grants } = defect;
  return {
    ...defect,
    signed: defect.signed || isSigned,
    ...(used === undefined ? {} : { used: countFlight(used, defect.recordedAt, flight, flown) }),
    ...(grants === undefined || isInside(defect, judged) ? {} : { grants: grants.map((one) => usedBy(one, flight)) }),
  };
}

/** Inside its own interval a flight uses no document of an authority. */
function isInside({ id }: OpenDefect, judged: JudgedChoice | null): boolean {
  const items = judged?.groups.flatMap((group) => group.items) ?? [];
  const intervals = items
    .filter(({ item }) => item.defect?.id === id)
    .flatMap(({ answer }) => answer.conditions.filter(({ kind }) => kind === 'interval'));
  return intervals.length > 0 && intervals.every(holdsAlone);
}

function holdsAlone({ now, onlyUnder }: ConditionAnswer): boolean {
  return now === 'T' && onlyUnder === undefined;
}

function usedBy(grant: GrantInForce, { offBlockAt }: FlightFlown): GrantInForce {
  const leaves = millisOf('offBlockAt', offBlockAt);
  const isGood = millisOf('from', grant.from) <= leaves && leaves < millisOf('until', grant.until);
  return !isGood || grant.flightsUsed === undefined ? grant : { ...grant, flightsUsed: grant.flightsUsed + 1 };
}

function workAfter(record: WorkState, flown: Situation, flight: FlightFlown): WorkState {
  const { doneAt, usedSince } = record;
  if (doneAt === undefined || usedSince === undefined) return record;
  return { ...record, usedSince: countFlight(usedSince, doneAt, flight, flown) };
}
