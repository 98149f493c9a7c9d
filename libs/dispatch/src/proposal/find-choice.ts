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
import { Board } from './board.js';
import { buildProblem } from './build-problem.js';
import { componentsOf } from './components.js';
import { listOf, type RowList } from './cost.js';
import type { Budget } from './explore.js';
import type { Problem } from './problem.js';
import { situationUnder, someRows } from './rows-of-defect.js';
import { findBest, findBounds, type Bounds } from './search-rows.js';

export interface FoundChoice {
  problem: Problem;
  boards: readonly Board[];
  /** 2 may fly, 1 after work, 0 may not fly. */
  lo: number;
  hi: number;
  list: RowList;
  value: Code;
  isWhole: boolean;
}

/** The bounds alone: what is certain and what is possible under some choice of rows, gates included. */
export function boundsUnder(
  mel: Mel,
  situation: Situation,
  budget: Budget,
  closed: Code = gatesOf(mel, situation),
): { lo: number; hi: number; isWhole: boolean } {
  let [lo, hi, isWhole] = [lowRank(closed), highRank(closed), true];
  const problem = buildProblem(mel, situation);
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
  const problem = buildProblem(mel, situation);
  const boards = componentsOf(problem).map((variables) => new Board(problem, variables));
  const closed = codeOf(allOfPairs(gates.map(({ answer }) => answer)));
  const bounds = boards.map((board) => findBounds(board, budget));
  const fallbacks = boards.map((board) => anyChoice(board));
  const least = (of: (one: Bounds) => number, start: number): number =>
    bounds.reduce((low, one) => Math.min(low, of(one)), start);
  const hi = least((one) => one.hi, highRank(closed));
  let lo = least((one) => one.lo, lowRank(closed));
  let isWhole = bounds.every((one) => one.isWhole);
  const must = lo > 0 ? { lo, hi: 0 } : { lo: 0, hi: Math.min(hi, 1) };
  const parts = boards.map((board, at) => {
    const best = findBest(board, budget, must);
    isWhole &&= best.isWhole;
    const { ofLo, ofHi } = bounds[at]!;
    return best.list ?? (must.lo > 0 ? ofLo : ofHi) ?? ofLo ?? fallbacks[at]!;
  });
  const value = parts.reduce((all, list, at) => all & valueOf(boards[at]!, list), closed);
  // A choice found keeps its verdict, though the search for bounds was given up before it came to one.
  lo = Math.max(lo, lowRank(value));
  return { problem, boards, lo, hi, list: parts.flat(), value, isWhole };
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

function valueOf(board: Board, list: RowList): Code {
  for (const { variable, row } of list) board.chosen[variable] = row;
  const value = board.update();
  board.reset();
  return value;
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
