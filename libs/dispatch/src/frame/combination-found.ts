/**
 * What was found about open items together, for the person who judges the combination: systems they share, and what their
 * rows ask of the crew. It decides nothing; conflicts between rows stand in the answer itself.
 */
import type { Entry, Row } from '#mel';
import type { OpenDefect } from '../situation.js';
import { byCode } from '../units/unit.js';
import type { Frame } from './frame.js';

export function foundTogether(frame: Frame, defects: readonly OpenDefect[]): string[] {
  const inOrder = [...defects].sort((a, b) => byCode(a.id, b.id));
  const items = inOrder.flatMap((defect) => {
    const entry = defect.entry === null ? undefined : frame.mel.entry(defect.entry);
    return entry === undefined ? [] : [{ defect, entry, row: rowOf(frame, defect) }];
  });
  return [...sharedSystems(items), ...askedOfCrew(items)];
}

interface Together {
  defect: OpenDefect;
  entry: Entry;
  row: Row | undefined;
}

function rowOf({ fitted }: Frame, { entry, row }: OpenDefect): Row | undefined {
  if (entry === null || row === null) return undefined;
  return fitted
    .subEntries(entry)
    .flatMap((subEntry) => subEntry.rows)
    .find(({ id }) => id === row);
}

function sharedSystems(items: readonly Together[]): string[] {
  const chapters = [...new Set(items.map(({ entry }) => entry.chapter))].sort();
  return chapters.flatMap((chapter) => {
    const same = items.filter(({ entry }) => entry.chapter === chapter).map(nameOf);
    return same.length < 2 ? [] : [`Of one system (ATA chapter ${chapter}): ${same.join(', ')}.`];
  });
}

/** Procedures of the crew with their minutes, and the notes of the rows. */
function askedOfCrew(items: readonly Together[]): string[] {
  return items.flatMap((item) => {
    const crew = (item.row?.procedures ?? []).filter(({ kind, by }) => kind === 'O' || by === 'commander');
    const minutes = crew.reduce((sum, one) => sum + (one.minutes ?? 0), 0);
    const notes = (item.row?.notes ?? []).map(({ text }) => `Note to ${nameOf(item)}: ${text}`);
    if (crew.length === 0) return notes;
    const long = crew.some((one) => one.minutes === undefined) ? '' : `, ${minutes} min`;
    const many = crew.length === 1 ? '1 procedure' : `${crew.length} procedures`;
    return [`For the crew, with ${nameOf(item)}: ${many}${long}.`, ...notes];
  });
}

function nameOf({ entry, defect }: Pick<Together, 'entry' | 'defect'>): string {
  return `${entry.title} ${defect.units.join(' or ')}`;
}
