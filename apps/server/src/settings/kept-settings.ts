/** Settings of one kind that the program keeps for the record. Each says where it acts, or will act. */
import type { Sourced, ValueMark } from '#intervals';
import { everywhere, type PresetChoice, type Setting, type SettingKind, type SettingValue } from './setting.js';

interface Kept {
  key: string;
  title: string;
  about: string;
  takes: SettingKind;
  /** Where it acts, in one sentence. */
  kept: string;
  /** Value, source and mark: the same in every regime, or by preset with `every` for the others. */
  values: Given | (Partial<Record<PresetChoice, Given>> & { every: Given });
}

export type Given = readonly [value: SettingValue, source: string, mark: ValueMark];

export function keptSetting({ values, ...setting }: Kept): Setting {
  if (isGiven(values)) return { ...setting, valueIn: everywhere(sourced(values)) };
  return { ...setting, valueIn: (preset) => sourced(values[preset] ?? values.every) };
}

/** Choices whose words are their values read aloud. */
export function choiceOf(...choices: readonly (readonly [value: string, words: string])[]): SettingKind {
  return { kind: 'choice', choices: choices.map(([value, words]) => ({ value, words })) };
}

export function rolesOf(...roles: readonly string[]): SettingKind {
  return { kind: 'some-of', choices: roles.map((role) => ({ value: role, words: role.replace('-', ' ') })) };
}

function isGiven(values: Kept['values']): values is Given {
  return Array.isArray(values);
}

function sourced([value, source, mark]: Given): Sourced<SettingValue> {
  return { value, source, mark };
}
