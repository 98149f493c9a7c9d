/** Category to window, counting of days, flights, hours and cycles, what is left, and extensions. Pure. */
export { accountOfUse, type UseStep } from './account-of-use.js';
export { baseZone } from './base-zone.js';
export { dayOf, minutesBetween } from './calendar-day.js';
export { CATEGORY_DAYS, intervalOf, limitsOf, type Category } from './category.js';
export type { CalendarClock, CountedClock, RectificationClock, StatedStart } from './clock.js';
export type { CountsFrom } from './counts-from.js';
export { countUsed, type CountOptions } from './count-used.js';
export { NO_ENGINE_COUNTS, type EngineCounts, type EngineReading, type EngineRun } from './engines/engine-count.js';
export { engineCounters, type EngineCounter } from './engines/engine-counters.js';
export { withEngines } from './engines/with-engines.js';
export {
  extend,
  type Extension,
  type ExtensionAnswer,
  type ExtensionInput,
  type ExtensionRefused,
} from './extend.js';
export type { ExtensionRefusal } from './extension-rules.js';
export { readInstant, readMilliseconds, writeInstant } from './instant.js';
export { IntervalInputError } from './interval-input-error.js';
export {
  INTERVAL_UNITS,
  isStationUnit,
  parseInterval,
  writeInterval,
  writeLimit,
  type IntervalUnit,
  type Limit,
} from './interval-text.js';
export { hasFlown, type EngineUse, type Leg } from './leg.js';
export type { LimitAnswer, PlannedLeg } from './limit-answer.js';
export type { LimitLeft } from './limit-left.js';
export { mayDepart, type DepartureAnswer } from './may-depart.js';
export type {
  ExtensionRules,
  MelStops,
  NoticeRule,
  Preset,
  PresetName,
  Sourced,
  ValueMark,
} from './presets/preset.js';
export { CUSTOM } from './presets/custom.js';
export { DEFAULT_PRESET, PRESETS, presetOf } from './presets/presets.js';
export { projectedEnd, type ProjectedEnd, type ProjectionInput } from './projected-end.js';
export { recountEnds, startOfDayHere, type StartOfDayIn } from './recount-ends.js';
export { rectificationWindow, type WindowInput } from './rectification-window.js';
export { countingSettings, type CountingSettings } from './settings.js';
export { useAfter, type FlightFlown } from './use-after.js';
export type { CountedUse, Used } from './used.js';
export { whatIsLeft, type WhatIsLeft } from './what-is-left.js';
export { readInterval, writeWholeInterval, type Interval, type WithinLimit } from './whole-interval.js';
