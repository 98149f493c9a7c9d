/**
 * The procedures that a basis owes, each with the key of its work; and those that it may owe besides, of the rows that it
 * brings along. Which of these are owed depends on the row chosen for the considered-inoperative item, so dispatch asks
 * for them; here they may be signed. ORO.MLR.105; 14 CFR 121.628.
 */
import { workKey, type BroughtRow, type Procedure } from '#mel';
import type { Basis } from '../basis.js';

export interface ProcedureOwed {
  /** `<entry>/<row>/<procedure id>`, or `<document kind>/<reference>/<procedure id>`. */
  work: string;
  procedure: Procedure;
}

export function proceduresOwed(basis: Basis): ProcedureOwed[] {
  const [first, second] = basis.kind === 'mel-row' ? [basis.entry, basis.row] : [basis.kind, basis.reference];
  return (basis.procedures ?? []).map((procedure) => ({ work: workKey(first, second, procedure.id), procedure }));
}

export function proceduresBrought({ entry, row, procedures }: BroughtRow): ProcedureOwed[] {
  return procedures.map((procedure) => ({ work: workKey(entry, row, procedure.id), procedure }));
}

/** Rows that the basis brings along; none for a document. */
export function rowsBroughtBy(basis: Basis): readonly BroughtRow[] {
  return basis.kind === 'mel-row' ? (basis.brings ?? []) : [];
}

/** Every procedure that may be signed under the basis. */
export function proceduresOf(basis: Basis): ProcedureOwed[] {
  return [...proceduresOwed(basis), ...rowsBroughtBy(basis).flatMap(proceduresBrought)];
}

export function procedureFor(basis: Basis, work: string): Procedure | undefined {
  return proceduresOf(basis).find((owed) => owed.work === work)?.procedure;
}
