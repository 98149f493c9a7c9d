/** Walks over a MEL with the path to each place, for the checks. */
import type { Condition, ConditionLeaf, Entry, MelContent, Row, SubEntry } from '../content.js';

export type Path = (string | number)[];

export interface RowPlace {
  entry: Entry;
  subEntry: SubEntry;
  row: Row;
  path: Path;
}

export interface SubEntryPlace {
  entry: Entry;
  subEntry: SubEntry;
  path: Path;
}

export const subEntryPlaces = (content: MelContent): SubEntryPlace[] =>
  content.entries.flatMap((entry, at) =>
    entry.subEntries.map((subEntry, sub) => ({ entry, subEntry, path: ['entries', at, 'subEntries', sub] })),
  );

export const rowPlaces = (content: MelContent): RowPlace[] =>
  subEntryPlaces(content).flatMap(({ entry, subEntry, path }) =>
    subEntry.rows.map((row, at) => ({ entry, subEntry, row, path: [...path, 'rows', at] })),
  );

export interface LeafPlace {
  leaf: ConditionLeaf;
  path: Path;
  /** How many `not` stand above it. */
  nots: number;
}

/** The leaves of a tree with their depth of negation. */
export const leafPlaces = (condition: Condition, path: Path = [], nots = 0): LeafPlace[] => {
  if ('all' in condition) return condition.all.flatMap((child, at) => leafPlaces(child, [...path, 'all', at], nots));
  if ('any' in condition) return condition.any.flatMap((child, at) => leafPlaces(child, [...path, 'any', at], nots));
  if ('not' in condition) return leafPlaces(condition.not, [...path, 'not'], nots + 1);
  return [{ leaf: condition, path, nots }];
};

/** The leaves of every proviso of a row. */
export const leavesIn = ({ row, path }: RowPlace): LeafPlace[] =>
  (row.provisos ?? []).flatMap((proviso, at) => leafPlaces(proviso.when, [...path, 'provisos', at, 'when']));
