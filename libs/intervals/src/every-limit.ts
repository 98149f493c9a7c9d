import type { RectificationClock } from './clock.js';
import type { Limit } from './interval-text.js';

/** The limits of a clock and the shorter ones inside it. */
export function everyLimit(clock: RectificationClock): Limit[] {
  const inside = clock.kind === 'counted' ? (clock.within ?? []) : [];
  return [...clock.limits, ...inside.flatMap((one) => one.limits)];
}
