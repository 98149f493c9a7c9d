/** What a choice costs (rule 8): rows changed from the signed ones, then work minutes, then the list of its rows. */
import { byCode } from '../units/unit.js';
import type { Board } from './board.js';
import { NONE } from './chosen-rows.js';

export interface Cost {
  changes: number;
  /** Outstanding acts of which nobody has said how long they take; any known time is better. */
  untimed: number;
  minutes: number;
}

/** So far: of the rows chosen, and of a change that cannot be avoided. */
export function costOf(board: Board, mustChange: (variable: number) => boolean): Cost {
  const cost: Cost = { changes: 0, untimed: 0, minutes: 0 };
  const counted = new Set<string>();
  for (const variable of board.active) {
    const chosen = board.chosen[variable]!;
    if (chosen === NONE) {
      if (board.isOpen(variable) && mustChange(variable)) cost.changes += 1;
      continue;
    }
    const row = board.problem.variables[variable]!.rows[chosen]!;
    if (row.isChange) cost.changes += 1;
    for (const option of row.options) {
      for (const { key, minutes } of board.standingOf(variable, row, option)?.acts ?? []) {
        if (counted.has(key)) continue;
        counted.add(key);
        if (minutes === null) cost.untimed += 1;
        else cost.minutes += minutes;
      }
    }
  }
  return cost;
}

export function sumOf(costs: readonly Cost[]): Cost {
  const sum = (of: keyof Cost): number => costs.reduce((all, cost) => all + cost[of], 0);
  return { changes: sum('changes'), untimed: sum('untimed'), minutes: sum('minutes') };
}

export function compareCosts(a: Cost, b: Cost): number {
  return a.changes - b.changes || a.untimed - b.untimed || a.minutes - b.minutes;
}

/** A whole choice: the row of each active variable, by place. */
export type RowList = readonly { variable: number; row: number }[];

export function listOf({ active, chosen }: Pick<Board, 'active' | 'chosen'>): RowList {
  return active.flatMap((variable) => {
    const row = chosen[variable]!;
    return row === NONE ? [] : [{ variable, row }];
  });
}

export function byPlace(list: RowList): RowList {
  return [...list].sort((a, b) => a.variable - b.variable);
}

/** By place, then by row; what comes first in one and is missing in the other makes it the smaller. */
export function compareLists(board: Board, a: RowList, b: RowList, boardOfB = board): number {
  for (let at = 0; at < Math.min(a.length, b.length); at++) {
    const [x, y] = [a[at]!, b[at]!];
    if (x.variable !== y.variable) return x.variable - y.variable;
    const order = byCode(rowId(board, x), rowId(boardOfB, y));
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

/**
 * True when every choice that follows from the rows chosen so far has a greater list. Said only while no variable that
 * is not active yet could come in before the first difference.
 */
export function isListBehind(board: Board, list: RowList, mayChoose: (worth: number) => boolean): boolean {
  for (const [at, variable] of board.active.entries()) {
    const other = list[at];
    if (other?.variable !== variable || board.variables[at] !== variable) return false;
    const chosen = board.chosen[variable]!;
    const rows = board.problem.variables[variable]!.rows;
    const open = chosen === NONE ? rows.findIndex((_, row) => mayChoose(board.worthOf(variable, row))) : chosen;
    const order = open < 0 ? 0 : byCode(rows[open]!.id ?? '', rowId(board, other));
    if (order !== 0) return order > 0;
    if (chosen === NONE) return false;
  }
  return false;
}

function rowId({ problem }: Board, { variable, row }: RowList[number]): string {
  return problem.variables[variable]!.rows[row]!.id ?? '';
}
