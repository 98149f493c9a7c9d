/** What keeps the whole aircraft on the ground, in words with the numbers that people know instead of ids. */
import { aircraftGates, type RegisterEntry } from '#deferrals';
import type { Situation } from '#dispatch';
import type { AircraftRow, LeftItemRow } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { ownerOfRow } from '../register/owner-of-row.js';

/** A row that is tried, for an open defect or for one that is not written up. */
export interface Proposal {
  defect?: string;
  entry: string;
  units: string[];
  row: string;
}

/** A defect that is tried under a row is not unanswered. */
export function readableGates(
  aircraft: AircraftRow,
  defects: readonly OpenedDefect[],
  register: readonly LeftItemRow[],
  proposals: readonly Proposal[],
  at: string,
): Situation['gates'] {
  const tried = new Set(proposals.flatMap(({ defect }) => defect ?? []));
  const lives = defects.map(({ life }) => life);
  const gates = aircraftGates(lives, register.map(registerEntry), [], at);
  const ownerOf = (text: string) => defects.find(({ row }) => text.startsWith(row.id));
  const readable = (text: string): string => {
    const found = ownerOf(text);
    if (!found) return text;
    const why = REASON.exec(text)?.[0] ?? '';
    return `${defectNumber(aircraft, found.row)} (${firstWords(found.life.description, 70)})${why}`;
  };
  return {
    unanswered: gates.unanswered.filter((text) => !tried.has(ownerOf(text)?.row.id ?? '')).map(readable),
    openWork: gates.openWork.map(readable),
    orphans: gates.orphans,
  };
}

/** Why it is open though no work is: a correction that waits, a card that is not signed. */
const REASON = / \((?:a correction waits for a second look|work card not signed): .*\)$/;

function registerEntry(item: LeftItemRow): RegisterEntry {
  return {
    id: item.id,
    kind: item.kind as RegisterEntry['kind'],
    where: item.place,
    tag: item.tag ?? '',
    undo: item.undo,
    owner: ownerOfRow(item),
    undone: item.removedAt !== null,
  };
}
