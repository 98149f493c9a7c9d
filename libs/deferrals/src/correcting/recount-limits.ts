/**
 * The limits counted anew from an earlier log time. An extension that was granted on the later one falls away with it:
 * nobody knows whether it would have been granted in time. M.A.403(c).
 */
import { rectificationWindow } from '#intervals';
import type { DeferralSettings } from '../context.js';
import { needZoneData } from '../zone-data.js';
import { readingIntervals } from '../deferring/reading-intervals.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import type { SignedLimit } from '../signed-limit.js';

export function recountLimits(life: DefectLife, recordedAt: string, settings: DeferralSettings): SignedLimit[] {
  needZoneData(settings);
  const { tzdb, preset } = settings;
  return life.limits.map((limit) => {
    if (limit.clock === null || limit.pair) return limit;
    const { category, interval, base } = limit.clock;
    const { engine, stated } = limit.clock.kind === 'counted' ? limit.clock : {};
    const deferredAt = life.deferral?.deferredAt;
    const clock = readingIntervals(() =>
      rectificationWindow({
        category,
        interval,
        base,
        recordedAt,
        tzdb,
        preset,
        ...(engine !== undefined && { engine }),
        ...(stated !== undefined && { stated }),
        ...(deferredAt !== undefined && !before(deferredAt, recordedAt) && { deferredAt }),
      }),
    );
    return { ...limit, clock };
  });
}
