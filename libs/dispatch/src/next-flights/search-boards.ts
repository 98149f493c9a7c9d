/**
 * The best plan by boards (rule 8): a choice grows row by row on the boards of all flights at once, and is left as soon as
 * no plan that follows from it can be better than the best one flown so far, nor keep more flights possible. Every whole
 * choice that is left is flown through, exactly.
 */
import { highRank, lowRank } from '../compiled/code.js';
import { NONE, type ChosenRows } from '../proposal/chosen-rows.js';
import { costOf, isListBehind, listOf, type RowList } from '../proposal/cost.js';
import { isBetterPlan } from './best-plan.js';
import type { FlyByValue, PlanByValue } from './fly-by-value.js';
import type { Budget } from './fly-plan.js';
import type { PlanBoard } from './plan-boards.js';

/** At most so many leading flights are kept, are possible, and of the kept ones leave without work. */
interface Bound {
  p: number;
  q: number;
  mayFly: number;
}

export class SearchBoards {
  best: PlanByValue | null = null;
  /** The greatest q of all choices. */
  possible = 0;

  constructor(
    readonly flying: FlyByValue,
    readonly chosen: ChosenRows,
    readonly boards: readonly PlanBoard[],
    readonly budget: Budget,
  ) {}

  run(): void {
    // Beside a plan that keeps a flight, one that is sure to keep none is never the better: these are left out at first.
    for (const list of this.#wholeChoices(1)) this.#try(list);
    if (this.best === null || this.best.p === 0) for (const list of this.#wholeChoices(0)) this.#try(list);
    if (this.best !== null) this.best = this.#flyOn(this.best);
  }

  /** Through the flights that did not count beside other plans. */
  #flyOn(plan: PlanByValue): PlanByValue {
    const { length } = this.flying.plan.flights;
    if (this.boards.length < length) this.budget.left -= length;
    return plan.values.length < length ? this.flying.fly(plan.list, length) : plan;
  }

  get #first() {
    return this.boards[0]!.board;
  }

  /** No plan gets past the flight of the last board, so plans are told apart by then. */
  #try(list: RowList): void {
    this.budget.left -= this.boards.length;
    const plan = this.flying.fly(list, this.boards.length, 'while possible');
    this.possible = Math.max(this.possible, plan.q);
    if (this.best === null || isBetterPlan(plan, this.best)) this.best = plan;
  }

  /** Those that may still be of use when their turn comes. @param least flights that must be possible, for all that is known */
  *#wholeChoices(least: 0 | 1): Generator<RowList> {
    if ((this.best !== null || least > 0) && this.budget.left <= 0) return;
    this.budget.left -= 1;
    const bound = this.#bound();
    if (bound.q < least || !this.#mayHelp(bound)) return;
    const next = this.#nextVariable(bound.q);
    if (next === null) {
      yield listOf(this.#first);
      return;
    }
    for (const row of next.rows) {
      this.chosen.chosen[next.variable] = row;
      yield* this.#wholeChoices(least);
      this.chosen.chosen[next.variable] = NONE;
    }
  }

  #bound(): Bound {
    const bound: Bound = { p: 0, q: 0, mayFly: 0 };
    this.chosen.spread();
    for (const [index, { board, gates }] of this.boards.entries()) {
      const value = board.value() & gates;
      if (highRank(value) === 0) break;
      bound.q = index + 1;
      if (bound.p < index || lowRank(value) === 0) continue;
      bound.p = index + 1;
      if (lowRank(value) === 2) bound.mayFly += 1;
    }
    return bound;
  }

  #mayHelp({ p, q, mayFly }: Bound): boolean {
    if (this.best === null || q > this.possible) return true;
    const [kept = 0, atMayFly = 0, changes = 0, untimed = 0, minutes = 0] = this.best.order;
    if (p !== -kept) return p > -kept;
    if (mayFly !== -atMayFly) return mayFly > -atMayFly;
    const cost = costOf(this.#first, (variable) => this.#mustChange(variable));
    if (cost.changes !== changes) return cost.changes < changes;
    // Work counts on the flights that are kept.
    const [least, soon] = p === 0 ? [0, 0] : [cost.untimed, cost.minutes];
    if (least !== untimed) return least < untimed;
    if (soon !== minutes) return soon < minutes;
    return !isListBehind(this.#first, this.best.list, () => true);
  }

  #mustChange(variable: number): boolean {
    return this.#first.problem.variables[variable]!.rows.every(({ isChange }) => isChange);
  }

  /** The first by place. Rows that keep most flights come first, signed ones before others. */
  #nextVariable(seen: number): { variable: number; rows: number[] } | null {
    const variable = this.#first.active.find((one) => this.#first.isOpen(one));
    if (variable === undefined) return null;
    const boards = this.boards.slice(0, Math.max(1, seen));
    const keeps = (row: number): number => {
      const broken = boards.findIndex(({ board }) => lowRank(board.worthOf(variable, row)) === 0);
      return broken < 0 ? boards.length : broken;
    };
    const { rows } = this.#first.problem.variables[variable]!;
    const order = rows.map(({ isChange }, row) => ({ row, keeps: keeps(row), isChange }));
    order.sort((a, b) => b.keeps - a.keeps || Number(a.isChange) - Number(b.isChange) || a.row - b.row);
    return { variable, rows: order.map(({ row }) => row) };
  }
}
