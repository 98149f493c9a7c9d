/**
 * The cause of a stricter row is another unit of the same item being down. It is gone only when that defect is closed.
 * ORO.MLR.105.
 */
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `cause-not-closed`. */
export function admitCause(life: DefectLife, cause: string, others: readonly DefectLife[]): void {
  const entry = life.item?.entry ?? null;
  const gone = others.some(
    (other) =>
      other.defect === cause &&
      other.closed !== null &&
      other.aircraft.registration === life.aircraft.registration &&
      other.item?.entry === entry,
  );
  const stillDown = others.some(
    (other) => other.closed === null && other.item !== null && other.item.entry === entry,
  );
  if (!gone || stillDown) throw new Refusal('cause-not-closed', { cause, entry: entry ?? 'this item' });
}
