import type { Sourced } from '#intervals';
import { ANY_NUMBER, nameOfNotice, NOTICE_NAMES, presetNamed } from './preset-of-choice.js';
import { everywhere, type Setting, type SettingValue } from './setting.js';

const same = (value: string) => ({ value, words: value });

/** The same source and mark beside a value written otherwise. */
function written<T>(sourced: Sourced<T>, write: (value: T) => SettingValue): Sourced<SettingValue> {
  return { ...sourced, value: write(sourced.value) };
}

/** What the operator may grant itself beyond the interval. */
export const EXTENSION_SETTINGS: readonly Setting[] = [
  {
    key: 'extensionProcedure',
    title: 'Approved procedure for extensions',
    about: 'Its reference; without one the operator extends nothing.',
    takes: { kind: 'text', most: 120, mayBeNone: true },
    valueIn: everywhere({
      value: null,
      source: 'ORO.MLR.105(f); 14 CFR 121.628 (operations specification D095): only under an approved procedure',
      mark: 'SEEN',
    }),
  },
  {
    key: 'extensionCategories',
    title: 'Categories that may be extended',
    about: 'Category A never is.',
    takes: { kind: 'some-of', choices: ['B', 'C', 'D'].map(same) },
    valueIn: (preset) => presetNamed(preset).extension.categories,
  },
  {
    key: 'extensionTimes',
    title: 'How often one deferral may be extended',
    about: 'The next one after that is refused.',
    takes: { kind: 'choice', choices: ['1', '2', '3', ANY_NUMBER].map(same) },
    valueIn: (preset) =>
      written(presetNamed(preset).extension.times, (times) => (times === null ? ANY_NUMBER : String(times))),
  },
  {
    key: 'extensionNotice',
    title: 'Notice of an extension',
    about: 'By when, after the grant, the authority must have been told.',
    takes: { kind: 'choice', choices: NOTICE_NAMES.map(same) },
    valueIn: (preset) => written(presetNamed(preset).extension.notice, nameOfNotice),
  },
  {
    key: 'extensionNeedsAgreement',
    title: 'Agreement of the authority',
    about: 'Whether the authority must agree before an extension is granted.',
    takes: { kind: 'yes-no' },
    valueIn: (preset) => presetNamed(preset).extension.needsAgreement,
  },
];
