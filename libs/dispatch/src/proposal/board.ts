/**
 * Some variables that hang together, with the rows chosen for them so far, and what that choice is worth.
 *
 * As rows are added more units go down, and no condition but `needsDown` gets better by that. So while rows are missing,
 * the value is an upper bound of all that can follow: rows not chosen yet count by the best of them, and `needsDown` by
 * true. Units, atoms and rows go by their numbers in the problem.
 */
import { agreedCode, ALL_FALSE, ALL_TRUE, ALL_UNKNOWN, highRank, type Code } from '../compiled/code.js';
import type { Atom, Choosable, Condition, Named, Option, Problem, Standing, Variable } from './problem.js';

/** No row chosen yet. */
export const NONE = -1;

/** A failed unit in one reading of the defects: whose it is (NONE outside this board), and which of its options. */
interface Failed {
  unit: number;
  variable: number;
  option: number;
}

export class Board {
  /** By number of variable; NONE where none is chosen. Where there is one row only, nothing is left to choose. */
  readonly chosen: Int32Array;
  /** Variables that need a row in this choice, after `update`. */
  readonly active: number[] = [];
  /** What each row of an active variable would be worth beside the rows chosen so far. */
  readonly #worth: Uint8Array[];
  readonly #readings: readonly (readonly Failed[])[];
  readonly #isFailed: readonly Uint8Array[];
  readonly #isDown: readonly Uint8Array[];
  /** In how many readings a unit is down without having failed. */
  readonly #considered: Uint16Array;
  readonly #atoms: Int16Array;
  readonly #stack: number[] = [];
  #isWhole = false;
  #mayTakeMore = false;

