/**
 * Interval texts can be read and fit their category: A says its own, B, C and D only a shorter number of days; intervals
 * that differ by unit name every unit that the row relieves. The later of several limits counts only where the cited row
 * says so; a shorter limit inside an interval waits for a procedure of the same row.
 */
import { IntervalInputError, type Interval, isStationUnit, limitsOf, parseInterval, readInterval } from '#intervals';
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
        ? tried([...place, unit], () => readInterval(text))
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
    if (said === null) return [];
    const place = [...path, 'procedures', at, 'repeat', said.key];
    const unread = tried(place, () => parseInterval(said.text));
    if (unread.length > 0 || !parseInterval(said.text).some(({ unit }) => isStationUnit(unit))) return unread;
    return [{ path: place, reason: `"${said.text}" happens once, so nothing can be owed every time` }];
  });

/** The intervals of a row that can be read, with their place. */
const readable = ({ row, path }: RowPlace): { place: Path; interval: Interval }[] => {
  const texts = [
    ...(row.interval === undefined ? [] : [{ place: [...path, 'interval'], text: row.interval }]),
    ...Object.entries(row.intervalByUnit ?? {}).map(([unit, text]) => ({
      place: [...path, 'intervalByUnit', unit],
      text,
    })),
  ];
  return texts.flatMap(({ place, text }) =>
    tried(place, () => readInterval(text)).length > 0 ? [] : [{ place, interval: readInterval(text) }],
  );
};

const lastOfFindings = (place: RowPlace): Finding[] => {
  const later = readable(place).filter(({ interval }) => interval.joint === 'last-of');
  const { lastOf } = place.row;
  if (lastOf === undefined)
    return later.map((one) => ({
      path: one.place,
      reason: 'says "whichever is later" without lastOf: the words of the cited row that say so, and their source',
    }));
  return later.length > 0
    ? []
    : [{ path: [...place.path, 'lastOf'], reason: 'no interval of this row says "whichever is later"' }];
};

const withinFindings = (place: RowPlace): Finding[] => {
  const procedures = (place.row.procedures ?? []).map(({ id }) => id);
  return readable(place).flatMap((one) =>
    one.interval.within
      .filter(({ until }) => !procedures.includes(until))
      .map(({ until }) => ({ path: one.place, reason: `"${until}" is no procedure of this row` })),
  );
};

export const intervalFindings = (content: MelContent): Finding[] =>
  rowPlaces(content).flatMap((place) => {
    const { row, path } = place;
    const ownByUnit = row.category === 'A' && row.interval === undefined && row.intervalByUnit !== undefined;
    return [
      ...(ownByUnit ? [] : tried([...path, 'interval'], () => limitsOf(row.category, row.interval))),
      ...byUnitFindings(place),
      ...lastOfFindings(place),
      ...withinFindings(place),
      ...repeatFindings(place),
    ];
  });
