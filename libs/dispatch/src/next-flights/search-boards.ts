/**
 * The best plan by boards (rule 8): a choice grows row by row on the boards of all flights at once, and is left as soon as
 * no plan that follows from it can be better than the best one flown so far, nor keep more flights possible. Every whole
 * choice that is left is flown through exactly.
 */
import type { Row } from '#mel';
import { highRank, lowRank } from '../compiled/code.js';
import { NONE } from '../proposal/board.js';
import { costOf, isListBehind, listOf, type RowList } from '../proposal/cost.js';
import { choiceOf } from '../proposal/find-choice.js';
import { situationUnder } from '../proposal/rows-of-defect.js';
import type { PlannedFlight, Situation } from '../situation.js';
import type { Stops } from './at-stop.js';
import { isBetterPlan, judgedPlan, ordering, type JudgedPlan } from './best-plan.js';
import { flyPlans, type Budget } from './fly-plan.js';
import type { PlanBoard } from './plan-boards.js';

/** At most so many leading flights are kept, are possible, and of the kept ones leave without work. */
interface Bound {
  p: number;
  q: number;
  mayFly: number;
}

export class SearchBoards {
  best: JudgedPlan | null = null;
  possible = 0;
  #bestList: RowList = [];

  constructor(
    readonly stops: Stops,
    readonly start: Situation,
    readonly flights: readonly PlannedFlight[],
    readonly boards: readonly PlanBoard[],
    readonly budget: Budget,
  ) {}

  async run(): Promise<void> {
    for (const list of this.#wholeChoices()) await this.#try(list);
    if (this.best === null || this.boards.length === this.flights.length) return;
    for await (const plan of this.#fly(this.#bestList, this.flights)) this.best = plan;
  }

  get #first() {
    return this.boards[0]!.board;
  }

  /** No plan gets past the flight of the last board, so plans are told apart by then. */
  async #try(list: RowList): Promise<void> {
    for await (const plan of this.#fly(list, this.flights.slice(0, this.boards.length))) {
      this.possible = Math.max(this.possible, plan.q);
      if (this.best !== null && !isBetterPlan(plan, this.best)) continue;
      [this.best, this.#bestList] = [plan, list];
    }
  }

  async *#fly(list: RowList, flights: readonly PlannedFlight[]): AsyncGenerator<JudgedPlan> {
    const { recorded, considered } = choiceOf(this.#first.problem, list);
    const situation = situationUnder(this.start, recorded);
    const taken = new Map<string, Row>(considered);
    for await (const legs of flyPlans(this.stops, situation, flights, this.budget, undefined, taken)) {
      yield judgedPlan(situation, legs);
    }
  }

  /** Those that may still be of use when their turn comes. */
  *#wholeChoices(): Generator<RowList> {
    if (this.best !== null && this.budget.left <= 0) return;
    this.budget.left -= 1;
    const bound = this.#bound();
    if (!this.#mayHelp(bound)) return;
    const next = this.#nextVariable(bound.q);
    if (next === null) {
      yield listOf(this.#first);
      return;
    }
    for (const row of next.rows) {
      for (const { board } of this.boards) board.chosen[next.variable] = row;
      yield* this.#wholeChoices();
      for (const { board } of this.boards) board.chosen[next.variable] = NONE;
    }
  }

  #bound(): Bound {
    const bound: Bound = { p: 0, q: 0, mayFly: 0 };
    for (const [index, { board, gates }] of this.boards.entries()) {
      const value = board.update() & gates;
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
    const [kept = 0, atMayFly = 0, changes = 0, untimed = 0, minutes = 0] = ordering(this.best);
    if (p !== -kept) return p > -kept;
    if (mayFly !== -atMayFly) return mayFly > -atMayFly;
    const cost = costOf(this.#first, (variable) => this.#mustChange(variable));
    if (cost.changes !== changes) return cost.changes < changes;
    // Work counts on the flights that are kept.
    const [least, soon] = p === 0 ? [0, 0] : [cost.untimed, cost.minutes];
    if (least !== untimed) return least < untimed;
    if (soon !== minutes) return soon < minutes;
    return !isListBehind(this.#first, this.#bestList, () => true);
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
