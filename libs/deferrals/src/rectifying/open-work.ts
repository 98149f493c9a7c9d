import type { DefectLife, OpenWork } from '../defect-life.js';
import { Refusal } from '../refusal.js';

/** The work that is open on the defect. Throws Refusal `no-open-work`. */
export function needWork({ work, defect }: DefectLife): OpenWork {
  if (work === null) throw new Refusal('no-open-work', { defect });
  return work;
}

/** The open work with something seen on it since. */
export function seen(life: DefectLife, what: Partial<OpenWork>): Pick<DefectLife, 'work'> {
  return { work: { ...needWork(life), ...what } };
}
