import { Temporal } from 'temporal-polyfill';
import { dayOf } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { sayLocal } from './explain-time.js';
import { readInstant, writeInstant } from './instant.js';
import type { Leg } from './leg.js';
import { mayDepart } from './may-depart.js';
import { meanUse, type MeanUse } from './mean-use.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { useAfter, type FlightFlown } from './use-after.js';
import type { Used } from './used.js';
import { whatIsLeft } from './what-is-left.js';

/** Where an interval is expected to end by use. It is a forecast: no flight is allowed or refused by it. */
export interface ProjectedEnd {
  state: 'projected';
  /** The instant, UTC: the first planned departure that would not fit, or the day on which use runs out. */
  endsAt: string;
  /** The calendar day of it in the base of the clock. */
  lastDay: string;
  /** `plan`: from the planned flights. `mean-use`: beyond them, from the mean use of the legs of the last days. */
  method: 'plan' | 'mean-use';
  /** How it was found, in one sentence. */
  sentence: string;
}

export interface ProjectionInput {
  clock: RectificationClock;
  at: string;
  /** What was used up to `at`. */
  used: Used;
  /** Flights planned after `at`, in any order. */
  planned: readonly FlightFlown[];
  /** Legs flown, of which those of the last days give the mean use. */
  legs: readonly Leg[];
  settings?: Partial<CountingSettings>;
}

/**
 * The calendar end that the planned flights, and beyond them the mean use of the recorded legs, would bring an interval
 * that is counted from use. Null where a fixed end comes first, where it is over, or where nothing can be projected: a
 * counter that is not known, or an aircraft that was not used.
 *
 * Throws IntervalInputError.
 */
export function projectedEnd(input: ProjectionInput): ProjectedEnd | null {
  const { clock, at, settings = {} } = input;
  if (clock.kind === 'calendar') return null;
  const left = whatIsLeft(clock, at, input.used, settings);
  if (left.isOver !== false) return null;
  const now = readInstant('at', at);
  const planned = input.planned
    .map((flight) => ({ flight, leaves: readInstant('planned.offBlockAt', flight.offBlockAt) }))
    .filter(({ leaves }) => Temporal.Instant.compare(leaves, now) >= 0)
    .sort((one, other) => Temporal.Instant.compare(one.leaves, other.leaves));
  let used = input.used;
  let fitting = 0;
  for (const { flight, leaves } of planned) {
    const { answer, because } = mayDepart(clock, flight, used, settings);
    if (answer === 'unknown') break;
    if (answer === 'fails') return isAfterEnd(leaves, clock) ? null : byPlan(clock, leaves, fitting, because);
    used = useAfter(clock, used, flight, settings);
    fitting += 1;
  }
  const last = planned[fitting - 1]?.flight;
  const from = last === undefined ? now : readInstant('planned', last.onBlockAt ?? last.offBlockAt);
  return byMeanUse(input, used, from, fitting);
}

function isAfterEnd(leaves: Temporal.Instant, { endsAt }: RectificationClock): boolean {
  return endsAt !== null && Temporal.Instant.compare(leaves, readInstant('endsAt', endsAt)) >= 0;
}

function byPlan(clock: RectificationClock, ends: Temporal.Instant, fitting: number, because: string): ProjectedEnd {
  const flights = fitting === 1 ? '1 planned flight fits' : `${fitting} planned flights fit`;
  const sentence = `Projected from the plan: ${flights}; the one that leaves ${sayLocal(ends, clock.base)} does not. ${because}`;
  return { ...endAt(ends, clock), method: 'plan', sentence };
}

function byMeanUse(input: ProjectionInput, used: Used, from: Temporal.Instant, fitting: number): ProjectedEnd | null {
  const { clock, at, legs, settings = {} } = input;
  const settled = countingSettings(undefined, settings);
  const mean = meanUse(clock, legs, at, settled);
  if (mean === null) return null;
  const left = whatIsLeft(clock, writeInstant(from), used, settings);
  const ends = left.limits.flatMap((limit) => {
    if (limit.endsAt !== null) return [readInstant('endsAt', limit.endsAt)];
    const minutes = limit.left === null ? null : mean.minutesFor(limit.countedIn, limit.limit.unit, limit.left);
    return minutes === null ? [] : [from.add({ minutes })];
  });
  const lastOf = clock.kind === 'counted' && clock.joint === 'last-of';
  if (ends.length === 0 || (lastOf && ends.length < left.limits.length)) return null;
  const order = ends.toSorted((one, other) => Temporal.Instant.compare(one, other));
  const end = lastOf ? order.at(-1) : order[0];
  if (end === undefined || (clock.endsAt !== null && writeInstant(end) === clock.endsAt)) return null;
  return { ...endAt(end, clock), method: 'mean-use', sentence: sayMean(mean, fitting, end, clock) };
}

function sayMean(
  { days, words }: MeanUse,
  fitting: number,
  end: Temporal.Instant,
  clock: RectificationClock,
): string {
  const beyond = fitting === 0 ? '' : `beyond ${fitting === 1 ? '1 planned flight' : `${fitting} planned flights`}, `;
  return `Projected ${beyond}from the mean use of the last ${days === 1 ? 'day' : `${days} days`} (${words}): about ${sayLocal(end, clock.base)}.`;
}

function endAt(
  ends: Temporal.Instant,
  clock: RectificationClock,
): Pick<ProjectedEnd, 'state' | 'endsAt' | 'lastDay'> {
  return { state: 'projected', endsAt: writeInstant(ends), lastDay: dayOf(ends, clock.base).toString() };
}
