/**
 * Holds an operator's MEL against the master list (MMEL): it may be more restrictive, never less.
 *
 * A sub-entry is held against the master's for the same aircraft. Within it a row is held against the master row of the
 * same id; where the operator has named it otherwise, it passes if it is no less restrictive than one master row.
 */
import type { Entry, Row, SubEntry } from './content.js';
import type { Mel } from './mel.js';
import { canonicalText, differencesOf, type Difference } from './restriction.js';

export interface AgainstFinding {
  entry: string;
  subEntry: string | null;
  row: string | null;
  field: string;
  /** Unclear: the program cannot weigh it, so a person must. */
  kind: 'less-restrictive' | 'unclear';
  reason: string;
}

/** The master's sub-entry for the same aircraft: equally written for them, whatever its name. */
const masterOf = (master: Entry, { appliesTo }: SubEntry): SubEntry | undefined =>
  master.subEntries.find((one) => canonicalText(one.appliesTo ?? null) === canonicalText(appliesTo ?? null));

/** The differences that speak against a row; being more restrictive never does. */
const objections = (row: Row, master: Row): Difference[] =>
  differencesOf(row, master).filter(({ weighing }) => weighing !== 'more-restrictive');

const rowObjections = (master: SubEntry, row: Row): Difference[] => {
  const same = master.rows.find(({ id }) => id === row.id);
  if (same !== undefined) return objections(row, same);
  const held = master.rows.map((one) => objections(row, one)).sort((one, two) => one.length - two.length);
  return held[0] ?? [{ field: 'id', weighing: 'less-restrictive', reason: 'the master list offers no relief here' }];
};

const subEntryFindings = (entry: string, master: Entry, subEntry: SubEntry): AgainstFinding[] => {
  const place = { entry, subEntry: subEntry.id };
  if (subEntry.rows.length === 0) return [];
  const other = masterOf(master, subEntry);
  if (other === undefined) {
    const reason = 'no sub-entry of the master list is written for the same aircraft';
    return [{ ...place, row: null, field: 'appliesTo', kind: 'unclear', reason }];
  }
  return subEntry.rows.flatMap((row) =>
    rowObjections(other, row).map(({ field, weighing, reason }): AgainstFinding => ({
      ...place,
      row: row.id,
      field,
      kind: weighing === 'unclear' ? 'unclear' : 'less-restrictive',
      reason,
    })),
  );
};

/** What makes the MEL less restrictive than the MMEL, or cannot be weighed; empty when it stands. */
export const checkAgainst = (mmel: Mel, mel: Mel): AgainstFinding[] =>
  mel.entries.flatMap((entry): AgainstFinding[] => {
    const master = mmel.entry(entry.number);
    if (master !== undefined) {
      return entry.subEntries.flatMap((subEntry) => subEntryFindings(entry.number, master, subEntry));
    }
    if (entry.subEntries.every(({ rows }) => rows.length === 0)) return [];
    const reason = 'the master list has no such entry, so there is no relief to give';
    return [{ entry: entry.number, subEntry: null, row: null, field: 'number', kind: 'less-restrictive', reason }];
  });
