/** Goes through the rows of one board, depth first, in an order that hangs on nothing but the problem. */
import type { Code } from '../compiled/code.js';
import type { Board } from './board.js';
import { NONE } from './chosen-rows.js';

/** Search nodes left; it counts them and never time. */
export class Budget {
  #used = 0;

  constructor(readonly most: number) {}

  get used(): number {
    return this.#used;
  }

  /** False when there is none left. */
  take(): boolean {
    if (this.#used >= this.most) return false;
    this.#used += 1;
    return true;
  }
}

export interface Visitor {
  /** Can anything worth having follow from here? `bound` is an upper bound of its value. */
  mayHelp(bound: Code): boolean;
  /** May a row that would be worth at most this be part of it? What may not, at a bound, can help in no way. */
  mayChoose(worth: Code): boolean;
  /** A whole choice. */
  found(value: Code): void;
  /** True when nothing better can come. */
  isDone(): boolean;
}

/** False when the budget ended before everything was seen. The rows chosen are as before. */
export function explore(board: Board, budget: Budget, visitor: Visitor): boolean {
  if (!budget.take()) return false;
  const bound = board.update(visitor.mayChoose);
  if (!visitor.mayHelp(bound)) return true;
  const next = nextVariable(board, visitor);
  if (next === null) {
    visitor.found(bound);
    return true;
  }
  for (const row of next.rows) {
    board.chosen[next.variable] = row;
    const whole = explore(board, budget, visitor);
    board.chosen[next.variable] = NONE;
    if (!whole) return false;
    if (visitor.isDone()) return true;
  }
  return true;
}

/** The variable with the fewest rows left, of these the first by place: what cannot work out then shows soonest. Best rows first, signed ones before. */
function nextVariable(board: Board, visitor: Visitor): { variable: number; rows: number[] } | null {
  let [first, fewest] = [NONE, Infinity];
  for (const variable of board.active) {
    if (!board.isOpen(variable)) continue;
    const left = rowsLeft(board, variable, visitor);
    if (left < fewest) [first, fewest] = [variable, left];
    if (left === 0) break;
  }
  if (first === NONE) return null;
  const { rows } = board.problem.variables[first]!;
  const worth = rows.map((_, row) => board.worthOf(first, row));
  const order = (row: number): number => rank(worth[row]!) * 2 + (rows[row]!.isChange ? 0 : 1);
  const left = rows.flatMap((_, row) => (visitor.mayChoose(worth[row]!) ? [row] : []));
  return { variable: first, rows: left.sort((a, b) => order(b) - order(a) || a - b) };
}

function rowsLeft(board: Board, variable: number, visitor: Visitor): number {
  const { length } = board.problem.variables[variable]!.rows;
  let left = 0;
  for (let row = 0; row < length; row++) if (visitor.mayChoose(board.worthOf(variable, row))) left += 1;
  return left;
}

/** Bits that are certain first, then those that are possible. */
function rank(code: Code): number {
  const bit = (at: number): number => (code >> at) & 1;
  return bit(1) * 8 + bit(3) * 4 + bit(0) * 2 + bit(2);
}
