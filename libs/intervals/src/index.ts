/** Category to window, counting of days, flights, hours and cycles, what is left, and extensions. Pure. */
export { baseZone } from './base-zone.js';
export { dayOf, minutesBetween } from './calendar-day.js';
export { CATEGORY_DAYS, limitsOf, type Category } from './category.js';
export type { CalendarClock, CountedClock, CountsFrom, RectificationClock } from './clock.js';
export { countUsed, type CountOptions } from './count-used.js';
export {
  extend,
  type Extension,
  type ExtensionAnswer,
  type ExtensionInput,
  type ExtensionRefused,
} from './extend.js';
export type { ExtensionRefusal } from './extension-rules.js';
export { readInstant, writeInstant } from './instant.js';
export { IntervalInputError } from './interval-input-error.js';
export { INTERVAL_UNITS, parseInterval, writeInterval, type IntervalUnit, type Limit } from './interval-text.js';
export { hasFlown, type Leg } from './leg.js';
export type { LimitAnswer, PlannedLeg } from './limit-answer.js';
export type { LimitLeft } from './limit-left.js';
export { mayDepart, type DepartureAnswer } from './may-depart.js';
export type { ExtensionRules, NoticeRule, Preset, PresetName, Sourced, ValueMark } from './presets/preset.js';
export { CUSTOM } from './presets/custom.js';
export { DEFAULT_PRESET, PRESETS, presetOf } from './presets/presets.js';
export { rectificationWindow, type WindowInput } from './rectification-window.js';
export { countingSettings, type CountingSettings } from './settings.js';
export type { CountedUse, Used } from './used.js';
export { whatIsLeft, type WhatIsLeft } from './what-is-left.js';
