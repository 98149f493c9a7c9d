import type { Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { thingsLeftBy } from '../leaving/things-left-by.js';

/** What stands where a correction points, corrections before it applied; undefined when it points at nothing. */
export function readsNow(
  life: DefectLife,
  { act, field, item }: Pick<Corrected, 'act' | 'field' | 'item'>,
): string | null | undefined {
  const original = life.acts.find(({ id }) => id === act);
  if (field !== 'where' && field !== 'tag')
    return original?.kind === 'written-up' && item === null ? life[field] : undefined;
  const thing = life.left.find(({ id }) => id === item);
  const left = original === undefined ? [] : thingsLeftBy(original);
  return left.some(({ id }) => id === thing?.id) ? thing?.[field] : undefined;
}
