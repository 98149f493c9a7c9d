import type { Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';

/** What stands where a correction points, corrections before it applied; undefined when it points at nothing. */
export function readsNow(life: DefectLife, { act, field, item }: Corrected): string | null | undefined {
  const original = life.acts.find(({ id }) => id === act);
  if (field !== 'where' && field !== 'tag')
    return original?.kind === 'written-up' && item === null ? life[field] : undefined;
  const thing = life.left.find(({ id }) => id === item);
  return thing !== undefined && original !== undefined && leftBy(original, thing.id) ? thing[field] : undefined;
}

function leftBy(act: DefectLife['acts'][number], item: string): boolean {
  if (act.kind === 'placard-fitted') return act.item.id === item;
  if (act.kind === 'left-on-the-aircraft') return act.items.some(({ id }) => id === item);
  return act.kind === 'procedure-signed' && act.leaves.some(({ id }) => id === item);
}
