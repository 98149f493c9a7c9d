/** How often the random cases held what they are drawn for: a property means little if what it is about never came up. */
import type { PlainCase } from './oracles/plain-case.js';

export class Tally {
  #cases = 0;
  readonly #times = new Map<string, number>();

  add(plain: PlainCase, ...also: string[]): void {
    this.#cases += 1;
    for (const what of [...heldBy(plain), ...also]) this.#times.set(what, this.times(what) + 1);
  }

  get cases(): number {
    return this.#cases;
  }

  times(what: string): number {
    return this.#times.get(what) ?? 0;
  }

  share(what: string): number {
    return this.times(what) / this.#cases;
  }

  toString(): string {
    const parts = [...this.#times].sort(([a], [b]) => (a < b ? -1 : 1));
    return parts.map(([what, times]) => `${what} ${((100 * times) / this.#cases).toFixed(1)} %`).join(', ');
  }
}

/**
 * A chain: some row of a unit that may be down calls another unit considered inoperative. A cycle: following such rows
 * from a failed unit leads through two units or more and back. One of these: nobody knows which unit failed.
 */
function heldBy(plain: PlainCase): string[] {
  const taken = takenBy(plain);
  const failed = plain.defects.flatMap(({ entry, units }) => units.map((unit) => `${entry}/${unit}`));
  const reached = reach(failed, taken);
  const others = (unit: string): string[] => (taken.get(unit) ?? []).filter((one) => one !== unit);
  const isCycle = (unit: string): boolean => reach(others(unit), taken).has(unit);
  return [
    ...([...reached].some((unit) => others(unit).length > 0) ? ['chain'] : []),
    ...([...reached].some(isCycle) ? ['cycle'] : []),
    ...(plain.defects.some(({ units }) => units.length > 1) ? ['one of these'] : []),
  ];
}

function takenBy({ entries, fitted }: PlainCase): Map<string, string[]> {
  const subsOf = (number: string) => {
    const { subEntries = [] } = entries.find((one) => one.number === number) ?? {};
    return subEntries.filter(({ id }) => subEntries.length === 1 || fitted === null || id === fitted);
  };
  const unitsOf = (number: string): string[] => [...new Set(subsOf(number).flatMap(({ units }) => units))];
  return new Map(
    entries.flatMap(({ number }) => {
      const rows = subsOf(number).flatMap((sub) => sub.rows);
      const refs = rows.flatMap((row) => [
        ...(row.consideredInoperative ?? []),
        ...(row.notes ?? []).flatMap(({ lost = [] }) => lost),
      ]);
      const taken = refs.flatMap(({ entry, units }) => (units ?? unitsOf(entry)).map((unit) => `${entry}/${unit}`));
      return unitsOf(number).map((unit): [string, string[]] => [`${number}/${unit}`, taken]);
    }),
  );
}

function reach(from: readonly string[], taken: ReadonlyMap<string, string[]>): Set<string> {
  const reached = new Set<string>();
  const waiting = [...from];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (reached.has(next)) continue;
    reached.add(next);
    waiting.push(...(taken.get(next) ?? []));
  }
  return reached;
}
