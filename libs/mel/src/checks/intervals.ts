/**
 * Interval texts can be read and fit their category: A says its own, B, C and D only a shorter number of days; intervals
 * that differ by unit name every unit that the row relieves.
 */
import { IntervalInputError, limitsOf, parseInterval } from '#intervals';
import type { MelContent, Repeat } from '../content.js';
import type { Finding } from '../mel-error.js';
import { rowPlaces, type Path, type RowPlace } from './places.js';

/** Runs one reading of an interval; the reason it fails becomes the finding. */
const tried = (path: Path, read: () => unknown): Finding[] => {
  try {
    read();
    return [];
  } catch (error) {
    if (error instanceof IntervalInputError) return [{ path, reason: error.message }];
    throw error;
  }
};

const byUnitFindings = ({ subEntry, row, path }: RowPlace): Finding[] => {
  const { intervalByUnit } = row;
  if (intervalByUnit === undefined) return [];
  const place = [...path, 'intervalByUnit'];
  const covered = row.covers ?? subEntry.units;
  const missing = row.interval === undefined ? covered.filter((unit) => !Object.hasOwn(intervalByUnit, unit)) : [];
  return [
    ...(row.category === 'A' ? [] : [{ path: place, reason: 'only category A has intervals by unit' }]),
    ...missing.map((unit) => ({ path: place, reason: `unit "${unit}" has no interval` })),
    ...Object.entries(intervalByUnit).flatMap(([unit, text]) =>
      covered.includes(unit)
        ? tried([...place, unit], () => parseInterval(text))
        : [{ path: [...place, unit], reason: `"${unit}" is no unit that this row relieves` }],
    ),
  ];
};

const repeatText = (repeat: Repeat | undefined): { key: string; text: string } | null => {
  if (typeof repeat !== 'object') return null;
  return 'every' in repeat
    ? { key: 'every', text: repeat.every }
    : { key: 'afterFirstFlightThenEvery', text: repeat.afterFirstFlightThenEvery };
};

const repeatFindings = ({ row, path }: RowPlace): Finding[] =>
  (row.procedures ?? []).flatMap((procedure, at) => {
    const said = repeatText(procedure.repeat);
    return said === null
      ? []
      : tried([...path, 'procedures', at, 'repeat', said.key], () => parseInterval(said.text));
  });

export const intervalFindings = (content: MelContent): Finding[] =>
  rowPlaces(content).flatMap((place) => {
    const { row, path } = place;
    const ownByUnit = row.category === 'A' && row.interval === undefined && row.intervalByUnit !== undefined;
    return [
      ...(ownByUnit ? [] : tried([...path, 'interval'], () => limitsOf(row.category, row.interval))),
      ...byUnitFindings(place),
      ...repeatFindings(place),
    ];
  });
