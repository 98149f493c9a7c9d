/**
 * The ways in which the open defects can be read.
 *
 * A defect is of one unit; when nobody knows which of several, or which configuration the aircraft has, it has several
 * readings. Each counts as exactly one unit down. A reading of the whole takes one of them for every defect.
 */
import type { Entry, Row, SubEntry } from '#mel';
import type { OpenDefect } from '../situation.js';
import type { Fitted } from './fitted.js';

/** One way to read one defect: this unit, in this configuration, under this row. */
export interface DefectReading {
  defect: OpenDefect;
  entry: Entry;
  unit: string;
  subEntry: SubEntry;
  row: Row | null;
}

/** More readings than this are not told apart; the answer then says so. */
export const MOST_READINGS = 64;

/** Empty for a defect that stands on no entry of this aircraft. */
export function readingsOf(defect: OpenDefect, row: string | null, fitted: Fitted): DefectReading[] {
  const entry = defect.entry === null ? undefined : fitted.mel.entry(defect.entry);
  if (entry === undefined) return [];
  return fitted
    .subEntries(entry.number)
    .flatMap((subEntry) =>
      defect.units
        .filter((unit) => subEntry.units.includes(unit))
        .map((unit) => ({ defect, entry, unit, subEntry, row: subEntry.rows.find(({ id }) => id === row) ?? null })),
    );
}

/** Every combination of one reading per defect, or null when they are more than MOST_READINGS. */
export function wholeReadings(perDefect: readonly (readonly DefectReading[])[]): DefectReading[][] | null {
  const told = perDefect.filter((readings) => readings.length > 0);
  if (told.reduce((count, readings) => count * readings.length, 1) > MOST_READINGS) return null;
  return told.reduce<DefectReading[][]>(
    (wholes, readings) => wholes.flatMap((whole) => readings.map((reading) => [...whole, reading])),
    [[]],
  );
}
