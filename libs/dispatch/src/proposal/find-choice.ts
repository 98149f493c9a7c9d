/**
 * The best choice of rows for one situation, and the greatest bounds over all choices, by the compiled evaluator alone.
 * Bounds come first: what the best choice must reach hangs on all parts together.
 */
import type { Mel } from '#mel';
import { codeOf, highRank, lowRank, type Code } from '../compiled/code.js';
import { allOfPairs } from '../kleene.js';
import { Frame } from '../frame/frame.js';
import { judgeGates, type JudgedGate } from '../gates.js';
import type { Situation } from '../situation.js';
import { unitKey } from '../units/unit.js';
import type { Choice } from '../choice.js';
import { answerCases, type AnswerCase } from './answer-cases.js';
import { Board } from './board.js';
import { buildProblem } from './build-problem.js';
import { componentsOf } from './components.js';
import { byPlace, compareCosts, compareLists, costOf, listOf, sumOf, type Cost, type RowList } from './cost.js';
import type { Budget } from './explore.js';
import type { Problem } from './problem.js';
import { situationUnder, someRows } from './rows-of-defect.js';
import { findBest, findBounds, type Bounds, type Least } from './search-rows.js';

/** The choices of one case of persons' answers, and a choice of them. */
export interface FoundCase {
  problem: Problem;
  boards: readonly Board[];
  /** What the gates say. */
  closed: Code;
  list: RowList;
}

export interface FoundChoice extends FoundCase {
  /** 2 may fly, 1 after work, 0 may not fly. */
  lo: number;
  hi: number;
  value: Code;
  isWhole: boolean;
  others: readonly FoundCase[];
  /** False when there are more cases than were looked at. */
  allCases: boolean;
}

/** The bounds alone: what is certain and what is possible under some choice of rows, gates included. */
export function boundsUnder(
  mel: Mel,
  situation: Situation,
  budget: Budget,
  asItStands: Code = gatesOf(mel, situation),
): { lo: number; hi: number; isWhole: boolean } {
  const { cases, isWhole } = answerCases(mel, situation);
  const found = { lo: 0, hi: isWhole ? 0 : 2, isWhole };
  for (const one of cases) {
    const closed = one.situation === situation ? asItStands : gatesOf(mel, one.situation);
    const bounds = boundsIn(mel, one, budget, closed);
    found.lo = Math.max(found.lo, bounds.lo);
    found.hi = Math.max(found.hi, bounds.hi);
    found.isWhole &&= bounds.isWhole;
  }
  return found;
}

function boundsIn(mel: Mel, { situation, mayTake }: AnswerCase, budget: Budget, closed: Code) {
  let [lo, hi, isWhole] = [lowRank(closed), highRank(closed), true];
  const problem = buildProblem(mel, situation, { mayTake });
  for (const variables of componentsOf(problem)) {
    if (hi === 0) break;
    const bounds = findBounds(new Board(problem, variables), budget);
    lo = Math.min(lo, bounds.lo);
    hi = Math.min(hi, bounds.hi);
    isWhole &&= bounds.isWhole;
  }
  return { lo: Math.min(lo, hi), hi, isWhole };
}

function gatesOf(mel: Mel, situation: Situation): Code {
  const gates = judgeGates(new Frame(mel, situationUnder(situation, someRows(mel, situation))));
  return codeOf(allOfPairs(gates.map(({ answer }) => answer)));
}

export function findChoice(
  mel: Mel,
  situation: Situation,
  gates: readonly JudgedGate[],
  budget: Budget,
): FoundChoice {
  const asItStands = codeOf(allOfPairs(gates.map(({ answer }) => answer)));
  const { cases, isWhole: allCases } = answerCases(mel, situation);
  const bounded = cases.map((one) => {
    const closed = one.situation === situation ? asItStands : gatesOf(mel, one.situation);
    return boundedCase(mel, one, closed, budget);
  });
  const [lo, hi] = [Math.max(...bounded.map((one) => one.lo)), Math.max(...bounded.map((one) => one.hi))];
  const must = lo > 0 ? { lo, hi: 0 } : { lo: 0, hi: Math.min(hi, 1) };
  const worth = bounded.filter((one) => one.lo >= must.lo && one.hi >= must.hi);
  const found = worth.map((one) => bestIn(one, must, budget));
  const best = found.reduce((first, one) => (isBetter(one, first) ? one : first));
  const others = bounded.filter(({ boards }) => boards !== best.boards);
  return {
    ...best,
    others,
    // A choice found keeps its verdict, though the search for bounds was given up before it came to one.
    lo: Math.max(lo, ...found.map(({ value }) => lowRank(value))),
    hi: allCases ? hi : 2,
    isWhole: allCases && [...bounded, ...found].every(({ isWhole }) => isWhole),
    allCases,
  };
}

