import type { Corrected } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { thingsLeftBy } from '../leaving/things-left-by.js';
import { asCorrected } from './as-corrected.js';
import { detailOf } from './details.js';
import { isWordOfWriteUp } from './field-words.js';
import { unitNow } from './unit-now.js';

type PointsAt = Pick<Corrected, 'act' | 'field' | 'item' | 'part'>;

/** What stands where a correction points, corrections before it applied; undefined when it points at nothing. */
export function readsNow(life: DefectLife, { act, field, item, part = 0 }: PointsAt): string | null | undefined {
  const original = life.acts.find(({ id }) => id === act);
  if (original === undefined) return undefined;
  if (isWordOfWriteUp(field)) return original.kind === 'written-up' && item === null ? life[field] : undefined;
  if (field === 'where' || field === 'tag') {
    const thing = life.left.find(({ id }) => id === item);
    return thingsLeftBy(original).some(({ id }) => id === thing?.id) ? thing?.[field] : undefined;
  }
  const reads = asCorrected(original, life.acts);
  const detail = detailOf(reads, field);
  if (detail === undefined || item !== null || part < 0 || part >= detail.many(reads)) return undefined;
  return field === 'unit' && !isUnitInForce(life, act, part) ? undefined : detail.read(reads, part);
}

/** Only the basis in force says which unit is down, and no longer once the part was swapped or named more closely. */
function isUnitInForce(life: DefectLife, act: string, part: number): boolean {
  return life.deferral?.act === act && unitNow(life, { act, part }) !== null;
}
