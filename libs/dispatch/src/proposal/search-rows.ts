/** The two searches over one board: for the greatest bounds of any choice (rule 6), and for the best choice (rule 8). */
import { highRank, lowRank, type Code } from '../compiled/code.js';
import type { Board } from './board.js';
import { compareCosts, compareLists, costOf, isListBehind, listOf, type Cost, type RowList } from './cost.js';
import { explore, type Budget } from './explore.js';

export interface Bounds {
  /** 2 may fly, 1 after work, 0 may not fly; the greatest over all choices, each by itself. */
  lo: number;
  /** An upper bound where the search was given up. */
  hi: number;
  /** The choices that have them. */
  ofLo: RowList | null;
  ofHi: RowList | null;
  isWhole: boolean;
}

export function findBounds(board: Board, budget: Budget): Bounds {
  const found: Bounds = { lo: -1, hi: -1, ofLo: null, ofHi: null, isWhole: true };
  const ceiling = board.update();
  const [mostLo, mostHi] = [lowRank(ceiling), highRank(ceiling)];
  const mayHelp = (bound: Code): boolean => lowRank(bound) > found.lo || highRank(bound) > found.hi;
  found.isWhole = explore(board, budget, {
    mayHelp,
    mayChoose: mayHelp,
    found: (value) => {
      if (lowRank(value) > found.lo) Object.assign(found, { lo: lowRank(value), ofLo: listOf(board) });
      if (highRank(value) > found.hi) Object.assign(found, { hi: highRank(value), ofHi: listOf(board) });
    },
    isDone: () => found.lo >= mostLo && found.hi >= mostHi,
  });
  if (!found.isWhole) found.hi = mostHi;
  return { ...found, lo: Math.max(found.lo, 0), hi: Math.max(found.hi, 0) };
}

/** What a choice must reach to be looked at: certainly so much, possibly so much. */
export interface Least {
  lo: number;
  hi: number;
}

export interface Best {
  list: RowList | null;
  isWhole: boolean;
}

export function findBest(board: Board, budget: Budget, { lo, hi }: Least): Best {
  let best: { cost: Cost; list: RowList } | null = null;
  const reaches = (code: Code): boolean => lowRank(code) >= lo && highRank(code) >= hi;
  const mustChange = (variable: number): boolean =>
    board.problem.variables[variable]!.rows.every(
      ({ isChange }, row) => isChange || !reaches(board.worthOf(variable, row)),
    );
  const isWhole = explore(board, budget, {
    mayHelp: (bound) => {
      if (!reaches(bound)) return false;
      if (best === null) return true;
      const order = compareCosts(costOf(board, mustChange), best.cost);
      return order < 0 || (order === 0 && !isListBehind(board, best.list, reaches));
    },
    mayChoose: reaches,
    found: () => {
      const [cost, list] = [costOf(board, mustChange), listOf(board)];
      const order = best === null ? -1 : compareCosts(cost, best.cost) || compareLists(board, list, best.list);
      if (order < 0) best = { cost, list };
    },
    isDone: () => false,
  });
  return { list: (best as { list: RowList } | null)?.list ?? null, isWhole };
}
