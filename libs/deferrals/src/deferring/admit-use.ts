/** A row whose flights, days, hours or cycles are used up is not escaped by another row. ORO.MLR.105. */
import { whatIsLeft } from '#intervals';
import type { BasisContext } from '../context.js';
import { Refusal } from '../refusal.js';
import { isCounted, type SignedLimit } from '../signed-limit.js';
import { readingIntervals } from './reading-intervals.js';

/** Throws Refusal `interval-used-up`, or `use-not-known` when the counter that matters is not there. */
export function admitUse(
  defect: string,
  limits: readonly SignedLimit[],
  { used, settings, now }: Pick<BasisContext, 'used' | 'settings' | 'now'>,
): void {
  for (const { clock } of limits) {
    if (clock === null) continue;
    const left = readingIntervals(() => whatIsLeft(clock, now, used, settings.counting));
    // Where the later of several limits counts, one of them may be used up.
    if (clock.kind === 'counted' && clock.joint === 'last-of' && left.isOver === false) continue;
    for (const { limit, isOver, text } of left.limits.filter((one) => isCounted(one.limit))) {
      if (isOver === null) throw new Refusal('use-not-known', { defect, unit: limit.unit });
      if (isOver) throw new Refusal('interval-used-up', { defect, left: text });
    }
  }
}
