/**
 * A category A licence releases only work that its holder performed; so does a B2 licence for a minor task of its own.
 * 66.A.20(a).
 */
import type { Released } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import type { LicenceCategory } from '../people.js';
import { Refusal } from '../refusal.js';
import { performersOf } from './performers.js';

const FULL: readonly LicenceCategory[] = ['B1', 'B2', 'C'];

/** Throws Refusal `only-own-work`. */
export function admitOwnWork(life: DefectLife, { by, asMinorTask }: Released): void {
  const full = by.authorisation.licenceCategories.some((category) => FULL.includes(category));
  if (full && !asMinorTask) return;
  const others = performersOf(life).filter(({ person }) => person !== by.person);
  if (others.length === 0) return;
  throw new Refusal('only-own-work', {
    name: by.name,
    scope: full ? 'a minor task' : 'category A',
    defect: life.defect,
    performers: others.map(({ name }) => name),
  });
}
