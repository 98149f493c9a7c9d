/**
 * The basis that a deferral is asked to stand on, found and frozen.
 *
 * An MEL row must stand under the entry that failed; any other document brings its reference, issuer and limit. What the
 * row demands is copied, so that a later revision of the MEL does not rewrite an open deferral (AC 120-125 9.2.2.4,
 * SEEN-Q). ORO.MLR.105; M.A.403(b)(c).
 */
import { intervalOf, writeWholeInterval } from '#intervals';
import type { FailedItem } from '../acts.js';
import type { Basis, DocumentBasis, MelRowBasis, StatedBy } from '../basis.js';
import type { RowOffered } from '../context.js';
import { Refusal } from '../refusal.js';
import { readingIntervals } from './reading-intervals.js';

/** What a command names as its basis: a row of the MEL by its id, or another document as it stands. */
export type BasisAsked = { kind: 'mel-row'; row: string; stated?: StatedBy } | DocumentBasis;

/** Throws Refusal `no-basis`, `item-not-identified`, `row-not-of-this-entry`, `interval-cannot-be-computed`. */
export function chooseBasis(
  defect: string,
  asked: BasisAsked | null,
  item: FailedItem | null,
  offered: RowOffered | null,
): Basis {
  if (asked === null) throw new Refusal('no-basis', { defect, missing: 'none is named' });
  if (asked.kind !== 'mel-row') return asked;
  if (item === null) throw new Refusal('item-not-identified', { defect });
  if (offered === null || offered.row.id !== asked.row) {
    throw new Refusal('no-basis', { defect, missing: `the MEL offers this aircraft no row ${asked.row}` });
  }
  const { entry, subEntry } = offered;
  if (entry.number !== item.entry || subEntry.id !== item.subEntry) {
    const rowEntry = `${entry.number} (${subEntry.id})`;
    const failed =
      item.entry === null ? 'not in the MEL' : `${item.entry} (${item.subEntry ?? 'sub-entry not known'})`;
    throw new Refusal('row-not-of-this-entry', { row: asked.row, rowEntry, entry: failed });
  }
  const basis = rowBasis(offered, item.units);
  return asked.stated === undefined ? basis : { ...basis, stated: asked.stated };
}

function rowBasis(offered: RowOffered, units: readonly string[]): MelRowBasis {
  const { document, revision, entry, subEntry, row, brings = [] } = offered;
  return {
    kind: 'mel-row',
    document,
    revision,
    entry: entry.number,
    subEntry: subEntry.id,
    row: row.id,
    category: row.category,
    intervals: intervalsFor(offered, units),
    numberInstalled: row.numberInstalled,
    numberRequired: row.numberRequired,
    covers: row.covers ?? subEntry.units,
    procedures: row.procedures ?? [],
    ...(row.placard === undefined ? {} : { placard: row.placard }),
    ...(brings.length === 0 ? {} : { brings }),
  };
}

/** What the row counts for these units, each interval once. */
export function intervalsFor({ row }: Pick<RowOffered, 'row'>, units: readonly string[]): string[] {
  const texts = units.map((unit) => row.intervalByUnit?.[unit] ?? row.interval);
  const intervals = readingIntervals(() => texts.map((text) => writeWholeInterval(intervalOf(row.category, text))));
  return [...new Set(intervals)];
}
