/** What an operator settled: for each setting the value of its preset, or its own with the recorded reason. */
import type { Sourced } from '#intervals';
import type { OperatorRow } from '#store';
import { COUNTING_SETTINGS } from './counting-settings.js';
import { DEFERRAL_SETTINGS } from './deferral-settings.js';
import { EXTENSION_SETTINGS } from './extension-settings.js';
import { FLIGHT_SETTINGS } from './flight-settings.js';
import { KEPT_TIMES_SETTINGS } from './kept-times-settings.js';
import { PEOPLE_SETTINGS } from './people-settings.js';
import { RECORD_SETTINGS } from './record-settings.js';
import { REMINDER_SETTINGS } from './reminder-settings.js';
import { REPETITIVE_SETTINGS } from './repetitive-settings.js';
import { PRESET_CHOICES, type PresetChoice, type Setting, type SettingValue } from './setting.js';
import { misfitOfSetting } from './setting-value.js';

/** Everything that an operator settles, in the order in which it is shown. */
export const SETTINGS: readonly Setting[] = [
  ...COUNTING_SETTINGS,
  ...FLIGHT_SETTINGS,
  ...EXTENSION_SETTINGS,
  ...DEFERRAL_SETTINGS,
  ...REMINDER_SETTINGS,
  ...REPETITIVE_SETTINGS,
  ...RECORD_SETTINGS,
  ...PEOPLE_SETTINGS,
  ...KEPT_TIMES_SETTINGS,
];

export interface Settled {
  setting: Setting;
  preset: Sourced<SettingValue>;
  own: { value: SettingValue; reason: string } | null;
  value: SettingValue;
}

export type SettlingOperator = Pick<OperatorRow, 'settings' | 'base'>;

export function presetChosen({ settings }: Pick<OperatorRow, 'settings'>): PresetChoice {
  return PRESET_CHOICES.find((choice) => choice === settings['preset']) ?? 'easa';
}

export function settledBy(operator: SettlingOperator): Settled[] {
  const choice = presetChosen(operator);
  return SETTINGS.map((setting) => {
    const preset = setting.valueIn(choice);
    const own = ownValue(operator, setting, preset.value);
    return { setting, preset, own, value: own === null ? preset.value : own.value };
  });
}

/** A stored value that does not fit is none: the preset counts. The time base has a column of its own. */
function ownValue(operator: SettlingOperator, setting: Setting, otherwise: SettingValue): Settled['own'] {
  const { settings, base } = operator;
  const { key } = setting;
  const reason = reasonsIn(settings)[key] ?? '';
  if (key === 'timeBase') {
    return base === otherwise && !Object.hasOwn(settings, key) ? null : { value: base, reason };
  }
  if (!Object.hasOwn(settings, key)) return null;
  const stored = setting.takes.kind === 'codes' ? pairsOf(settings[key]) : settings[key];
  return misfitOfSetting(setting, stored) === null ? { value: stored as SettingValue, reason } : null;
}

/** Airline codes may be stored as pairs by key; they are shown as they are written. */
function pairsOf(stored: unknown): unknown {
  if (typeof stored !== 'object' || stored === null || Array.isArray(stored)) return stored;
  return Object.entries(stored).map(([one, other]) => `${one}=${String(other)}`);
}

/** Reasons by key. */
export function reasonsIn(settings: OperatorRow['settings']): Record<string, string> {
  const { reasons } = settings;
  return typeof reasons === 'object' && reasons !== null ? { ...(reasons as Record<string, string>) } : {};
}
