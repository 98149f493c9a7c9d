import { presetNamed } from './preset-of-choice.js';
import { everywhere, type Setting } from './setting.js';

/** How time and use are counted. */
export const COUNTING_SETTINGS: readonly Setting[] = [
  {
    key: 'timeBase',
    title: 'Time base',
    about: 'Whose midnight begins a calendar day: UTC, or one zone.',
    takes: { kind: 'zone' },
    valueIn: everywhere({
      value: 'UTC',
      source: 'MMEL Policy Letter 25 and CS-MMEL.105(b): one time base, UTC or local, the same for every item',
      mark: 'DERIVED',
    }),
  },
  {
    key: 'countsFrom',
    title: 'Start of counted intervals',
    about: 'From when flights, cycles and hours of a category A interval count.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'record', words: 'from the record of the defect' },
        { value: 'next-flight', words: 'from the next flight' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).countsFrom,
  },
  {
    key: 'hourClock',
    title: 'Flight-hour clock',
    about: 'What a flight hour of an interval is.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'airborne', words: 'off the ground to touch-down' },
        { value: 'block', words: 'off blocks to on blocks' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).hourClock,
  },
  {
    key: 'hoursCountedAt',
    title: 'Hours of the planned flight',
    about: "Whether a flight's own hours must fit into what is left, or only its departure.",
    takes: {
      kind: 'choice',
      choices: [
        { value: 'arrival', words: 'counted at arrival: they must fit' },
        { value: 'departure', words: 'counted at departure: something must be left' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).hoursCountedAt,
  },
  {
    key: 'rampReturnMakesFlightDay',
    title: 'Return to the ramp',
    about: 'Whether an off-blocks that came back to the ramp makes its day a flight-day.',
    takes: { kind: 'yes-no' },
    valueIn: (preset) => presetNamed(preset).rampReturnMakesFlightDay,
  },
  {
    key: 'expiryInFlight',
    title: 'Expiry in flight',
    about: 'Whether a flight must only leave inside the interval, or also arrive inside it.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'departure-inside', words: 'it must leave before the end' },
        { value: 'arrival-inside', words: 'it must be on blocks before the end' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).expiryInFlight,
  },
];
