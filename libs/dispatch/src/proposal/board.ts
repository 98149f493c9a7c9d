/**
 * Some variables that hang together, with the rows chosen for them so far, and what that choice is worth.
 *
 * As rows are added more units go down, and no condition but `needsDown` gets better by that. So while rows are missing,
 * the value is an upper bound of all that can follow: rows not chosen yet count by the best of them, and `needsDown` by
 * true. Units, atoms and rows go by their numbers in the problem.
 */
import { agreedCode, ALL_FALSE, ALL_TRUE, ALL_UNKNOWN, highRank, type Code } from '../compiled/code.js';
import { ChosenRows, NONE } from './chosen-rows.js';
import type { Atom, Choosable, Condition, Named, Option, Problem, Standing, Variable, WorkAtom } from './problem.js';

export class Board {
  /** By number of variable; NONE where none is chosen. Where there is one row only, nothing is left to choose. */
  readonly chosen: Int32Array;
  /** Variables that need a row in this choice, after `update`. */
  readonly active: readonly number[];
  /** What a row of an active variable would be worth beside the rows chosen so far; NONE where nobody has asked yet. */
  readonly #worth: Int8Array[];
  readonly #atoms: Int16Array;
  /** By number of variable: its value, and when it was found. */
  readonly #values: Uint8Array;
  readonly #foundAt: Int32Array;

  constructor(
    readonly problem: Problem,
    /** Numbers of the variables, rising. */
    readonly variables: readonly number[],
    /** Which conditions count; all of them when null. */
    readonly counts: ((id: string) => boolean) | null = null,
    readonly rows = new ChosenRows(problem, variables),
  ) {
    this.chosen = rows.chosen;
    this.active = rows.active;
    this.#worth = problem.variables.map((one) => new Int8Array(one.rows.length));
    this.#atoms = new Int16Array(problem.atoms.length);
    this.#values = new Uint8Array(problem.variables.length);
    this.#foundAt = new Int32Array(problem.variables.length).fill(NONE);
  }

  /**
   * Finds what is down under the rows chosen so far, and gives the value: an upper bound while rows are missing. With
   * `mayHelp`, nothing more is looked at once the value is no help; no row then counts as looked at.
   */
  update(mayHelp: (bound: Code) => boolean = () => true): Code {
    this.rows.spread();
    return this.value(mayHelp);
  }

  /** The value where it is known already what is down. */
  value(mayHelp: (bound: Code) => boolean = () => true): Code {
    this.#atoms.fill(NONE);
    let code = ALL_TRUE;
    for (const variable of this.active) {
      code &= this.#valueNow(variable);
      if (!mayHelp(code)) break;
    }
    return code;
  }

  /** Takes back every row chosen. */
  reset(): void {
    this.rows.reset();
  }

  /** True when no active variable lacks a row; after `update`. */
  get isWhole(): boolean {
    return this.rows.isWhole;
  }

  /** Worth of a row of an active variable that has none yet; after `update`, under the same rows. */
  worthOf(variable: number, row: number): Code {
    const worth = this.#worth[variable]!;
    if (worth[row] !== NONE) return worth[row]!;
    const { rows, unit } = this.#variable(variable);
    return (worth[row] = this.#rowValue(variable, rows[row]!, this.rows.isSure(unit)));
  }

  isOpen(variable: number): boolean {
    return this.rows.isOpen(variable);
  }

  /** What stands for one option under the rows chosen so far; null while that hangs on rows not chosen yet. */
  standingOf(variable: number, { group }: Choosable, option: Option): Standing | null {
    const { said } = this.problem;
    const alone = said.standing(option, false);
    if (group === null) return alone;
    const shared = said.standing(option, true);
    if (alone === shared) return alone;
    const { users, mayJoin } = this.#usersBeside(group, variable);
    const isUser = this.#variable(variable).defect !== null ? 1 : 0;
    if (users + isUser >= 2) return shared;
    return users + mayJoin + isUser < 2 ? alone : null;
  }

  /** Ids of the conditions that are certainly false after all work under the rows chosen; after `update`. */
  refusing(): Named[] {
    return this.active.flatMap((variable) => this.#refusingOf(variable));
  }

  #refusingOf(variable: number): Named[] {
    const { rows, rowless, basis } = this.#variable(variable);
    if (rows.length === 0) return highRank(rowless) === 0 ? [basis] : [];
    const row = rows[this.chosen[variable]!];
    if (row === undefined) return [];
    return row.options.flatMap((option) => [
      ...(this.standingOf(variable, row, option)?.parts ?? []).filter(({ code }) => highRank(code) === 0),
      ...option.conditions.filter((condition) => highRank(this.#conditionValue(condition)) === 0),
    ]);
  }

  #variable(number: number): Variable {
    return this.problem.variables[number]!;
  }

  /** Found anew only where something changed that it hangs on. */
  #valueNow(variable: number): Code {
    if (this.problem.said.mayChange || this.#foundAt[variable]! < this.rows.changedAt[variable]!) {
      this.#values[variable] = this.#valueOf(variable);
      this.#foundAt[variable] = this.rows.at;
    }
    return this.#values[variable]!;
  }

  #valueOf(variable: number): Code {
    const { rows, rowless, unit, basis } = this.#variable(variable);
    const isSure = this.rows.isSure(unit);
    const chosen = this.chosen[variable]!;
    if (rows.length === 0) return this.#counts(basis) ? (isSure ? rowless : rowless | ALL_UNKNOWN) : ALL_TRUE;
    if (chosen !== NONE) return this.#rowValue(variable, rows[chosen]!, isSure);
    this.#worth[variable]!.fill(NONE);
    let best = ALL_FALSE;
    for (let row = 0; row < rows.length && best !== ALL_TRUE; row++) best |= this.worthOf(variable, row);
    return best;
  }

