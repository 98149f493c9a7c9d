/** By what an acceptance knows the basis of an item again: another one, or one that decides otherwise, asks anew. */
import type { DefectLife } from '../defect-life.js';

/** The act that put the basis in force, or the last one that corrected which unit or which limit it is of. */
export function basisShown({ acts, deferral }: DefectLife): string | null {
  if (deferral === null) return null;
  const corrected = acts.findLast(
    (act) => act.kind === 'corrected' && act.act === deferral.act && act.secondLook !== null,
  );
  return corrected?.id ?? deferral.act;
}
