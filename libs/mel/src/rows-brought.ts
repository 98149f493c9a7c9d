/**
 * The rows that a row can bring along: what it considers inoperative needs a row of its own, and so on. Their procedures
 * and placards are work of the same defect, since a considered-inoperative item has no write-up of its own.
 */
import type { EntryRef, Placard, Procedure, Row } from './content.js';
import type { MelAircraft } from './match-sub-entry.js';
import type { Mel } from './mel.js';

export interface BroughtRow {
  entry: string;
  title: string;
  row: string;
  procedures: Procedure[];
  placard?: Placard;
}

/** Every row of every item that may become considered inoperative through `row`, in the order they are reached. */
export const rowsBrought = (mel: Mel, row: Row, aircraft: MelAircraft): BroughtRow[] => {
  const seen = new Set<string>();
  const brought: BroughtRow[] = [];
  const waiting = entriesOf(row);
  for (let entry = waiting.shift(); entry !== undefined; entry = waiting.shift()) {
    if (seen.has(entry)) continue;
    seen.add(entry);
    for (const next of mel.rowsOf(entry, aircraft) ?? []) {
      const { id, procedures = [], placard } = next;
      const title = mel.entry(entry)?.title ?? entry;
      brought.push({ entry, title, row: id, procedures, ...(placard === undefined ? {} : { placard }) });
      waiting.push(...entriesOf(next));
    }
  }
  return brought;
};

const entriesOf = ({ consideredInoperative = [], notes = [] }: Row): string[] => {
  const refs: EntryRef[] = [...consideredInoperative, ...notes.flatMap(({ lost = [] }) => lost)];
  return refs.map(({ entry }) => entry);
};