  /** A unit that is down only in some readings takes nothing away when its row holds. */
  #rowValue(variable: number, row: Choosable, isSure: boolean): Code {
    const { options } = row;
    const [only] = options;
    const code =
      options.length === 1 && only !== undefined
        ? this.#optionValue(variable, row, only)
        : agreedCode(options.map((option) => this.#optionValue(variable, row, option)));
    return isSure ? code : code | ALL_UNKNOWN;
  }

  #optionValue(variable: number, row: Choosable, option: Option): Code {
    const standing = this.standingOf(variable, row, option);
    const { said } = this.problem;
    let code =
      standing === null
        ? this.#fixedValue(said.standing(option, false)) | this.#fixedValue(said.standing(option, true))
        : this.#fixedValue(standing);
    for (const condition of option.conditions) {
      if (code === ALL_FALSE) return code;
      if (!this.#counts(condition)) continue;
      code &= this.#conditionValue(condition);
    }
    return code;
  }

  #counts({ id }: Named): boolean {
    return this.counts === null || this.counts(id);
  }

  #fixedValue({ code, parts }: Standing): Code {
    if (this.counts === null) return code;
    return parts.reduce((all, part) => (this.#counts(part) ? all & part.code : all), ALL_TRUE);
  }

  #conditionValue(condition: Condition): Code {
    if (condition.kind === 'atom') return this.#atomValue(condition.atom);
    if (condition.kind === 'tree') {
      const leaves = this.problem.said.leaves(condition);
      for (const { at, atom } of condition.open) leaves[at] = this.#atomValue(atom);
      return condition.combine(leaves);
    }
    if (!this.isWhole) return ALL_TRUE;
    return condition.units.reduce((all, unit) => all & this.#downValue(unit), ALL_TRUE);
  }

  #downValue(unit: number): Code {
    const seen =
      unit < 0 ? ALL_FALSE : agreedCode(this.rows.isDown.map((down) => (down[unit] === 1 ? ALL_TRUE : ALL_FALSE)));
    return seen === ALL_FALSE && this.rows.mayTakeMore ? ALL_UNKNOWN : seen;
  }

  #atomValue(atom: number): Code {
    const known = this.#atoms[atom]!;
    if (known !== NONE) return known;
    const asked = this.problem.atoms[atom]!;
    return (this.#atoms[atom] = asked.kind === 'work' ? this.#workValue(asked) : this.#countValue(asked));
  }

  #countValue({ kind, lists, holds }: Exclude<Atom, { kind: 'work' }>): Code {
    let [yes, no] = [false, false];
    const readings = kind === 'up' ? this.rows.isDown : this.rows.isFailed;
    for (const bad of readings) {
      for (const { units, others } of lists) {
        let count = others;
        for (const unit of units) count += 1 - bad[unit]!;
        if (holds(count)) yes = true;
        else no = true;
      }
    }
    return yes === no ? ALL_UNKNOWN : yes ? ALL_TRUE : ALL_FALSE;
  }

  /** Everybody who owes the work must have it done; while it is open who does, the best of all possible cases. */
  #workValue(atom: WorkAtom): Code {
    const { said, groups } = this.problem;
    const nobody = said.work(atom, null, false);
    if (atom.group < 0) return nobody;
    const owing: string[] = [];
    let best = nobody;
    let isOpen = false;
    for (const { variable, row } of groups[atom.group]!) {
      const defect = this.#variable(variable).defect!.id;
      if (this.chosen[variable] === row) owing.push(defect);
      else if (this.chosen[variable] === NONE) isOpen = true;
      best |= said.work(atom, defect, false) | said.work(atom, defect, true);
    }
    if (isOpen) return best;
    if (owing.length === 0) return nobody;
    return owing.reduce((all, defect) => all & said.work(atom, defect, owing.length > 1), ALL_TRUE);
  }

  #usersBeside(group: number, self: number): { users: number; mayJoin: number } {
    let [users, mayJoin] = [0, 0];
    for (const { variable, row } of this.problem.groups[group]!) {
      if (variable === self) continue;
      if (this.chosen[variable] === row) users += 1;
      else if (this.chosen[variable] === NONE) mayJoin += 1;
    }
    return { users, mayJoin };
  }
}
