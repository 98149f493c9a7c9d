/** What a row refers to exists: entries, units of some configuration of them, work and judgements by their keys. */
import type { EntryRef, MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';
import { leavesIn, rowPlaces, type Path, type RowPlace } from './places.js';

export interface Known {
  /** Units per entry, of all its configurations together. */
  units: ReadonlyMap<string, ReadonlySet<string>>;
  works: ReadonlySet<string>;
  judgements: ReadonlySet<string>;
}

/** Everything in a MEL that may be referred to. */
export const knownIn = (content: MelContent): Known => {
  const rows = rowPlaces(content).map(({ entry, row }) => ({ row, key: `${entry.number}/${row.id}` }));
  return {
    units: new Map(
      content.entries.map((entry) => [entry.number, new Set(entry.subEntries.flatMap(({ units }) => units))]),
    ),
    works: new Set(
      rows.flatMap(({ row, key }) => [
        ...(row.procedures ?? []).map(({ id }) => `${key}/${id}`),
        ...(row.placard === undefined ? [] : [`${key}/placard`]),
      ]),
    ),
    judgements: new Set([
      'combination',
      ...rows.flatMap(({ row, key }) => (row.judgements ?? []).map(({ id }) => `${key}/${id}`)),
    ]),
  };
};

const entryRefFindings = (known: Known, { entry, units }: EntryRef, path: Path): Finding[] => {
  const existing = known.units.get(entry);
  if (existing === undefined) return [{ path: [...path, 'entry'], reason: `there is no entry "${entry}"` }];
  return (units ?? []).flatMap((unit, at) =>
    existing.has(unit) ? [] : [{ path: [...path, 'units', at], reason: `entry "${entry}" has no unit "${unit}"` }],
  );
};

const rowRefFindings = (known: Known, { subEntry, row, path }: RowPlace): Finding[] => {
  const lists: [Path, readonly EntryRef[]][] = [
    [[...path, 'consideredInoperative'], row.consideredInoperative ?? []],
    [[...path, 'needsDown'], row.needsDown ?? []],
    ...(row.notes ?? []).map((note, at): [Path, readonly EntryRef[]] => [
      [...path, 'notes', at, 'lost'],
      note.lost ?? [],
    ]),
  ];
  return [
    ...lists.flatMap(([place, refs]) => refs.flatMap((item, at) => entryRefFindings(known, item, [...place, at]))),
    ...(row.covers ?? []).flatMap((unit, at) =>
      subEntry.units.includes(unit)
        ? []
        : [{ path: [...path, 'covers', at], reason: `"${unit}" is no unit of this sub-entry` }],
    ),
  ];
};

const leafRefFindings = (known: Known, place: RowPlace): Finding[] =>
  leavesIn(place).flatMap(({ leaf, path }) => {
    const { entry, units, work, judgement } = leaf.params ?? {};
    const params = [...path, 'params'];
    return [
      ...(entry === undefined
        ? []
        : entryRefFindings(known, units === undefined ? { entry } : { entry, units }, params)),
      ...(work === undefined || known.works.has(work)
        ? []
        : [{ path: [...params, 'work'], reason: `no row has the work "${work}"` }]),
      ...(judgement === undefined || known.judgements.has(judgement)
        ? []
        : [{ path: [...params, 'judgement'], reason: `no row asks for the judgement "${judgement}"` }]),
    ];
  });

export const referenceFindings = (content: MelContent): Finding[] => {
  const known = knownIn(content);
  return rowPlaces(content).flatMap((place) => [...rowRefFindings(known, place), ...leafRefFindings(known, place)]);
};
