/**
 * Which variables of a problem a change may touch: what a row is worth hangs on the units its conditions ask about, on who
 * else stands under a row of the same group, and on nothing else of the choice. A search changes one row at a step, so most
 * of what it found before still holds.
 */
import type { Atom, Condition, Problem } from './problem.js';

export interface Dependents {
  /** By number of unit: the variables to look at again once it goes down or comes up. */
  ofUnit: readonly (readonly number[])[];
  /** By number of variable: the others to look at again once it takes another row. */
  ofRow: readonly (readonly number[])[];
  /** Variables that hang on the whole choice. */
  ofAll: readonly number[];
}

const KNOWN = new WeakMap<Problem, Dependents>();

export function dependentsOf(problem: Problem): Dependents {
  let known = KNOWN.get(problem);
  if (known === undefined) KNOWN.set(problem, (known = found(problem)));
  return known;
}

function found({ variables, units, groups, atoms }: Problem): Dependents {
  const ofUnit = units.map((): number[] => []);
  const ofRow = variables.map((): number[] => []);
  const ofAll: number[] = [];
  for (const [variable, { unit, rows }] of variables.entries()) {
    if (unit !== null) add(ofUnit[unit]!, variable);
    for (const { group, options } of rows) {
      if (group !== null) for (const user of groups[group]!) add(ofRow[user.variable]!, variable);
      for (const { conditions } of options) for (const condition of conditions) hang(variable, condition);
    }
  }
  return { ofUnit, ofRow, ofAll };

  function hang(variable: number, condition: Condition): void {
    if (condition.kind === 'needs-down') add(ofAll, variable);
    else if (condition.kind === 'atom') hangOn(variable, atoms[condition.atom]!);
    else for (const { atom } of condition.open) hangOn(variable, atoms[atom]!);
  }

  function hangOn(variable: number, atom: Atom): void {
    if (atom.kind !== 'work')
      for (const list of atom.lists) for (const unit of list.units) add(ofUnit[unit]!, variable);
    else if (atom.group >= 0) for (const user of groups[atom.group]!) add(ofRow[user.variable]!, variable);
  }
}

/** Variables come in one after the other, so the same one stands last. */
function add(list: number[], variable: number): void {
  if (list.at(-1) !== variable) list.push(variable);
}
