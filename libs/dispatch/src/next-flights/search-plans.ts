import { highest, lowest } from '../bounds.js';
import { pairOf } from '../compiled/code.js';
import { conditionsOf, EvaluatorsDisagree } from '../evaluators-disagree.js';
import { choiceOf } from '../proposal/find-choice.js';
import { rowsOfDefect, situationUnder } from '../proposal/rows-of-defect.js';
import type { PlannedFlight, Situation } from '../situation.js';
import { DownState } from '../units/down-state.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { byCode } from '../units/unit.js';
import type { Stops } from './at-stop.js';
import { isBetterPlan, judgedPlan, type JudgedPlan } from './best-plan.js';
import { flyPlans, type Budget, type Change } from './fly-plan.js';
import { searchByValue, type FoundByValue } from './search-by-value.js';

export interface FoundPlan {
  best: JudgedPlan;
  /** The greatest q of all choices. */
  possible: number;
  /** False when the budget ended the search. */
  whole: boolean;
}

interface Searching {
  budget: Budget;
  rows?: 'recorded' | 'any';
  change?: Change;
}

/** The best plan under the rows of the situation, or, with `any`, under the best rows for all its defects. */
export async function searchPlans(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  { budget, rows = 'recorded', change }: Searching,
): Promise<FoundPlan> {
  if (change === undefined) {
    const found = searchByValue(stops, start, flights, { budget, rows });
    if (found !== null) return { ...found, best: await flownInFull(stops, start, flights, found) };
  }
  return searchInFull(stops, start, flights, { budget, rows, ...(change === undefined ? {} : { change }) });
}

/** With reasons all along: where a plan has more to it than values, or is changed on the way. */
export async function searchInFull(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  searching: Searching,
): Promise<FoundPlan> {
  const { budget, rows = 'recorded', change } = searching;
  const only = change === undefined && rows === 'recorded' ? await onlyPlan(stops, start, flights, budget) : null;
  return only === null ? searchEvery(stops, start, flights, searching) : foundIn(only, only.q, flights, budget);
}

/**
 * Flown again with reasons; the budget is spent already.
 * Throws EvaluatorsDisagree when that says otherwise than the values did.
 */
async function flownInFull(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  { best: { list, values }, problem }: FoundByValue,
): Promise<JudgedPlan> {
  const { recorded, considered } = choiceOf(problem, list);
  const situation = situationUnder(start, recorded);
  const spent = { left: 0 };
  for await (const legs of flyPlans(stops, situation, flights, spent, undefined, considered)) {
    for (const [at, { frame, judged, lo, hi }] of legs.entries()) {
      const pair = pairOf(values[at]!.value);
      const byValue = { lo: lowest(pair), hi: highest(pair) };
      if (byValue.lo === lo && byValue.hi === hi) continue;
      throw new EvaluatorsDisagree(frame.situation, [
        { way: 'the search by values', ...byValue, conditions: null },
        { way: 'the same plan flown with reasons', lo, hi, conditions: judged && conditionsOf(judged) },
      ]);
    }
    return judgedPlan(situation, legs);
  }
  throw new Error('No plan was flown.');
}

/** The plan under the recorded rows, where no unit that they take along could have another row; otherwise null. */
async function onlyPlan(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  budget: Budget,
): Promise<JudgedPlan | null> {
  if (mayTakeOthers(stops, start)) return null;
  for await (const legs of flyPlans(stops, start, flights, budget)) {
    const items = legs.flatMap(({ judged }) => judged?.groups.flatMap((group) => group.items) ?? []);
    const taken = items.filter(({ item }) => item.cause.kind !== 'failed');
    const isOnly = taken.every(({ item }) => (item.subEntry?.rows.length ?? 0) < 2);
    return isOnly && legs.every(({ judged }) => judged !== null) ? judgedPlan(start, legs) : null;
  }
  return null;
}

/** Whether some unit that the recorded rows take along has several rows: told before anything is flown. */
function mayTakeOthers({ fitted }: Stops, { defects }: Situation): boolean {
  const wholes = wholeReadings(defects.map((defect) => readingsOf(defect, defect.row, fitted)));
  const taken = wholes === null ? [] : new DownState(fitted, wholes, new Map()).considered();
  return taken.some(({ entry }) => fitted.subEntries(entry).some(({ rows }) => rows.length > 1));
}

/** By flying every choice there is: where boards do not tell enough, and to hold the search by boards against. */
export async function searchEvery(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  { budget, rows = 'recorded', change }: Searching,
): Promise<FoundPlan> {
  let best: JudgedPlan | null = null;
  let possible = 0;
  for (const situation of rows === 'any' ? everyChoice(stops, start) : [start]) {
    if (best !== null && budget.left <= 0) break;
    for await (const legs of flyPlans(stops, situation, flights, budget, change)) {
      const plan = judgedPlan(situation, legs);
      possible = Math.max(possible, plan.q);
      if (best === null || isBetterPlan(plan, best)) best = plan;
    }
  }
  return foundIn(best, possible, flights, budget);
}

function foundIn(
  best: JudgedPlan | null,
  possible: number,
  flights: readonly PlannedFlight[],
  { left }: Budget,
): FoundPlan {
  if (best === null) throw new Error('No plan was flown.');
  return { best, possible: left > 0 ? possible : flights.length, whole: left > 0 };
}

function* everyChoice({ fitted }: Stops, start: Situation): Generator<Situation> {
  const defects = [...start.defects].sort((a, b) => byCode(a.id, b.id));
  const domains = defects.map(
    (defect) => [defect.id, recordedFirst(defect.row, rowsOfDefect(defect, fitted))] as const,
  );
  for (const rows of combinations(domains)) yield situationUnder(start, rows);
}

/** So that a search that is given up has at least seen the rows as they are. */
function recordedFirst(recorded: string | null, rows: readonly (string | null)[]): (string | null)[] {
  return [...rows].sort((a, b) => Number(b === recorded) - Number(a === recorded));
}

type Domain = readonly [defect: string, rows: readonly (string | null)[]];

function* combinations([first, ...rest]: readonly Domain[]): Generator<Map<string, string | null>> {
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const row of first[1]) for (const others of combinations(rest)) yield new Map([[first[0], row], ...others]);
}
