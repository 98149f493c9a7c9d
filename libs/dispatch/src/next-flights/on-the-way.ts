/** One choice of rows on its way through a plan: what it had signed and done at the stops behind it. */
import { choiceOf } from '../proposal/find-choice.js';
import type { ChosenRows } from '../proposal/chosen-rows.js';
import { listOf } from '../proposal/cost.js';
import type { Act, Option } from '../proposal/problem.js';
import { situationUnder } from '../proposal/rows-of-defect.js';
import { COMBINATION } from '../gates.js';
import type { Situation } from '../situation.js';
import { isSignature } from './fly-on.js';
import type { DoneOnWay, PlanStops } from './plan-stops.js';

export class OnTheWay {
  /** Of the rows that the choice takes, in the order of their variables. */
  readonly options: readonly Option[];
  /** The same for two choices that the conditions of the whole aircraft cannot tell apart. */
  readonly asGatesSee: string;
  /** A judgement that a row asks for was given on certain rows of others, and is asked again under others. */
  readonly judgementsHangOnRows: boolean;
  readonly #rows: ReadonlyMap<string, string | null>;
  /** How many defects stand under a row, by `<entry>/<row>`. */
  readonly #users = new Map<string, number>();
  /** What was done of a row, by `<entry>/<row>`. */
  readonly #histories = new Map<string, string>();
  readonly #done: DoneOnWay[] = [];
  readonly #signed = new Set<string>();

  constructor(
    readonly plan: PlanStops,
    chosen: ChosenRows,
  ) {
    const { variables } = chosen.problem;
    this.options = chosen.active.flatMap((one) => variables[one]!.rows[chosen.chosen[one]!]?.options ?? []);
    this.#rows = choiceOf(chosen.problem, listOf(chosen)).recorded;
    const { defects, judgements } = plan.start;
    for (const { id, entry, row } of defects) {
      const key = rowKey(entry, this.#rows.get(id) ?? row);
      this.#users.set(key, (this.#users.get(key) ?? 0) + 1);
    }
    const given = judgements.filter(({ givenOn }) => givenOn !== undefined);
    const rows = defects.map(({ id, row }) => this.#rows.get(id) ?? row);
    this.asGatesSee = JSON.stringify(given.length > 0 ? rows : rows.map((row) => row === null));
    this.judgementsHangOnRows = given.some(({ judgement }) => judgement !== COMBINATION);
  }

  /** The same for two choices that have done the same of the work of this row, for as many defects. */
  ownWork({ item, row }: Option): string {
    const key = rowKey(item.defect?.entry ?? item.entry?.number ?? null, row);
    const others = this.judgementsHangOnRows ? this.asGatesSee : '';
    return `${this.#users.get(key) ?? 0} ${this.#histories.get(key) ?? ''} ${others}`;
  }

  /** Everything that could be done before this stop's flight is. */
  doAt(stop: number, acts: Iterable<Act>): void {
    for (const { work, defect } of acts) {
      if (isSignature({ work })) {
        if (defect !== undefined) this.#signed.add(defect);
        continue;
      }
      this.#done.push({ work, stop, ...(defect === undefined ? {} : { defect }) });
      const key = work.slice(0, work.lastIndexOf('/'));
      this.#histories.set(key, `${this.#histories.get(key) ?? ''}${stop} ${work} ${defect ?? ''};`);
    }
  }

  /** Rows that are not signed before the first flight. */
  changesFrom(start: Situation): number {
    const { defects } = situationUnder(start, this.#rows);
    return defects.filter(({ signed, row }) => !signed && row !== null).length;
  }

  situationAt(index: number): Situation {
    const arrived = situationUnder(this.plan.arrival(index), this.#rows);
    return this.plan.leaving(index, {
      ...arrived,
      defects: arrived.defects.map((defect) => (this.#signed.has(defect.id) ? { ...defect, signed: true } : defect)),
      work: [...arrived.work, ...this.#done.map((one) => this.plan.record(one, index))],
    });
  }
}

function rowKey(entry: string | null, row: string | null): string {
  return `${entry ?? ''}/${row ?? ''}`;
}