interface BoundedCase extends FoundCase {
  lo: number;
  hi: number;
  bounds: readonly Bounds[];
  isWhole: boolean;
}

function boundedCase(mel: Mel, { situation, mayTake }: AnswerCase, closed: Code, budget: Budget): BoundedCase {
  const problem = buildProblem(mel, situation, { mayTake });
  const boards = componentsOf(problem).map((variables) => new Board(problem, variables));
  const bounds = boards.map((board) => findBounds(board, budget));
  const least = (of: (one: Bounds) => number, start: number): number =>
    bounds.reduce((low, one) => Math.min(low, of(one)), start);
  return {
    problem,
    boards,
    closed,
    bounds,
    list: boards.flatMap((board, at) => bounds[at]!.ofHi ?? anyChoice(board)),
    lo: least((one) => one.lo, lowRank(closed)),
    hi: least((one) => one.hi, highRank(closed)),
    isWhole: bounds.every((one) => one.isWhole),
  };
}

interface BestOfCase extends FoundCase {
  value: Code;
  reaches: boolean;
  cost: Cost;
  isWhole: boolean;
}

function bestIn({ problem, boards, closed, bounds }: BoundedCase, must: Least, budget: Budget): BestOfCase {
  let isWhole = true;
  const parts = boards.map((board, at) => {
    const best = findBest(board, budget, must);
    isWhole &&= best.isWhole;
    const { ofLo, ofHi } = bounds[at]!;
    return best.list ?? (must.lo > 0 ? ofLo : ofHi) ?? ofLo ?? anyChoice(board);
  });
  const told = parts.map((list, at) => valueAndCost(boards[at]!, list));
  const value = told.reduce((all, one) => all & one.value, closed);
  const reaches = lowRank(value) >= must.lo && highRank(value) >= must.hi;
  const cost = sumOf(told.map((one) => one.cost));
  return { problem, boards, closed, list: parts.flat(), value, reaches, cost, isWhole };
}

/** Of two cases; where neither reaches what it must, the first is as good. */
function isBetter(one: BestOfCase, than: BestOfCase): boolean {
  if (one.reaches !== than.reaches) return one.reaches;
  const [board, other] = [one.boards[0], than.boards[0]];
  if (board === undefined || other === undefined) return false;
  return (compareCosts(one.cost, than.cost) || compareLists(board, byPlace(one.list), byPlace(than.list), other)) < 0;
}

/** Rows chosen for defects by id, and for units that are taken along. */
export function choiceOf({ variables, units }: Problem, list: RowList): Choice {
  const recorded = new Map<string, string | null>();
  const considered = new Map<string, NonNullable<(typeof variables)[number]['rows'][number]['row']>>();
  for (const { variable, row } of list) {
    const { defect, unit, rows } = variables[variable]!;
    const { id, row: whole } = rows[row]!;
    if (defect !== null) recorded.set(defect.id, id);
    else if (unit !== null && whole !== null) considered.set(unitKey(units[unit]!), whole);
  }
  return { recorded, considered };
}

function valueAndCost(board: Board, list: RowList): { value: Code; cost: Cost } {
  for (const { variable, row } of list) board.chosen[variable] = row;
  const told = { value: board.update(), cost: costOf(board, () => false) };
  board.reset();
  return told;
}

/** The signed row where there is one, and the first of all others. */
function anyChoice(board: Board): RowList {
  for (;;) {
    board.update();
    const variable = board.active.find((one) => board.isOpen(one));
    if (variable === undefined) break;
    const { rows } = board.problem.variables[variable]!;
    const row = Math.max(
      0,
      rows.findIndex(({ isChange }) => !isChange),
    );
    board.chosen[variable] = row;
  }
  const list = listOf(board);
  board.reset();
  return list;
}
