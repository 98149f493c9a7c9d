import type { RectificationClock, WhatIsLeft } from '#intervals';
import type { DefectLife } from '../defect-life.js';
import { earliest, minutesBetween } from '../instant.js';
import type { Standing } from '../standing.js';

/**
 * What is left of a deferral, from 1 (nothing used) down to 0 (used up): the smallest share of all its limits, since the
 * first one to run out ends it. Null without a limit, and when none of them can be counted: what is not known is not
 * taken for plenty, it is shown as not known elsewhere.
 *
 * Time runs by the minute from the start of the window; use runs in its own unit. B recorded 26 Jan 10:00 UTC, window 27
 * to 29 Jan: at 28 Jan 12:00 half of it.
 */
export function shareLeft(life: DefectLife, { at, left }: Pick<Standing, 'at' | 'left'>): number | null {
  const clocks = life.limits.flatMap(({ clock }) => clock ?? []);
  const ofClocks = clocks.flatMap((clock, index) => (left[index] ? sharesOf(clock, left[index]) : []));
  const until = earliest(life.limits.map((limit) => limit.until));
  const shares =
    until === null ? ofClocks : [...ofClocks, ofTime(life.recordedAt, until, Math.max(0, minutesBetween(at, until)))];
  return shares.length === 0 ? null : Math.min(...shares);
}

function sharesOf({ startsAt }: RectificationClock, { limits }: WhatIsLeft): number[] {
  return limits.flatMap(({ limit, used, left, minutesLeft: minutes, endsAt }) => {
    const isTime = limit.unit === 'calendar-days' || limit.unit === 'hours';
    if (isTime && endsAt !== null && minutes !== null) return [ofTime(startsAt, endsAt, minutes)];
    if (used === null || left === null) return [];
    return [left === 0 ? 0 : left / (used + left)];
  });
}

/** Before the window begins all of it is left. */
function ofTime(startsAt: string, endsAt: string, minutes: number): number {
  const whole = minutesBetween(startsAt, endsAt);
  return whole <= 0 ? 0 : Math.min(1, minutes / whole);
}
