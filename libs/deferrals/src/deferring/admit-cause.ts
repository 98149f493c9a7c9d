/**
 * The cause of a stricter row is another unit of the same item being down. It is gone only when that defect is closed
 * and no other unit is down either. ORO.MLR.105.
 */
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `cause-not-closed`. */
export function admitCause(life: DefectLife, cause: string, others: readonly DefectLife[]): void {
  const entry = life.item?.entry ?? null;
  const units = others.filter(
    ({ item, aircraft }) => item?.entry === entry && aircraft.registration === life.aircraft.registration,
  );
  const isKnown = units.some(({ defect }) => defect === cause);
  const isStillDown = units.some(({ closed }) => closed === null);
  if (!isKnown || isStillDown) throw new Refusal('cause-not-closed', { cause, entry: entry ?? 'this item' });
}
