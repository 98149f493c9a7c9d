/** Which rows may be proposed for a defect, and the situation in which they are. */
import type { Mel } from '#mel';
import type { OpenDefect, Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';

/** Rows by defect id; null where nothing can be proposed and the defect stays as it stands. */
export type ProposedRows = ReadonlyMap<string, string | null>;

/** Ids of the rows that the entry offers, in every configuration the aircraft may have, by code units. */
export function rowsOfDefect(
  { entry, basis, row, rowAsked = false }: OpenDefect,
  fitted: Fitted,
): readonly (string | null)[] {
  if (entry === null || basis !== undefined || rowAsked) return [row];
  const offered = fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows.map(({ id }) => id));
  return offered.length === 0 ? [row] : [...new Set(offered)].sort(byCode);
}

export function isChange({ row, signed, basis }: OpenDefect, proposed: string | null): boolean {
  return basis === undefined && (row !== proposed || !signed);
}

/** The same situation with these rows proposed: what is not the signed row is still to be signed. */
export function situationUnder(situation: Situation, rows: ProposedRows): Situation {
  const defects = situation.defects.map((defect) => underRow(defect, rows.get(defect.id) ?? defect.row));
  const answered = new Set(defects.filter(({ row }) => row !== null).map(({ id }) => id));
  const unanswered = situation.gates.unanswered.filter((id) => !answered.has(id));
  return { ...situation, defects, gates: { ...situation.gates, unanswered } };
}

export function underRow(defect: OpenDefect, row: string | null): OpenDefect {
  if (row === defect.row) return defect;
  const replaced = defect.signed && defect.row !== null ? { insteadOf: defect.row } : {};
  return { ...defect, row, signed: false, ...replaced };
}

/** The rows as they stand, and some row for every other defect that could have one: enough to look at the gates. */
export function someRows(mel: Mel, { defects, aircraft }: Situation): ProposedRows {
  const fitted = new Fitted(mel, aircraft);
  return new Map(defects.map((defect) => [defect.id, defect.row ?? rowsOfDefect(defect, fitted)[0] ?? null]));
}
