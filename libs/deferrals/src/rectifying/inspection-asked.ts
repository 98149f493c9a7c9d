/** Whether the operator's list asks for an independent inspection of work on this item. 145.A.48; 14 CFR 121.371. */
import type { DeferralSettings } from '../context.js';
import type { DefectLife } from '../defect-life.js';

/**
 * A line of the list is a system (ATA chapter, two digits) or an MEL entry number. The system of a defect is the one that
 * was written, and the one its entry begins with: either on the list asks.
 */
export function listAsksInspection(
  { system, item }: Pick<DefectLife, 'system' | 'item'>,
  { inspectionList }: Pick<DeferralSettings, 'inspectionList'>,
): string | null {
  const entry = item?.entry ?? null;
  const chapter = entry === null ? null : entry.slice(0, 2);
  return inspectionList.find((line) => line === entry || line === system || line === chapter) ?? null;
}
