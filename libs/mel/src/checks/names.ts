/** Names that must be told apart are unlike each other. */
import type { MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';
import { rowPlaces, subEntryPlaces, type Path } from './places.js';

/** Findings for every name that stands for a second time in its list. */
export const repeated = (names: readonly { name: string; path: Path }[], what: string): Finding[] => {
  const seen = new Set<string>();
  return names.flatMap(({ name, path }) => {
    if (!seen.has(name)) {
      seen.add(name);
      return [];
    }
    return [{ path, reason: `${what} "${name}" stands here for a second time` }];
  });
};

export const nameFindings = (content: MelContent): Finding[] => [
  ...repeated(
    content.entries.map((entry, at) => ({ name: entry.number, path: ['entries', at, 'number'] })),
    'the entry',
  ),
  ...content.entries.flatMap((entry, at) =>
    repeated(
      entry.subEntries.map((subEntry, sub) => ({
        name: subEntry.id,
        path: ['entries', at, 'subEntries', sub, 'id'],
      })),
      'the sub-entry',
    ),
  ),
  ...subEntryPlaces(content).flatMap(({ subEntry, path }) =>
    repeated(
      subEntry.rows.map((row, at) => ({ name: row.id, path: [...path, 'rows', at, 'id'] })),
      'the row',
    ),
  ),
  ...rowPlaces(content).flatMap(({ row, path }) => {
    // One space of names: `<entry>/<row>/<id>` names a condition of an answer, whatever its kind.
    const ids = (['provisos', 'procedures', 'judgements'] as const).flatMap((list) =>
      (row[list] ?? []).map((item, at) => ({ name: item.id, path: [...path, list, at, 'id'] })),
    );
    const taken = ids.filter(({ name }) => name === 'placard' || name === 'combination');
    return [
      ...repeated(ids, 'within this row the id'),
      ...taken.map(({ name, path: place }) => ({ path: place, reason: `the id "${name}" has a meaning of its own` })),
    ];
  }),
];
