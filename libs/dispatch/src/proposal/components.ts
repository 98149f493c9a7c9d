/**
 * Splits a problem into parts that no choice in one can change for another. Without units taken along the rows are
 * independent: what fails stays failed whatever row is chosen. So two entries hang together only where a row of one takes
 * units of the other along, or looks at units that some row may take along or of which nobody knows which failed, or asks
 * for work of the other.
 */
import { failedUnits } from './chosen-rows.js';
import type { Atom, Choosable, Condition, Problem } from './problem.js';

/** Numbers of variables, each rising; the parts in the order of their first variables. */
export function componentsOf(problem: Problem): number[][] {
  const { variables, units, isUnsure } = problem;
  const joined = new Joined();
  const rows = variables.flatMap((variable) => variable.rows.map((row) => ({ entry: variable.entry, row })));
  const conditions = rows.flatMap(({ row }) => row.options.flatMap((option) => option.conditions));
  // A unit of unknown configuration may take any unit along, and only `needsDown` asks after that.
  const oneForAll = isUnsure.includes(true) && conditions.some(({ kind }) => kind === 'needs-down');
  for (const { entry } of variables) joined.join(entry, oneForAll ? '' : entry);
  const perhaps = new Set(variables.map(failedUnits).flatMap((some) => (some.length > 1 ? some : [])));
  for (const { entry, row } of rows) {
    for (const unit of touched(problem, row, perhaps)) joined.join(entry, units[unit]!.entry);
    for (const other of owners(problem, row)) joined.join(entry, variables[other]!.entry);
  }
  const parts = new Map<string, number[]>();
  for (const [at, { entry }] of variables.entries()) {
    // A defect on no entry stands by itself.
    const name = entry === '' && !oneForAll ? `defect ${at}` : joined.nameOf(entry);
    parts.set(name, [...(parts.get(name) ?? []), at]);
  }
  return [...parts.values()];
}

/** Units that a row takes along, and those it looks at that are not the same in every choice and reading. */
function touched({ atoms, ofUnit }: Problem, { options }: Choosable, perhaps: ReadonlySet<number>): number[] {
  const looked = options.flatMap(({ conditions }) => conditions.flatMap((one) => unitsIn(one, atoms)));
  const differs = (unit: number): boolean => (ofUnit[unit] ?? -1) >= 0 || perhaps.has(unit);
  return [...options.flatMap(({ takes }) => takes), ...looked.filter(differs)];
}

function owners({ atoms, groups }: Problem, { options }: Choosable): number[] {
  return options
    .flatMap(({ conditions }) => conditions.flatMap((one) => atomsIn(one)))
    .flatMap((number) => {
      const atom = atoms[number]!;
      return atom.kind === 'work' && atom.group >= 0 ? groups[atom.group]!.map(({ variable }) => variable) : [];
    });
}

function unitsIn(condition: Condition, atoms: readonly Atom[]): readonly number[] {
  if (condition.kind === 'needs-down') return condition.units;
  return atomsIn(condition).flatMap((number) => {
    const atom = atoms[number]!;
    return atom.kind !== 'work' ? atom.lists.flatMap(({ units }) => units) : [];
  });
}

function atomsIn(condition: Condition): number[] {
  if (condition.kind === 'atom') return [condition.atom];
  return condition.kind === 'tree' ? condition.open.map(({ atom }) => atom) : [];
}

class Joined {
  readonly #above = new Map<string, string>();

  join(one: string, other: string): void {
    this.#above.set(this.nameOf(one), this.nameOf(other));
  }

  nameOf(one: string): string {
    let name = one;
    for (let next = this.#above.get(name); next !== undefined && next !== name; next = this.#above.get(name))
      name = next;
    return name;
  }
}
