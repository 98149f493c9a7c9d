/** What an earlier log time moves, told before it is signed. Null where the defect has no limit. */
import type { DeferralSettings } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { type Deadline, deadlineOf } from '../signed-limit.js';
import { recountLimits } from './recount-limits.js';

export interface LimitMoved {
  before: Deadline;
  after: Deadline;
  /** Something is counted from the use of the aircraft, from the new time on. */
  counted: boolean;
  /** An extension was granted on the later time, and falls away. */
  extended: boolean;
}

export function correctionMoves(life: DefectLife, recordedAt: string, settings: DeferralSettings): LimitMoved | null {
  if (life.limits.length === 0) return null;
  const after = deadlineOf(recountLimits(life, recordedAt, settings));
  return {
    before: deadlineOf(life.limits),
    after,
    counted: after.counted.length > 0,
    extended: life.extensions.length > 0,
  };
}
