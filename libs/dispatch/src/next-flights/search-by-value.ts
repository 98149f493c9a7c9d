/** The best plan of a situation by values alone, where a choice of rows changes nothing but which rows are chosen. */
import { buildProblem } from '../proposal/build-problem.js';
import { ChosenRows } from '../proposal/chosen-rows.js';
import type { Problem } from '../proposal/problem.js';
import type { PlannedFlight, Situation } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import type { Stops } from './at-stop.js';
import { FlyByValue, type PlanByValue } from './fly-by-value.js';
import type { Budget } from './fly-plan.js';
import { planBoards } from './plan-boards.js';
import { PlanStops } from './plan-stops.js';
import { SearchBoards } from './search-boards.js';

export interface FoundByValue {
  best: PlanByValue;
  problem: Problem;
  /** The greatest q of all choices. */
  possible: number;
  /** False when the budget ended the search. */
  whole: boolean;
}

/**
 * Null where a choice changes more than this looks at: documents of authorities whose flights are used up, a configuration
 * that nobody knows, defects that can be read in too many ways.
 */
export function searchByValue(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  { budget, rows }: { budget: Budget; rows: 'any' | 'recorded' },
): FoundByValue | null {
  if (flights.length === 0 || start.defects.some(({ grants }) => grants !== undefined)) return null;
  if (wholeReadings(start.defects.map((defect) => readingsOf(defect, defect.row, stops.fitted))) === null)
    return null;
  const problem = buildProblem(stops.mel, start, { rows });
  if (problem.isUnsure.includes(true)) return null;
  const plan = new PlanStops(stops, start, flights);
  const flying = new FlyByValue(problem, plan);
  const only = rows === 'recorded' ? flying.only() : null;
  if (only !== null) {
    budget.left -= flights.length;
    const best = flying.fly(only, flights.length);
    return foundBy(best, best.q);
  }
  const chosen = new ChosenRows(problem, [...problem.variables.keys()]);
  const search = new SearchBoards(flying, chosen, planBoards(plan, chosen, rows), budget);
  search.run();
  if (search.best === null) throw new Error('No plan was flown.');
  return foundBy(search.best, search.possible);

  function foundBy(best: PlanByValue, possible: number): FoundByValue {
    const isWhole = budget.left > 0;
    return { best, problem, possible: isWhole ? possible : flights.length, whole: isWhole };
  }
}
