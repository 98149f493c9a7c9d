/**
 * Can closing a defect never make anything worse? Not where a row needs its partner down; nor where a pair's row counts
 * from the last of several records; nor where work is recorded as impossible or nobody knows,
 * which may then count for another item; nor where a person's no was given on certain items, which may then count again; nor
 * where an item on another basis would still be considered inoperative, and
 * then needs a row.
 */
import type { Mel } from '#mel';
import type { Situation } from '../situation.js';

export function isMonotone(mel: Mel, { defects, work, judgements, aircraft }: Situation): boolean {
  if (work.some(({ possible }) => possible === false || possible === null)) return false;
  if (judgements.some(({ accepted, givenOn }) => !accepted && givenOn !== undefined)) return false;
  if (defects.some(({ basis, entry }) => basis !== undefined && entry !== null)) return false;
  const several = new Set(
    defects.flatMap(({ entry }, at) => (defects.findIndex((one) => one.entry === entry) < at ? [entry] : [])),
  );
  return mel.entries.every((entry) => {
    const match = mel.matchSubEntry(entry.number, aircraft);
    const subEntries = match.kind === 'one' ? [match.subEntry] : match.kind === 'unknown' ? match.candidates : [];
    return subEntries.every(({ units, rows }) =>
      rows.every(
        ({ needsDown, numberRequired }) =>
          needsDown === undefined && (!several.has(entry.number) || numberRequired >= units.length - 1),
      ),
    );
  });
}
