/**
 * One board for each flight of a plan, with the same units, variables and rows on all of them: what is down under a choice
 * is the same on every flight, and only what the flight, the clock and the work done so far say of a row differs.
 *
 * The first board is exact, but for answers of persons that hang on the rows of others: they count at their best. A later
 * one takes it besides that all work was done that any row could owe, so its value is an upper bound of what the choice is
 * worth on that flight. The last is that of the first flight that no choice makes possible.
 */
import { codeOf, highRank, type Code } from '../compiled/code.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { allOfPairs } from '../kleene.js';
import { Board } from '../proposal/board.js';
import type { ChosenRows } from '../proposal/chosen-rows.js';
import type { Problem } from '../proposal/problem.js';
import { situationUnder, someRows } from '../proposal/rows-of-defect.js';
import { Standings } from '../proposal/standings.js';
import type { Situation, WorkState } from '../situation.js';
import { withAnswersAtBest } from './answers-at-best.js';
import type { Stops } from './at-stop.js';
import { doneFor } from './fly-on.js';
import type { PlanStops } from './plan-stops.js';

export interface PlanBoard {
  board: Board;
  /** The gates of the flight. */
  gates: Code;
}

export function planBoards(plan: PlanStops, chosen: ChosenRows, rows: 'any' | 'recorded'): PlanBoard[] {
  const { mel } = plan.stops;
  const { problem, variables } = chosen;
  const work = workOfAll(problem, plan.stops);
  const boards: PlanBoard[] = [];
  chosen.spread();
  for (const index of plan.flights.keys()) {
    const arrived = plan.arrival(index);
    const isFirst = index === 0;
    // What was done last is good for at least as long as what was done before.
    const done = isFirst ? [] : work.map((one) => doneFor(plan.flights[index - 1]!, one));
    const flown = { ...arrived, work: [...arrived.work, ...done] };
    const there = plan.leaving(index, flown);
    // What nobody at a station can do is known of the recorded rows only.
    const sure = isFirst && rows === 'recorded' ? there : { ...there, work: there.work.filter(isGivenIn(flown)) };
    const situation = withAnswersAtBest(mel, problem, sure);
    const frame = new Frame(mel, situationUnder(situation, rows === 'any' ? someRows(mel, situation) : new Map()));
    const gates = codeOf(allOfPairs(judgeGates(frame).map(({ answer }) => answer)));
    const said = new Standings(mel, situation, !isFirst);
    const board = new Board({ ...problem, said }, variables, null, chosen);
    boards.push({ board, gates });
    // Before any row is chosen the value bounds every choice, so no flight after this one can count.
    if (highRank(board.value() & gates) === 0) break;
  }
  return boards;
}

function isGivenIn({ work }: Situation): (record: WorkState) => boolean {
  const given = new Set(work);
  return (record) => given.has(record);
}

/** All work that any row of the problem could owe. */
function workOfAll({ variables }: Problem, { fitted }: Stops): Pick<WorkState, 'work' | 'defect'>[] {
  return variables.flatMap(({ defect, entry }) => {
    const whose = defect === null ? {} : { defect: defect.id };
    return fitted.subEntries(entry).flatMap(({ rows }) =>
      rows.flatMap((row) => {
        const ids = [
          ...(row.procedures ?? []).map(({ id }) => id),
          ...(row.placard === undefined ? [] : ['placard']),
        ];
        return ids.map((id) => ({ work: `${entry}/${row.id}/${id}`, ...whose }));
      }),
    );
  });
}
