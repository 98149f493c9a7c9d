/** Settings as pages show them: the value in force, that of the preset with its source, and the operator's own. */
import type { SettingKind } from './setting.js';
import { settingInWords } from './setting-value.js';
import { settledBy, type SettlingOperator } from './settled.js';

export function settingLines(operator: SettlingOperator) {
  return settledBy(operator).map(({ setting, preset, own, value }) => ({
    key: setting.key,
    title: setting.title,
    about: setting.about,
    kept: setting.kept ?? null,
    ...inputOf(setting.takes),
    value,
    words: settingInWords(setting, value),
    preset: {
      value: preset.value,
      words: settingInWords(setting, preset.value),
      source: preset.source,
      mark: preset.mark,
    },
    own: own === null ? null : { value: own.value, words: settingInWords(setting, own.value), reason: own.reason },
  }));
}

/** What a page needs to offer an input of the right kind. */
function inputOf(takes: SettingKind) {
  const choices = takes.kind === 'choice' || takes.kind === 'some-of' ? [...takes.choices] : null;
  const range = takes.kind === 'whole' ? { least: takes.least, most: takes.most, unit: takes.unit } : null;
  return { takes: takes.kind, choices, range };
}
