/**
 * One board for each flight of a plan, with the same units, variables and rows on all of them: what is down under a choice
 * is the same on every flight, and only what the flight, the clock and the work done so far say of a row differs.
 *
 * The first board is exact. A later one takes it that all work was done that any row could owe, so its value is an upper
 * bound of what the choice is worth on that flight. The last is that of the first flight that no choice makes possible.
 */
import { codeOf, highRank, type Code } from '../compiled/code.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { allOfPairs } from '../kleene.js';
import { Board } from '../proposal/board.js';
import { buildProblem } from '../proposal/build-problem.js';
import type { Problem } from '../proposal/problem.js';
import { situationUnder, someRows } from '../proposal/rows-of-defect.js';
import type { PlannedFlight, Situation, WorkState } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { atStop, type Stops } from './at-stop.js';
import { doneFor, flyOn } from './fly-on.js';

export interface PlanBoard {
  board: Board;
  /** The gates of the flight. */
  gates: Code;
}

/**
 * Null where a choice changes more than this looks at: documents of authorities whose flights are used up, a configuration
 * that nobody knows, defects that can be read in too many ways.
 */
export function planBoards(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  rows: 'any' | 'recorded',
): PlanBoard[] | null {
  const { mel, fitted } = stops;
  if (flights.length === 0 || start.defects.some(({ grants }) => grants !== undefined)) return null;
  if (wholeReadings(start.defects.map((defect) => readingsOf(defect, defect.row, fitted))) === null) return null;
  const boards: PlanBoard[] = [];
  let counted = start;
  let done: WorkState[] = [];
  for (const [index, flight] of flights.entries()) {
    const flown = { ...counted, work: [...counted.work, ...done] };
    const isFirst = index === 0;
    const there = atStop(stops, flown, flight, isFirst);
    // What nobody at a station can do is known of the recorded rows only.
    const situation =
      isFirst && rows === 'recorded' ? there : { ...there, work: there.work.filter(isGivenIn(flown)) };
    const problem = buildProblem(mel, situation, { rows, isSigned: !isFirst });
    if (problem.isUnsure.includes(true)) return null;
    const frame = new Frame(mel, situationUnder(situation, rows === 'any' ? someRows(mel, situation) : new Map()));
    const gates = codeOf(allOfPairs(judgeGates(frame).map(({ answer }) => answer)));
    const board = new Board(problem, [...problem.variables.keys()]);
    boards.push({ board, gates });
    // Before any row is chosen the value bounds every choice, so no flight after this one can count.
    if (highRank(board.update() & gates) === 0) break;
    counted = flyOn(counted, flight, null);
    // What was done last is good for at least as long as what was done before.
    done = workOfAll(problem, stops, flight);
  }
  return boards;
}

function isGivenIn({ work }: Situation): (record: WorkState) => boolean {
  return (record) => work.includes(record);
}

/** All work that any row of the problem could owe, done for this flight. */
function workOfAll({ variables }: Problem, { fitted }: Stops, flight: PlannedFlight): WorkState[] {
  return variables.flatMap(({ defect, entry }) => {
    const whose = defect === null ? {} : { defect: defect.id };
    return fitted.subEntries(entry).flatMap(({ rows }) =>
      rows.flatMap((row) => {
        const ids = [
          ...(row.procedures ?? []).map(({ id }) => id),
          ...(row.placard === undefined ? [] : ['placard']),
        ];
        return ids.map((id) => doneFor(flight, { work: `${entry}/${row.id}/${id}`, ...whose }));
      }),
    );
  });
}
