import { Temporal } from 'temporal-polyfill';
import { sayEnd } from '../calendar-window.js';
import { sayLocal } from '../explain-time.js';
import type { CountingSettings } from '../settings.js';
import type { Limit } from '../interval-text.js';
import type { LimitAnswer } from '../limit-answer.js';

/**
 * Calendar days and hours on the clock: the flight must leave the blocks before the end, or under `arrival-inside` be
 * back on them before it. The end itself is outside: a window is half-open.
 */
export function askFixedEnd(
  limit: Limit,
  ends: Temporal.Instant,
  base: string,
  offBlock: Temporal.Instant,
  onBlock: Temporal.Instant | null,
  settings: CountingSettings,
): LimitAnswer {
  const end = sayEnd(ends, base);
  const isInside = (instant: Temporal.Instant): boolean => Temporal.Instant.compare(instant, ends) < 0;
  if (!isInside(offBlock)) {
    return {
      limit,
      answer: 'fails',
      because: `The interval ${end}; off blocks ${sayLocal(offBlock, base)} is after it.`,
    };
  }
  const leaves = `The interval ${end}; off blocks ${sayLocal(offBlock, base)} is not after it`;
  if (settings.expiryInFlight === 'departure-inside') return { limit, answer: 'holds', because: `${leaves}.` };
  if (!onBlock) {
    return {
      limit,
      answer: 'unknown',
      because: `${leaves}, but it must also arrive inside, and when it arrives is not known.`,
    };
  }
  const arrives = `and must also arrive inside; on blocks ${sayLocal(onBlock, base)}`;
  return isInside(onBlock)
    ? { limit, answer: 'holds', because: `${leaves} ${arrives} is not after it.` }
    : { limit, answer: 'fails', because: `${leaves} ${arrives} is after it.` };
}
