import type { DefectRow } from '#store';

/** Of a row that is tried: which defect it is for, where it is for one that is open. */
export interface RowTried {
  defect?: string | undefined;
  entry: string;
}

/**
 * Entries that an aircraft keeps as an earlier revision had them, with the key of that revision: an open deferral stands
 * on what was signed until it is repaired (AC 120-125 9.2.2.4). An entry with an item that was signed under another
 * revision, or for which a row is being tried, is read as the revision in force has it, for all of its items.
 */
export function keptEntries(
  open: readonly Pick<DefectRow, 'id' | 'entry' | 'basis' | 'melRevisionId'>[],
  tried: readonly RowTried[],
  inForce: string,
): Map<string, string> {
  const kept = new Map<string, string>();
  const never = new Set(tried.map(({ entry }) => entry));
  for (const { entry, basis, melRevisionId } of open) {
    if (entry === null || basis === null || melRevisionId === null) continue;
    if (kept.has(entry) && kept.get(entry) !== melRevisionId) never.add(entry);
    kept.set(entry, melRevisionId);
  }
  return new Map([...kept].filter(([entry, revision]) => revision !== inForce && !never.has(entry)));
}
