import { baseZone } from './base-zone.js';
import { calendarWindow, explainWindow } from './calendar-window.js';
import { intervalOf, type Category } from './category.js';
import type { CalendarClock, RectificationClock, StatedStart } from './clock.js';
import { countedClock } from './counted-clock.js';
import { writeInstant } from './instant.js';
import { IntervalInputError } from './interval-input-error.js';
import type { Preset, PresetName } from './presets/preset.js';
import { presetOf } from './presets/presets.js';
import { readRecorded } from './recorded.js';
import { startOfCounting } from './start-of-counting.js';
import { writeWholeInterval } from './whole-interval.js';

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
  /** When it was deferred, with `Z` or an offset; counting starts there where policy or row say so. Default: the record. */
  deferredAt?: string;
  /** A start of its own that a document states; it comes before policy and row. */
  stated?: StatedStart;
  /** Position of the engine that an interval in engine-hours or engine-cycles is about. */
  engine?: string;
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
  const interval = intervalOf(input.category, input.interval);
  const { limits, within, timeLimited } = interval;
  const preset = presetOf(input.preset);
  const recorded = readRecorded(input.recordedAt, base);
  const common = {
    category: input.category,
    interval: writeWholeInterval(interval),
    limits,
    recordedAt: writeInstant(recorded.instant),
    dayOfDiscovery: recorded.day.toString(),
    base,
    tzdb,
  };
  const [only] = limits;
  const isCalendar = limits.length === 1 && within.length === 0 && !timeLimited && input.stated === undefined;
  if (only?.unit !== 'calendar-days' || !isCalendar) {
    const { deferredAt, stated, engine } = input;
    const policy = preset.countsFrom.value;
    const start = startOfCounting({ interval, recorded, base, policy, deferredAt, stated });
    const flightDay = preset.flightDay.value;
    return { ...common, ...countedClock({ interval, recorded, start, base, engine, flightDay }) };
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
