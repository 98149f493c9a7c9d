/** What an operator would have settled after some changes. Nothing is stored here. */
import { Problem } from '../http/problem.js';
import type { SettingChangeBody } from './bodies.js';
import { PRESET_CHOICES, type Setting, type SettingValue } from './setting.js';
import { misfitOfSetting, settingInWords } from './setting-value.js';
import { presetChosen, reasonsIn, type Settled, settledBy, SETTINGS, type SettlingOperator } from './settled.js';

/** One change as it is shown, signed and recorded. */
export interface Change {
  key: string;
  title: string;
  before: string;
  after: string;
  reason: string;
}

export interface Changed {
  operator: SettlingOperator;
  changes: Change[];
}

/** Throws Problem `invalid-input` naming each change that cannot be. */
export function changed(operator: SettlingOperator, asked: readonly SettingChangeBody[]): Changed {
  const errors = asked.flatMap((change, index) => misfitOf(change, index, asked));
  if (errors.length > 0)
    throw new Problem('invalid-input', errors.map(({ reason }) => reason).join('; '), { errors });
  const settings = { ...operator.settings };
  const reasons = reasonsIn(settings);
  let { base } = operator;
  for (const { key, value = null, reason } of asked) {
    if (value === null) {
      delete settings[key];
      delete reasons[key];
    } else {
      settings[key] = value;
      reasons[key] = reason;
    }
    if (key === 'timeBase') base = typeof value === 'string' ? value : 'UTC';
  }
  const after = { settings: { ...settings, reasons }, base };
  return { operator: after, changes: changesBetween(operator, after, asked) };
}

function misfitOf(
  { key, value = null }: SettingChangeBody,
  index: number,
  asked: readonly SettingChangeBody[],
): { pointer: string; reason: string }[] {
  const wrong = (field: string, reason: string) => [{ pointer: `/changes/${index}/${field}`, reason }];
  if (asked.findIndex((one) => one.key === key) !== index) return wrong('key', `${key} is changed twice`);
  if (key === 'preset') {
    const known = PRESET_CHOICES.some((choice) => choice === value);
    return known ? [] : wrong('value', `the preset must be one of ${PRESET_CHOICES.join(', ')}`);
  }
  const setting = SETTINGS.find((one) => one.key === key);
  if (!setting) return wrong('key', `there is no setting ${key}`);
  const misfit = value === null ? null : misfitOfSetting(setting, value);
  return misfit === null ? [] : wrong('value', `${key} ${misfit}`);
}

/** What reads otherwise: the changes asked for, and what a change of preset brings along. */
function changesBetween(
  before: SettlingOperator,
  after: SettlingOperator,
  asked: readonly SettingChangeBody[],
): Change[] {
  const reasonOf = (key: string) => asked.find((one) => one.key === key)?.reason;
  const presetReason = reasonOf('preset');
  const [was, is] = [presetChosen(before), presetChosen(after)];
  const preset: Change[] =
    was === is ? [] : [{ key: 'preset', title: 'Preset', before: was, after: is, reason: presetReason ?? '' }];
  const settledBefore = settledBy(before);
  const others = settledBy(after).flatMap((one, index) => {
    const from = settledBefore[index];
    if (!from || sameAs(from, one)) return [];
    const reason = reasonOf(one.setting.key) ?? presetReason ?? '';
    return [changeOf(one.setting, from.value, one.value, reason)];
  });
  return [...preset, ...others];
}

function sameAs(one: Settled, other: Settled): boolean {
  return JSON.stringify(one.value) === JSON.stringify(other.value);
}

function changeOf(setting: Setting, before: SettingValue, after: SettingValue, reason: string): Change {
  const { key, title } = setting;
  return { key, title, before: settingInWords(setting, before), after: settingInWords(setting, after), reason };
}
