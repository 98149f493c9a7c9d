/** What an operator settled: for each setting the value of its preset, or its own with the recorded reason. */
import type { Sourced } from '#intervals';
import type { OperatorRow } from '#store';
import { COUNTING_SETTINGS } from './counting-settings.js';
import { DEFERRAL_SETTINGS } from './deferral-settings.js';
import { EXTENSION_SETTINGS } from './extension-settings.js';
import { RECORD_SETTINGS } from './record-settings.js';
import { REMINDER_SETTINGS } from './reminder-settings.js';
import { PRESET_CHOICES, type PresetChoice, type Setting, type SettingValue } from './setting.js';
import { misfitOfSetting } from './setting-value.js';

/** Every setting that the program uses, in the order in which they are shown. */
export const SETTINGS: readonly Setting[] = [
  ...COUNTING_SETTINGS,
  ...EXTENSION_SETTINGS,
  ...DEFERRAL_SETTINGS,
  ...REMINDER_SETTINGS,
  ...RECORD_SETTINGS,
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
  if (!Object.hasOwn(settings, key) || misfitOfSetting(setting, settings[key]) !== null) return null;
  return { value: settings[key] as SettingValue, reason };
}

/** Reasons by key. */
export function reasonsIn(settings: OperatorRow['settings']): Record<string, string> {
  const { reasons } = settings;
  return typeof reasons === 'object' && reasons !== null ? { ...(reasons as Record<string, string>) } : {};
}
