import { presetNamed } from './preset-of-choice.js';
import { everywhere, type Setting } from './setting.js';

/** Three letters, or the four of an international code. */
const STATION = /^[A-Z]{3,4}$/;

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
        { value: 'deferral', words: 'from the deferral' },
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
  {
    key: 'flightDay',
    title: 'Flight-day',
    about: 'What a day is on which a flight is initiated.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'calendar-day', words: 'from midnight to midnight of the time base' },
        { value: 'from-first-out', words: '24 hours from the first off-blocks' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).flightDay,
  },
  {
    key: 'equalityAtLimit',
    title: 'Equality at a limit',
    about: 'Whether counted hours may reach their limit to the minute, or must stay below it.',
    takes: {
      kind: 'choice',
      choices: [
        { value: 'inside', words: 'the limit itself is inside' },
        { value: 'outside', words: 'the limit itself is outside' },
      ],
    },
    valueIn: (preset) => presetNamed(preset).equalityAtLimit,
  },
  {
    key: 'designatedStations',
    title: 'Designated stations',
    about: 'Where a row ends that says "before the next departure from a designated station".',
    takes: { kind: 'codes', what: 'stations', example: 'QVR', pattern: STATION },
    valueIn: (preset) => presetNamed(preset).designatedStations,
  },
  {
    key: 'bases',
    title: 'Bases',
    about: 'Where a row ends that says "at the first opportunity at a base".',
    takes: { kind: 'codes', what: 'stations', example: 'QVR', pattern: STATION },
    valueIn: (preset) => presetNamed(preset).bases,
  },
  {
    key: 'opportunityMinutes',
    title: 'Opportunity at a base',
    about: 'How long the aircraft stands at a base until that is an opportunity.',
    takes: { kind: 'whole', least: 0, most: 10_080, unit: 'minutes' },
    valueIn: (preset) => presetNamed(preset).opportunityMinutes,
  },
];
