/** Items as the conditions look at them, of which only the row differs from choice to choice. */
import type { Row } from '#mel';
import type { Item } from '../conditions/item.js';
import type { Frame } from '../frame/frame.js';
import type { OpenDefect } from '../situation.js';
import { readingsOf } from '../units/readings.js';
import type { Unit } from '../units/unit.js';

type Fitting = Pick<Frame, 'fitted' | 'mel'>;

/** One item for each unit that the defect may be of; one without unit when this aircraft has none of them. */
export function defectItems(defect: OpenDefect, row: string | null, { fitted, mel }: Fitting): Item[] {
  const cause = { kind: 'failed', defect: defect.id } as const;
  const configurationKnown = defect.entry === null || fitted.match(defect.entry).kind !== 'unknown';
  const shared = { defect, cause, configurationKnown };
  const readings = readingsOf(defect, row, fitted);
  if (readings.length === 0) {
    const entry = (defect.entry === null ? undefined : mel.entry(defect.entry)) ?? null;
    return [{ ...shared, entry, unit: defect.units.join(' or '), subEntry: null, row: null, perhaps: false }];
  }
  const perhaps = readings.length > 1;
  return readings.map((one) => ({
    ...shared,
    entry: one.entry,
    unit: one.unit,
    subEntry: one.subEntry,
    row: one.row,
    perhaps,
  }));
}

/** A unit that is considered inoperative, whoever takes it along. */
export function unitItem({ entry, unit }: Unit, row: Row, { fitted, mel }: Fitting): Item {
  const match = fitted.match(entry);
  return {
    entry: mel.entry(entry) ?? null,
    unit,
    subEntry: match.kind === 'one' ? match.subEntry : null,
    row,
    configurationKnown: match.kind !== 'unknown',
    defect: null,
    cause: { kind: 'considered-inoperative', by: { entry, unit, row: row.id } },
    perhaps: false,
  };
}
