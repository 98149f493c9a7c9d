import { choiceOf, keptSetting } from './kept-settings.js';
import { everywhere, type Setting } from './setting.js';

/** `QOF=QO`: the code that flight plans use, and the one that movement messages use. */
const AIRLINE_PAIR = /^[A-Z0-9]{2,3}=[A-Z0-9]{2,3}$/;

/** What flights count as, and how they are told apart. */
export const FLIGHT_SETTINGS: readonly Setting[] = [
  {
    key: 'airlineCodes',
    title: 'Airline codes',
    about: 'Which codes of an airline in movement messages and in the plan mean the same, written QOF=QO.',
    takes: { kind: 'codes', what: 'pairs of codes', example: 'QOF=QO', pattern: AIRLINE_PAIR },
    valueIn: everywhere({
      value: null,
      source:
        'IATA AHM 780: a flight is named by two characters, by some carriers by three letters; which, they know',
      mark: 'SEEN-2',
    }),
  },
  keptSetting({
    key: 'rejectedTakeOffCounts',
    title: 'Rejected take-off',
    about: 'What a take-off run that was given up counts as.',
    takes: choiceOf(['as-taxi-return', 'like a return to the ramp'], ['as-flight', 'like a flight']),
    kept: 'A movement message tells it as a return to the ramp, and it is counted like one in any case.',
    values: ['as-taxi-return', 'IATA AHM 780: it never was airborne, so block time, no hours and no cycle', 'SEEN'],
  }),
  keptSetting({
    key: 'touchAndGoCounts',
    title: 'Touch-and-go',
    about: 'What a landing with a take-off at once counts as.',
    takes: choiceOf(['landing', 'one more landing'], ['landing-and-cycle', 'one more landing and cycle']),
    kept: 'No movement message tells of one; a person enters the landings and the cycles of that leg apart.',
    values: ['landing', 'counting is specific to the type, so landings are kept apart from cycles', 'FROM MEMORY'],
  }),
  keptSetting({
    key: 'diversionCounts',
    title: 'Diversion',
    about: 'What a flight that landed elsewhere and went on counts as.',
    takes: choiceOf(['each-leg', 'each leg is a flight'], ['one-flight', 'one flight in all']),
    kept: 'Each leg that left the ground is counted as a flight in any case.',
    values: ['each-leg', 'a flight ends where the aircraft lands; the next take-off begins another', 'DERIVED'],
  }),
  keptSetting({
    key: 'checkFlightCounts',
    title: 'Check flight',
    about: 'Whether a flight to check the aircraft counts towards intervals.',
    takes: { kind: 'yes-no' },
    kept: 'Every leg that left the ground is counted in any case, whatever it was flown for.',
    values: [true, 'no text leaves it out of what an interval counts; the stricter way', 'DERIVED'],
  }),
  keptSetting({
    key: 'etopsEquality',
    title: 'ETOPS equality',
    about: 'Whether a flight of exactly the minutes that a row names may be flown.',
    takes: choiceOf(['inside', 'exactly as many minutes are allowed'], ['outside', 'they are not']),
    kept: 'It acts where the condition of the row is written: at most 120 minutes allows 120.',
    values: ['inside', '14 CFR 121 Appendix P, edition of 1 January 2019: up to 120 minutes', 'SEEN'],
  }),
  keptSetting({
    key: 'nightSource',
    title: 'Night',
    about: 'What makes a flight one at night.',
    takes: choiceOf(
      ['civil-twilight', 'from the end of evening to the beginning of morning civil twilight'],
      ['sunset', 'from sunset to sunrise'],
    ),
    kept: 'Whether a flight is at night is a fact that the dispatcher or the commander answers by this definition.',
    values: ['civil-twilight', 'MMEL Policy Letter 25, definition of night', 'SEEN-Q'],
  }),
  keptSetting({
    key: 'delayThreshold',
    title: 'Delay',
    about: 'From how many minutes on a departure counts as delayed.',
    takes: { kind: 'whole', least: 0, most: 180, unit: 'minutes' },
    kept: 'It acts where the reliability of departures is counted.',
    values: [15, 'dispatch reliability is usually taken within 15 minutes of schedule; some take 1 or 0', 'SEEN-2'],
  }),
];