  constructor(
    readonly problem: Problem,
    /** Numbers of the variables, rising. */
    readonly variables: readonly number[],
    /** Which conditions count; all of them when null. */
    readonly counts: ((id: string) => boolean) | null = null,
  ) {
    const { units, atoms } = problem;
    this.chosen = new Int32Array(problem.variables.length);
    this.reset();
    this.#worth = problem.variables.map(({ rows }) => new Uint8Array(rows.length));
    this.#readings = readingsOf(problem, variables);
    this.#isFailed = this.#readings.map((failed) => {
      const flags = new Uint8Array(units.length);
      for (const { unit } of failed) flags[unit] = 1;
      return flags;
    });
    this.#isDown = this.#readings.map(() => new Uint8Array(units.length));
    this.#considered = new Uint16Array(units.length);
    this.#atoms = new Int16Array(atoms.length);
  }

  /**
   * Finds what is down under the rows chosen so far, and gives the value: an upper bound while rows are missing. With
   * `mayHelp`, nothing more is looked at once the value is no help; no row then counts as looked at.
   */
  update(mayHelp: (bound: Code) => boolean = () => true): Code {
    this.#spread();
    this.#atoms.fill(NONE);
    this.active.length = 0;
    this.#mayTakeMore = false;
    this.#isWhole = true;
    for (const variable of this.variables) {
      const { unit, rows } = this.#variable(variable);
      if (unit !== null && this.#considered[unit] === 0) continue;
      this.active.push(variable);
      if (unit !== null && this.problem.isUnsure[unit]) this.#mayTakeMore = true;
      if (rows.length > 0 && this.chosen[variable] === NONE) this.#isWhole = false;
    }
    let code = ALL_TRUE;
    for (const variable of this.active) {
      code &= this.#valueOf(variable);
      if (!mayHelp(code)) break;
    }
    return code;
  }

  /** Takes back every row chosen. */
  reset(): void {
    for (const [variable, { rows }] of this.problem.variables.entries())
      this.chosen[variable] = rows.length === 1 ? 0 : NONE;
  }

  /** True when no active variable lacks a row; after `update`. */
  get isWhole(): boolean {
    return this.#isWhole;
  }

  /** Worth of a row of an active variable that has none yet; after `update`. */
  worthOf(variable: number, row: number): Code {
    return this.#worth[variable]![row]!;
  }

  isOpen(variable: number): boolean {
    return this.chosen[variable] === NONE && this.#variable(variable).rows.length > 0;
  }

  /** What stands for one option under the rows chosen so far; null while that hangs on rows not chosen yet. */
  standingOf(variable: number, { group }: Choosable, option: Option): Standing | null {
    if (option.alone === option.shared || group === null) return option.alone;
    const { users, mayJoin } = this.#usersBeside(group, variable);
    const isUser = this.#variable(variable).defect !== null ? 1 : 0;
    if (users + isUser >= 2) return option.shared;
    return users + mayJoin + isUser < 2 ? option.alone : null;
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

  #spread(): void {
    const { ofUnit } = this.problem;
    this.#considered.fill(0);
    for (const [at, failed] of this.#readings.entries()) {
      const isDown = this.#isDown[at]!;
      isDown.fill(0);
      for (const { unit } of failed) isDown[unit] = 1;
      for (const { variable, option } of failed) if (variable !== NONE) this.#take(variable, option, isDown);
      for (let unit = this.#stack.pop(); unit !== undefined; unit = this.#stack.pop()) {
        this.#considered[unit]! += 1;
        this.#take(ofUnit[unit]!, 0, isDown);
      }
    }
  }

  /** Puts down what the chosen row of a variable takes along. */
  #take(variable: number, option: number, isDown: Uint8Array): void {
    const row = this.chosen[variable]!;
    if (row === NONE) return;
    for (const unit of this.#variable(variable).rows[row]!.options[option]!.takes) {
      if (isDown[unit] === 1) continue;
      isDown[unit] = 1;
      this.#stack.push(unit);
    }
  }

  #valueOf(variable: number): Code {
    const { rows, rowless, unit, basis } = this.#variable(variable);
    const isSure = unit === null || this.#considered[unit] === this.#readings.length;
    const chosen = this.chosen[variable]!;
    if (rows.length === 0) return this.#counts(basis) ? (isSure ? rowless : rowless | ALL_UNKNOWN) : ALL_TRUE;
    if (chosen !== NONE) return this.#rowValue(variable, rows[chosen]!, isSure);
    const worth = this.#worth[variable]!;
    let best = ALL_FALSE;
    for (let row = 0; row < rows.length; row++) best |= worth[row] = this.#rowValue(variable, rows[row]!, isSure);
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
    let code =
      standing === null
        ? this.#fixedValue(option.alone) | this.#fixedValue(option.shared)
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
      const { leaves, open, combine } = condition;
      for (const { at, atom } of open) leaves[at] = this.#atomValue(atom);
      return combine(leaves);
    }
    if (!this.#isWhole) return ALL_TRUE;
    return condition.units.reduce((all, unit) => all & this.#downValue(unit), ALL_TRUE);
  }

  #downValue(unit: number): Code {
    const seen =
      unit < 0 ? ALL_FALSE : agreedCode(this.#isDown.map((down) => (down[unit] === 1 ? ALL_TRUE : ALL_FALSE)));
    return seen === ALL_FALSE && this.#mayTakeMore ? ALL_UNKNOWN : seen;
  }

  #atomValue(atom: number): Code {
    const known = this.#atoms[atom]!;
    if (known !== NONE) return known;
    const asked = this.problem.atoms[atom]!;
    return (this.#atoms[atom] = asked.kind === 'work' ? this.#workValue(asked) : this.#countValue(asked));
  }

  #countValue({ kind, lists, holds }: Exclude<Atom, { kind: 'work' }>): Code {
    let [yes, no] = [false, false];
    const readings = kind === 'up' ? this.#isDown : this.#isFailed;
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
  #workValue({ group, nobody, users }: Extract<Atom, { kind: 'work' }>): Code {
    if (group < 0) return nobody;
    const owing: number[] = [];
    let best = nobody;
    let isOpen = false;
    for (const { variable, row } of this.problem.groups[group]!) {
      const { alone, shared } = users.get(variable)!;
      if (this.chosen[variable] === row) owing.push(variable);
      else if (this.chosen[variable] === NONE) isOpen = true;
      best |= alone | shared;
    }
    if (isOpen) return best;
    if (owing.length === 0) return nobody;
    return owing.reduce((all, variable) => {
      const { alone, shared } = users.get(variable)!;
      return all & (owing.length > 1 ? shared : alone);
    }, ALL_TRUE);
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

/** Every way to read these defects: for each of several possible units one. All others have failed in all of them. */
function readingsOf({ variables }: Problem, some: readonly number[]): Failed[][] {
  let wholes: Failed[][] = [[]];
  for (const [variable, one] of variables.entries()) {
    const units = failedUnits(one);
    const isOurs = some.includes(variable);
    if (units.length === 0 || (!isOurs && units.length > 1)) continue;
    wholes = wholes.flatMap((whole) =>
      units.map((unit, option) => [...whole, { unit, variable: isOurs ? variable : NONE, option }]),
    );
  }
  return wholes;
}

/** The unit that failed, or those of which one did; none for a defect on no unit of this aircraft. */
export function failedUnits({ defect, rows }: Variable): number[] {
  return defect === null ? [] : (rows[0]?.options ?? []).flatMap(({ unit }) => unit ?? []);
}
