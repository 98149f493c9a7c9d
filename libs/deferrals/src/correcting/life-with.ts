/** What of a life reads otherwise once a detail of one of its acts is put right: wherever that act is held, and no more. */
import type { Act } from '../acts.js';
import type { DefectLife } from '../defect-life.js';

/** @param act the act as it reads from now on */
export function lifeWith(life: DefectLife, act: Act): Partial<DefectLife> {
  const held = <Kept extends { id: string }>(one: Kept): Kept => (one.id === act.id ? { ...one, ...act } : one);
  const heldIf = <Kept extends { id: string }>(one: Kept | null): Kept | null => one && held(one);
  const { work, grants, cards } = life;
  return {
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
    ...basisWith(life, act),
  };
}

/** A basis no longer in force is put right among the former ones; what failed is read from the one in force alone. */
function basisWith(life: DefectLife, act: Act): Partial<DefectLife> {
  if (act.kind !== 'deferred' && act.kind !== 'row-changed') return {};
  const { acts, bases, deferral, item } = life;
  const at = acts.filter(({ kind }) => kind === 'deferred' || kind === 'row-changed').findIndex(sameAs(act));
  const inForce = deferral?.act === act.id;
  return {
    bases: bases.map((basis, index) => (index === at ? act.basis : basis)),
    deferral: deferral && inForce ? { ...deferral, basis: act.basis } : deferral,
    item: inForce && act.basis.kind === 'mel-row' ? act.item : item,
  };
}

const sameAs =
  ({ id }: Act) =>
  (one: Act): boolean =>
    one.id === id;
