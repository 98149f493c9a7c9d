/**
 * A correction of the log time may only make it earlier, and so the limit nearer: it never moves the day forward.
 * M.A.403(c); 14 CFR 121.563.
 */
import type { Corrected } from '../acts.js';
import { admitLimits } from '../deferring/admit-limits.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';
import { earliestEnd } from '../signed-limit.js';

/** Throws Refusal `correction-moves-the-day`, `occurred-after-recorded` or `clock-restarted`. */
export function admitEarlierDay(life: DefectLife, { now, limits }: Corrected): void {
  const { defect, recordedAt: was, occurredAt } = life;
  if (!before(now, was)) throw new Refusal('correction-moves-the-day', { defect, was, now });
  if (occurredAt !== null && before(now, occurredAt)) {
    throw new Refusal('occurred-after-recorded', { occurredAt, recordedAt: now });
  }
  const counted = limits ?? [];
  admitLimits({ ...life, recordedAt: now }, counted);
  const [oldEnd, newEnd] = [earliestEnd(life.limits), earliestEnd(counted)];
  const later = oldEnd !== null && (newEnd === null || before(oldEnd, newEnd));
  if (later || counted.length !== life.limits.length) {
    throw new Refusal('correction-moves-the-day', { defect, was: oldEnd ?? was, now: newEnd ?? now });
  }
}
