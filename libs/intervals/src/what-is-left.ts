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
  const settled = countingSettings(undefined, settings);
  const counted = clock.kind === 'counted' ? clock : null;
  const own = clock.limits.map((limit) => leftOf(limit, clock, now, used, settled));
  const waiting = (counted?.within ?? []).filter(({ until }) => used.done?.includes(until) !== true);
  const inside = waiting.flatMap(({ until, limits }) =>
    limits.map((limit) => insideOf(until, leftOf(limit, clock, now, used, settled))),
  );
  const lastOf = counted?.joint === 'last-of';
  const end = [lastOf ? latest(own) : own.reduce(earlier, null), ...inside].reduce(earlier, null);
  const texts = lastOf
    ? [`${own.map(({ text }) => text).join('; ')} (the later counts)`]
    : own.map(({ text }) => text);
  return {
    at: writeInstant(now),
    isOver: isOver([lastOf ? notUntilAll(own) : isOver(own.map(overOf)), ...inside.map(overOf)]),
    endsAt: end?.endsAt ?? null,
    lastDay: end?.lastDay ?? null,
    limits: [...own, ...inside],
    sentence: `${[...texts, ...inside.map(({ text }) => text)].join('; ')}.`,
  };
}

const overOf = (limit: LimitLeft): boolean | null => limit.isOver;

function isOver(ends: readonly (boolean | null)[]): boolean | null {
  return ends.includes(true) ? true : ends.includes(null) ? null : false;
}

function notUntilAll(limits: readonly LimitLeft[]): boolean | null {
  const ends = limits.map(overOf);
  return ends.includes(false) ? false : ends.includes(null) ? null : true;
}

function insideOf(until: string, left: LimitLeft): LimitLeft {
  return { ...left, until, text: `unless ${until} is done: ${left.text}` };
}

/** The last end, where all are known. */
function latest(limits: readonly LimitLeft[]): LimitLeft | null {
  if (limits.some(({ endsAt }) => endsAt === null)) return null;
  return limits.reduce((last, limit) => (earlier(last, limit) === last ? limit : last));
}

/** Of two limits the one with the earlier known end. */
function earlier(first: LimitLeft | null, limit: LimitLeft | null): LimitLeft | null {
  if (limit === null || limit.endsAt === null) return first;
  if (first?.endsAt == null) return limit;
  return readInstant('endsAt', limit.endsAt).epochNanoseconds < readInstant('endsAt', first.endsAt).epochNanoseconds
    ? limit
    : first;
}
