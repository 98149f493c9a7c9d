/** One defect fewer, with work, judgement and signed rows of the rest held: what the properties of a repair are about. */
import type { Situation } from '#dispatch';
import type { Mel, Row } from '#mel';

export const without = (situation: Situation, ...ids: string[]): Situation => ({
  ...situation,
  defects: situation.defects.filter(({ id }) => !ids.includes(id)),
});

/**
 * Work held: a record that names no defect tells of whichever one defect stands under its row, and of none where two do. So
 * each is given the name of the defect it tells of, before one defect fewer would make it tell of another piece of work.
 */
export function withWorkNamed(situation: Situation): Situation {
  const work = situation.work.flatMap((record) => {
    if (record.defect !== undefined) return [record];
    const [entry, row] = record.work.split('/');
    const [one, ...others] = situation.defects.filter((defect) => defect.entry === entry && defect.row === row);
    if (others.length > 0) return [];
    return [one === undefined ? record : { ...record, defect: one.id }];
  });
  return { ...situation, work };
}

function rowsOf(mel: Mel): Row[] {
  return mel.entries.flatMap(({ subEntries }) => subEntries.flatMap(({ rows }) => rows));
}

/** Some row needs an item down: what is promised of a repair does not hold for such a MEL. */
export const needsItsPartner = (mel: Mel): boolean => rowsOf(mel).some(({ needsDown }) => needsDown !== undefined);

/** Entries that some row calls considered inoperative, or lost by a note. */
export function takenAlong(mel: Mel): Set<string> {
  const refs = rowsOf(mel).flatMap(({ consideredInoperative = [], notes = [] }) => [
    ...consideredInoperative,
    ...notes.flatMap(({ lost = [] }) => lost),
  ]);
  return new Set(refs.map(({ entry }) => entry));
}
