import { presetNamed } from './preset-of-choice.js';
import { everywhere, type Setting } from './setting.js';

/** Deferring, and judging what is deferred. */
export const DEFERRAL_SETTINGS: readonly Setting[] = [
  {
    key: 'concurrenceNeeded',
    title: 'Concurrence to a deferral',
    about: 'Whether a second person must concur before a deferral stands.',
    takes: { kind: 'yes-no' },
    valueIn: everywhere({
      value: false,
      source: 'no text asks for it; many operators have maintenance control concur',
      mark: 'COMMON PRACTICE',
    }),
  },
  {
    key: 'lateAfterMinutes',
    title: 'Late entry',
    about: 'Minutes between the log and the entry from which a reason is asked.',
    takes: { kind: 'whole', least: 0, most: 10_080, unit: 'minutes' },
    valueIn: everywhere({
      value: 60,
      source: 'no text gives a number; a late entry needs a reason and never moves the day',
      mark: 'COMMON PRACTICE',
    }),
  },
  {
    key: 'pairDayZero',
    title: "A pair's day zero",
    about: 'From which record a row counts that allows more than one unit to be inoperative.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'last-record', words: 'the record of the last unit' },
        { value: 'first-record', words: 'the record of the first unit' },
      ],
    },
    valueIn: everywhere({
      value: 'last-record',
      source: 'no text says it; the pair exists from the second record on, and no clock restarts',
      mark: 'DERIVED',
    }),
  },
  {
    key: 'changeOfRow',
    title: 'Change of row',
    about: 'Whether a deadline may move later when the row is changed.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'keep-earliest', words: 'never later than the earliest one signed' },
        { value: 'own-window', words: "the row's own interval, from the same day" },
      ],
    },
    valueIn: everywhere({
      value: 'keep-earliest',
      source: 'M.A.403(c), as soon as practicable: time is not gained by changing the row',
      mark: 'DERIVED',
    }),
  },
  {
    key: 'melStops',
    title: 'Where the MEL stops',
    about: 'Up to where the MEL decides about the flight on which something fails.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'take-off-power', words: 'until take-off power is set' },
        { value: 'commencement-of-flight', words: 'until the flight commences; then the commander judges' },
        { value: 'not-settled', words: 'not settled: the approved MEL says it' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).melStops,
  },
  {
    key: 'combinationNeedsAcceptance',
    title: 'Several open items at once',
    about: 'Whether a named person must accept the combination of open items.',
    takes: { kind: 'yes-no' },
    valueIn: everywhere({
      value: true,
      source: 'FAA Order 8900.1 4-692 and ORO.MLR.105: the interaction of several inoperative items is considered',
      mark: 'DERIVED',
    }),
  },
  {
    key: 'budget',
    title: 'Steps of one answer',
    about: 'After so many search nodes an answer says that it was given up.',
    takes: { kind: 'whole', least: 1000, most: 1_000_000, unit: 'search nodes' },
    valueIn: everywhere({ value: 20_000, source: 'our own: enough for every case measured', mark: 'DERIVED' }),
  },
];
