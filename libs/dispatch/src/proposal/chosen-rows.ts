/**
 * The rows chosen so far for some variables of a problem, and what is down under them. That is the same whatever a flight
 * or the clock says of the rows, so the boards of a whole plan stand on it together.
 */
import { dependentsOf, type Dependents } from './dependents.js';
import type { Problem, Variable } from './problem.js';

/** No row chosen yet. */
export const NONE = -1;

/** A failed unit in one reading of the defects: whose it is (NONE outside these variables), and which of its options. */
interface Failed {
  unit: number;
  variable: number;
  option: number;
}

export class ChosenRows {
  /** By number of variable; NONE where none is chosen. Where there is one row only, nothing is left to choose. */
  readonly chosen: Int32Array;
  /** Variables that need a row in this choice, after `spread`. */
  readonly active: number[] = [];
  readonly isFailed: readonly Uint8Array[];
  readonly isDown: readonly Uint8Array[];
  readonly #readings: readonly (readonly Failed[])[];
  /** In how many readings a unit is down without having failed. */
  readonly #considered: Uint16Array;
  readonly #stack: number[] = [];
  /** Counts the times it was found what is down. */
  at = 0;
  /** By number of variable: when something changed last that its rows' worth hangs on. */
  readonly changedAt: Int32Array;
  readonly #dependents: Dependents;
  readonly #wasChosen: Int32Array;
  readonly #wasDown: readonly Uint8Array[];
  readonly #wasConsidered: Uint16Array;
  #isWhole = false;
  #mayTakeMore = false;

  constructor(
    readonly problem: Problem,
    /** Numbers of the variables, rising. */
    readonly variables: readonly number[],
  ) {
    const { units } = problem;
    this.chosen = new Int32Array(problem.variables.length);
    this.reset();
    this.#readings = readingsOf(problem, variables);
    this.isFailed = this.#readings.map((failed) => {
      const flags = new Uint8Array(units.length);
      for (const { unit } of failed) flags[unit] = 1;
      return flags;
    });
    this.isDown = this.#readings.map(() => new Uint8Array(units.length));
    this.#considered = new Uint16Array(units.length);
    this.changedAt = new Int32Array(problem.variables.length);
    this.#dependents = dependentsOf(problem);
    this.#wasChosen = this.chosen.slice();
    this.#wasDown = this.isDown.map((down) => down.slice());
    this.#wasConsidered = this.#considered.slice();
  }

  /** Takes back every row chosen. */
  reset(): void {
    for (const [variable, { rows }] of this.problem.variables.entries())
      this.chosen[variable] = rows.length === 1 ? 0 : NONE;
  }

  /** Finds what is down, and which variables need a row by that. */
  spread(): void {
    this.#spreadDown();
    this.#noteChanges();
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
  }

  /** True when no active variable lacks a row; after `spread`. */
  get isWhole(): boolean {
    return this.#isWhole;
  }

  /** A unit of unknown configuration is down, and may take any other along; after `spread`. */
  get mayTakeMore(): boolean {
    return this.#mayTakeMore;
  }

  isOpen(variable: number): boolean {
    return this.chosen[variable] === NONE && this.#variable(variable).rows.length > 0;
  }

  /** Whether the unit is down in every reading. A failed one always is. */
  isSure(unit: number | null): boolean {
    return unit === null || this.#considered[unit] === this.#readings.length;
  }

  #variable(number: number): Variable {
    return this.problem.variables[number]!;
  }

  /** Since it was found last what is down. */
  #noteChanges(): void {
    this.at += 1;
    const { ofUnit, ofRow, ofAll } = this.#dependents;
    for (let unit = 0; unit < ofUnit.length; unit++) if (this.#isOtherwise(unit)) this.#touch(ofUnit[unit]!);
    for (const variable of this.variables) {
      if (this.chosen[variable] === this.#wasChosen[variable]) continue;
      this.changedAt[variable] = this.at;
      this.#touch(ofRow[variable]!);
    }
    this.#touch(ofAll);
    this.#wasChosen.set(this.chosen);
    this.#wasConsidered.set(this.#considered);
    for (let reading = 0; reading < this.isDown.length; reading++) this.#wasDown[reading]!.set(this.isDown[reading]!);
  }

  #isOtherwise(unit: number): boolean {
    if (this.#considered[unit] !== this.#wasConsidered[unit]) return true;
    for (let reading = 0; reading < this.isDown.length; reading++)
      if (this.isDown[reading]![unit] !== this.#wasDown[reading]![unit]) return true;
    return false;
  }

  #touch(variables: readonly number[]): void {
    for (const variable of variables) this.changedAt[variable] = this.at;
  }

  #spreadDown(): void {
    const { ofUnit } = this.problem;
    this.#considered.fill(0);
    for (const [at, failed] of this.#readings.entries()) {
      const isDown = this.isDown[at]!;
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
