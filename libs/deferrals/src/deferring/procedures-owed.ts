/** The procedures that a basis owes, each with the key of its work. ORO.MLR.105; 14 CFR 121.628. */
import { workKey, type Procedure } from '#mel';
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

export function procedureFor(basis: Basis, work: string): Procedure | undefined {
  return proceduresOwed(basis).find((owed) => owed.work === work)?.procedure;
}
