import { workKey, type EntryRef, type Mel, type Row } from '#mel';
import type { OpenDefect, WorkState } from '../situation.js';
import type { Fitted } from '../units/fitted.js';

/** The (M) procedures and placards of every row that open defects, and the items they may take along, can stand on. */
export function maintenanceWork(mel: Mel, fitted: Fitted, defects: readonly OpenDefect[]): WorkState[] {
  const waiting = defects.flatMap(({ entry }) => entry ?? []);
  const seen = new Set<string>();
  const found: WorkState[] = [];
  for (let entry = waiting.shift(); entry !== undefined; entry = waiting.shift()) {
    if (seen.has(entry) || mel.entry(entry) === undefined) continue;
    seen.add(entry);
    const rows = fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows);
    const ids = defects.filter((defect) => defect.entry === entry).map(({ id }) => id);
    for (const row of rows) {
      const keys = workOfRow(row).map((id) => workKey(entry, row.id, id));
      found.push(
        ...keys.flatMap((work) => (ids.length === 0 ? [{ work }] : ids.map((defect) => ({ work, defect })))),
      );
      waiting.push(...takenAlong(row).map((ref) => ref.entry));
    }
  }
  return found;
}

function workOfRow({ procedures = [], placard }: Row): string[] {
  const done = procedures.filter(({ kind, by = 'technician' }) => kind === 'M' && by !== 'commander');
  return [...done.map(({ id }) => id), ...(placard === undefined ? [] : ['placard'])];
}

function takenAlong({ consideredInoperative = [], notes = [] }: Row): EntryRef[] {
  return [...consideredInoperative, ...notes.flatMap(({ lost = [] }) => lost)];
}
