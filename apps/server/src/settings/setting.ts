/**
 * One thing that the operator settles. Each preset has a value for it, with its source and how well that is known; the
 * operator may settle another one with a recorded reason. One that changes nothing here says where it acts.
 */
import type { PresetName, Sourced } from '#intervals';

export type PresetChoice = PresetName | 'custom';
export const PRESET_CHOICES: readonly PresetChoice[] = ['easa', 'faa', 'tcca-2006', 'tcca-2022', 'custom'];

/** As stored and as sent: plain JSON. */
export type SettingValue = string | number | boolean | null | readonly string[];

export type SettingKind =
  | { kind: 'choice'; choices: readonly { value: string; words: string }[] }
  | { kind: 'some-of'; choices: readonly { value: string; words: string }[] }
  | { kind: 'yes-no' }
  | { kind: 'whole'; least: number; most: number; unit: string }
  | { kind: 'text'; most: number; mayBeNone: boolean }
  /** A list of the operator's own, such as its stations; none until it is settled. */
  | { kind: 'codes'; what: string; example: string; pattern: RegExp }
  | { kind: 'zone' };

export interface Setting {
  /** As it is stored. */
  key: string;
  title: string;
  /** What it decides, in one sentence. */
  about: string;
  takes: SettingKind;
  /** Of a setting that the program only keeps for the record: where it acts, in one sentence. */
  kept?: string;
  valueIn: (preset: PresetChoice) => Sourced<SettingValue>;
}

/** The same in every regime. */
export function everywhere<T extends SettingValue>(sourced: Sourced<T>): Setting['valueIn'] {
  return () => sourced;
}
