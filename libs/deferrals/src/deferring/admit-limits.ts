/**
 * A limit counts from the log time of the defect; nothing restarts it. Only a row that relieves several units at once may
 * count from the record of another one of them. ORO.MLR.105; 14 CFR 121.628; M.A.403(c).
 */
import type { DefectLife } from '../defect-life.js';
import { millisecondsOf } from '../instant.js';
import { Refusal } from '../refusal.js';
import type { SignedLimit } from '../signed-limit.js';

/** Throws Refusal `clock-restarted`. */
export function admitLimits({ defect, recordedAt }: DefectLife, limits: readonly SignedLimit[]): void {
  for (const { clock, pair } of limits) {
    if (clock === null || pair) continue;
    if (millisecondsOf(clock.recordedAt, 'clock') !== millisecondsOf(recordedAt, 'log')) {
      throw new Refusal('clock-restarted', { defect, recordedAt, asked: clock.recordedAt });
    }
  }
}
