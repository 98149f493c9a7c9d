/**
 * One failed unit is one defect. A second write-up of a unit that is open under deferral is the same defect seen again: it
 * goes on as an entry of that one, and the clock stays. 14 CFR 121.563; M.A.403(c).
 *
 * Where it is not known which of several units failed, it may be the same one: then it is asked first which.
 */
import type { FailedItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { itemInWords } from '../writing-up/identify.js';

/** The open deferral of the same aircraft that is, or may be, of this very unit. */
export function openDeferralOf(item: FailedItem | null, others: readonly DefectLife[]): DefectLife | null {
  if (item === null || item.entry === null) return null;
  return (
    others.find(
      ({ closed, deferral, item: other }) =>
        closed === null &&
        deferral !== null &&
        other !== null &&
        other.entry === item.entry &&
        other.subEntry === item.subEntry &&
        other.units.some((unit) => item.units.includes(unit)),
    ) ?? null
  );
}

/** Throws Refusal `unit-deferred-already` or `unit-may-be-deferred-already`. */
export function notDownAlready(defect: string, item: FailedItem | null, others: readonly DefectLife[]): void {
  const open = openDeferralOf(item, others);
  if (open === null || item === null) return;
  const certain = item.units.length === 1 && open.item?.units.length === 1;
  const facts = { defect, item: itemInWords(item), other: open.defect };
  throw certain ? new Refusal('unit-deferred-already', facts) : new Refusal('unit-may-be-deferred-already', facts);
}
