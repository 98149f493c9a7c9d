import { baseZone } from './base-zone.js';
import { calendarWindow, explainWindow } from './calendar-window.js';
import { limitsOf, type Category } from './category.js';
import type { CalendarClock, CountsFrom, RectificationClock } from './clock.js';
import { countedClock } from './counted-clock.js';
import { writeInstant } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';
import { writeInterval } from './interval-text.js';
import type { Preset, PresetName } from './presets/preset.js';
import { presetOf } from './presets/presets.js';
import { readRecorded } from './recorded.js';

/** What a rectification interval is computed from. */
export interface WindowInput {
  category: Category;
  /** When the defect was recorded in the log: ISO 8601 with `Z` or offset, or without one, local to `base`. */
  recordedAt: string;
  /** UTC or one IANA zone. */
  base: string;
  /** The row's interval text; needed for A, only a shorter number of calendar days for B, C, D. */
  interval?: string;
  /** Version of the time-zone data in use, e.g. `process.versions.tz`; carried into the result. */
  tzdb: string;
  /** Whose rules count; matters for intervals counted from use. Default `easa`. */
  preset?: PresetName | Preset;
}

/**
 * The rectification interval of one defect: from the day after the day of discovery, for 3 (B), 10 (C) or 120 (D)
 * consecutive calendar days, or as the row of category A says.
 *
 * recorded 2026-01-26T10:00 (UTC), B -> 2026-01-27T00:00Z up to, not including, 2026-01-30T00:00Z; last day 2026-01-29.
 *
 * Sources: FAA MMEL Policy Letter 25 Rev 24 p. 7 (SEEN-Q), ORO.MLR.105, CS-MMEL.105. Throws IntervalInputError.
 */
export function rectificationWindow(input: WindowInput & { category: 'B' | 'C' | 'D' }): CalendarClock;
export function rectificationWindow(input: WindowInput): RectificationClock;
export function rectificationWindow(input: WindowInput): RectificationClock {
  const base = baseZone(input.base);
  const tzdb = tzdbVersion(input.tzdb);
  const limits = limitsOf(input.category, input.interval);
  const countsFrom: CountsFrom = presetOf(input.preset).countsFrom.value;
  const recorded = readRecorded(input.recordedAt, base);
  const common = {
    category: input.category,
    interval: writeInterval(limits),
    limits,
    recordedAt: writeInstant(recorded.instant),
    dayOfDiscovery: recorded.day.toString(),
    base,
    tzdb,
  };
  const [only] = limits;
  if (limits.length !== 1 || only?.unit !== 'calendar-days') {
    return { ...common, ...countedClock(limits, recorded, base, countsFrom) };
  }
  return {
    ...common,
    kind: 'calendar',
    days: only.amount,
    ...calendarWindow(recorded.day, only.amount, base),
    explanation: explainWindow(recorded, only.amount, base),
  };
}

function tzdbVersion(version: string): string {
  if (typeof version === 'string' && /^[\w.+-]{1,32}$/.test(version)) return version;
  throw new IntervalInputError('tzdb', version, 'is no version of time-zone data such as "2026a".');
}
