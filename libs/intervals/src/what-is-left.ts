import { Temporal } from 'temporal-polyfill';
import type { RectificationClock } from './clock.js';
import { readInstant, writeInstant } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';
import { leftOf, type LimitLeft } from './limit-left.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { checkUsed, type Used } from './used.js';

/** What is left of a clock at an instant. Shown as it is, never maximised: the defect is to be rectified at once. */
export interface WhatIsLeft {
  at: string;
  /** True when one limit is over, null when none is known to be and one is not known. */
  isOver: boolean | null;
  /** The earliest end that is known, exclusive; null when no limit has one yet. */
  endsAt: string | null;
  /** The calendar day of that end; null for hours on the clock. */
  lastDay: string | null;
  limits: LimitLeft[];
  /** One sentence, all limits. */
  sentence: string;
}

/**
 * What is left at an instant, each limit in its own unit. `used` is what countUsed made of the legs up to `at`.
 *
 * B recorded 26 Jan 10:00 UTC, at 28 Jan 09:00 UTC -> 2 of 3 calendar days, 39 h.
 * Throws IntervalInputError, also for an `at` before the record.
 */
export function whatIsLeft(
  clock: RectificationClock,
  at: string,
  used: Used = {},
  settings: Partial<CountingSettings> = {},
): WhatIsLeft {
  const now = readInstant('at', at);
  if (Temporal.Instant.compare(now, readInstant('recordedAt', clock.recordedAt)) < 0) {
    throw new IntervalInputError('at', at, `is before the record of the defect at ${clock.recordedAt}.`);
  }
  checkUsed(used);
  const { hourClock } = countingSettings(undefined, settings);
  const limits = clock.limits.map((limit) => leftOf(limit, clock, now, used, hourClock));
  const first = limits.reduce<LimitLeft | null>(earlier, null);
  return {
    at: writeInstant(now),
    isOver: limits.some((limit) => limit.isOver)
      ? true
      : limits.some((limit) => limit.isOver === null)
        ? null
        : false,
    endsAt: first?.endsAt ?? null,
    lastDay: first?.lastDay ?? null,
    limits,
    sentence: `${limits.map((limit) => limit.text).join('; ')}.`,
  };
}

/** Of two limits the one with the earlier known end. */
function earlier(first: LimitLeft | null, limit: LimitLeft): LimitLeft | null {
  if (limit.endsAt === null) return first;
  if (first?.endsAt == null) return limit;
  return readInstant('endsAt', limit.endsAt).epochNanoseconds < readInstant('endsAt', first.endsAt).epochNanoseconds
    ? limit
    : first;
}
