/**
 * The set of units that are down (rule 2): the least set holding every failed unit and, with a unit under a row, every
 * unit that this row calls considered inoperative. It is found by adding consequences until none is new, so a cycle adds
 * nothing, and a unit leaves the set when its root does.
 */
import { unitKey, type Unit } from './unit.js';

/** Why a unit is down: it failed, or the row of another unit takes it along. */
export type DownCause = { failed: true } | { failed: false; by: Unit; row: string };

export interface DownUnit extends Unit {
  cause: DownCause;
}

export interface Consequence {
  row: string;
  units: readonly Unit[];
}

export function leastDown(
  failed: readonly Unit[],
  consequencesOf: (unit: Unit) => readonly Consequence[],
): Map<string, DownUnit> {
  const down = new Map<string, DownUnit>();
  const waiting: DownUnit[] = failed.map((unit) => ({ entry: unit.entry, unit: unit.unit, cause: { failed: true } }));
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    if (down.has(unitKey(next))) continue;
    down.set(unitKey(next), next);
    const by: Unit = { entry: next.entry, unit: next.unit };
    for (const { row, units } of consequencesOf(by)) {
      waiting.push(...units.map((unit): DownUnit => ({ ...unit, cause: { failed: false, by, row } })));
    }
  }
  return down;
}
