/** What of a life reads otherwise once a detail of one of its acts is put right: wherever that act is held, and no more. */
import type { Act, Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { unitsWith } from './unit-now.js';

type Said = Pick<Corrected, 'act' | 'field' | 'part' | 'now'>;

/** @param act the act as it reads from now on */
export function lifeWith(life: DefectLife, act: Act, said: Said): Partial<DefectLife> {
  const held = <Kept extends { id: string }>(one: Kept): Kept => (one.id === act.id ? { ...one, ...act } : one);
  const heldIf = <Kept extends { id: string }>(one: Kept | null): Kept | null => one && held(one);
  const { work, grants, cards, procedures, extensions } = life;
  return {
    procedures: procedures.map(held),
    extensions: extensions.map(held),
    grants: grants.map(held),
    cards: cards.map((card) => ({ ...card, steps: card.steps.map(held) })),
    work: work && {
      ...work,
      done: work.done.map(held),
      tested: heldIf(work.tested),
      inspected: heldIf(work.inspected),
      restored: heldIf(work.restored),
      verified: heldIf(work.verified),
    },
    ...basisWith(life, act, said),
  };
}

/**
 * A basis no longer in force is put right among the former ones. Which units are down is touched by a correction of a unit
 * alone, and then as they are since: a part that was moved meanwhile stays where it is.
 */
function basisWith(life: DefectLife, act: Act, said: Said): Partial<DefectLife> {
  if (act.kind !== 'deferred' && act.kind !== 'row-changed') return {};
  const { acts, bases, deferral, item } = life;
  const at = acts.filter(({ kind }) => kind === 'deferred' || kind === 'row-changed').findIndex(sameAs(act));
  const inForce = deferral?.act === act.id;
  return {
    bases: bases.map((basis, index) => (index === at ? act.basis : basis)),
    deferral: deferral && inForce ? { ...deferral, basis: act.basis } : deferral,
    item: item && inForce && said.field === 'unit' ? { ...item, units: unitsWith(life, said) } : item,
  };
}

const sameAs =
  ({ id }: Act) =>
  (one: Act): boolean =>
    one.id === id;
