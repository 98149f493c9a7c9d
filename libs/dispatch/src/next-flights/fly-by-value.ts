/**
 * Flies whole choices of rows through a plan by their values alone, for a search that compares many. Reasons are told of
 * the best one only, by flying it again in full.
 */
import { highRank, lowRank, type Code } from '../compiled/code.js';
import { Board } from '../proposal/board.js';
import { ChosenRows, NONE } from '../proposal/chosen-rows.js';
import { listOf, type RowList } from '../proposal/cost.js';
import type { Act, Problem } from '../proposal/problem.js';
import { byCode } from '../units/unit.js';
import { leading, orderOf, type Ranked } from './best-plan.js';
import { OnTheWay } from './on-the-way.js';
import type { PlanStops } from './plan-stops.js';
import { SaidUnderChoice } from './said-under-choice.js';

/** The value of one flight, the gates included; and that of the gates alone. */
export interface FlownByValue {
  value: Code;
  gates: Code;
}

export interface PlanByValue extends Ranked {
  list: RowList;
  values: readonly FlownByValue[];
  /** Leading flights that may be kept if the unknown turns out well. */
  q: number;
}

/** A flight that left, with what was to be done before it. */
interface Left extends FlownByValue {
  acts: ReadonlyMap<string, Act>;
}

export class FlyByValue {
  readonly #rows: ChosenRows;
  readonly #stops: { said: SaidUnderChoice; board: Board }[] = [];

  constructor(
    readonly problem: Problem,
    readonly plan: PlanStops,
  ) {
    this.#rows = new ChosenRows(problem, [...problem.variables.keys()]);
  }

  /** The choice where there is but one: no unit that is down could have another row. Otherwise null. */
  only(): RowList | null {
    this.#take([]);
    return this.#rows.isWhole ? listOf(this.#rows) : null;
  }

  /** Through so many flights, or up to the first that is not possible: none behind it tells plans apart. */
  fly(list: RowList, count: number, how: 'all' | 'while possible' = 'all'): PlanByValue {
    this.#take(list);
    const way = new OnTheWay(this.plan, this.#rows);
    const legs: Left[] = [];
    while (legs.length < count) {
      const leg = this.#leave(legs.length, way);
      legs.push(leg);
      if (how === 'while possible' && highRank(leg.value) === 0) break;
    }
    const p = leading(legs, ({ value }) => lowRank(value) > 0);
    const kept = legs.slice(0, p);
    const active = [...this.#rows.active];
    return {
      list,
      values: legs,
      p,
      q: leading(legs, ({ value }) => highRank(value) > 0),
      order: orderOf({
        p,
        atMayFly: kept.filter(({ value }) => lowRank(value) === 2).length,
        changes: way.changesFrom(this.plan.start),
        work: kept.flatMap(({ acts }) => [...acts.values()]),
      }),
      rows: () => rowsOf(this.problem, active, list),
    };
  }

  #take(list: RowList): void {
    this.#rows.reset();
    for (const { variable, row } of list) this.#rows.chosen[variable] = row;
    this.#rows.spread();
  }

  #leave(index: number, way: OnTheWay): Left {
    const { said, board } = (this.#stops[index] ??= this.#stop(index));
    said.look(way);
    const gates = said.gates();
    const acts = new Map<string, Act>();
    const value = board.value() & gates;
    for (const option of way.options) for (const act of said.standing(option).acts) acts.set(act.key, act);
    way.doAt(index, acts.values());
    return { value, gates, acts };
  }

  #stop(index: number) {
    const said = new SaidUnderChoice(this.plan, index);
    return { said, board: new Board({ ...this.problem, said }, this.#rows.variables, null, this.#rows) };
  }
}

/** Entry, unit and row of all that is down, as the list that decides between equals has them. */
function rowsOf({ variables }: Problem, active: readonly number[], list: RowList): string {
  const chosen = new Map(list.map(({ variable, row }) => [variable, row]));
  const lines = active.flatMap((variable) => {
    const { rows, place } = variables[variable]!;
    const options = rows[chosen.get(variable) ?? NONE]?.options;
    if (options === undefined) return [`${place[0]}\n${place[1]}\n`];
    return options.map(({ item }) => `${item.entry?.number ?? ''}\n${item.unit}\n${item.row?.id ?? ''}`);
  });
  return lines.sort(byCode).join('\n');
}
