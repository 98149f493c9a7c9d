import { anything, instant, list, object, oneOf, orNull, ref, type Shape, text, whole } from '../openapi/shape.js';
import { PRESET_CHOICES } from './setting.js';

const MARKS = ['SEEN', 'SEEN-Q', 'SEEN-2', 'DERIVED', 'FROM MEMORY', 'COMMON PRACTICE'];
const VALUE = 'A text, a number, true / false, a list of texts, or null for none.';

const line = object(
  {
    key: text('Which setting.'),
    title: text('What it is called.'),
    about: text('What it decides.'),
    kept: orNull(text('Of one that this program only keeps for the record: where it acts.')),
    takes: oneOf(['choice', 'some-of', 'yes-no', 'whole', 'text', 'codes', 'zone'], 'What kind of value it takes.'),
    choices: orNull(list(object({ value: text('As sent.'), words: text('In words.') }))),
    range: orNull(object({ least: whole('Least.'), most: whole('Most.'), unit: text('Unit.') })),
    value: anything(`The value in force. ${VALUE}`),
    words: text('The same in words.'),
    preset: object({
      value: anything(`The value of the preset. ${VALUE}`),
      words: text('The same in words.'),
      source: text('Where it comes from.'),
      mark: oneOf(MARKS, 'How well it is known.'),
    }),
    own: orNull(
      object({
        value: anything(`The operator's own value. ${VALUE}`),
        words: text('The same in words.'),
        reason: text('Why; recorded with it.'),
      }),
    ),
  },
  'Something that the operator settles.',
);

const change = object({
  key: text('Which setting.'),
  title: text('What it is called.'),
  before: text('In words.'),
  after: text('In words.'),
  reason: text('Why.'),
});

const effect = object(
  {
    about: oneOf(['deadline', 'use', 'extension', 'answer'], 'What reads otherwise.'),
    registration: text('Mark of the aircraft.'),
    of: text('Number of the defect, or of the flight.'),
    before: text('How it reads now.'),
    after: text('How it would read. A signed deadline stays.'),
  },
  'Something open that reads otherwise under other settings.',
);

export const SETTINGS_SHAPES: Record<string, Shape> = {
  SettingLine: line,
  SettingChange: change,
  SettingEffect: effect,
  SettingsView: object({
    at: instant('When this was read'),
    preset: oneOf(PRESET_CHOICES, 'The preset in use.'),
    settings: list(ref('SettingLine'), 'Everything that the operator settles.'),
  }),
  SettingsPreview: object({
    at: instant('When this was computed'),
    changes: list(ref('SettingChange')),
    effects: list(ref('SettingEffect')),
    statement: orNull(text('What is to be signed; null where nothing open reads otherwise.')),
  }),
};
