/** Acts as they read now, every correction of a detail applied; what was written stays in the acts of the life. */
import type { Act, Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { detailOf } from './details.js';

export function asCorrected(act: Act, acts: readonly Act[]): Act {
  return acts.reduce(
    (reads, one) => (one.kind === 'corrected' && one.act === act.id ? withDetail(reads, one) : reads),
    act,
  );
}

/** The acts of a life, each as it reads now. */
export function actsAsCorrected({ acts }: Pick<DefectLife, 'acts'>): Act[] {
  return acts.some(({ kind }) => kind === 'corrected') ? acts.map((act) => asCorrected(act, acts)) : [...acts];
}

/** The act with one more detail put right; as it is for corrections of a write-up and of things left. */
export function withDetail(act: Act, { field, part = 0, now }: Pick<Corrected, 'field' | 'part' | 'now'>): Act {
  return detailOf(act, field)?.write(act, part, now) ?? act;
}
