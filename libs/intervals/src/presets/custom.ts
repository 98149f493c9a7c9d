import type { Preset, Sourced } from './preset.js';

const strict = <T>(value: T): Sourced<T> => ({
  value,
  source: 'no regime: the strictest there is, until the operator records a value of its own',
  mark: 'DERIVED',
});

/** For an operator under none of the regimes: nothing is allowed that it did not settle itself. */
export const CUSTOM: Preset = {
  name: 'custom',
  countsFrom: strict('record'),
  expiryInFlight: strict('arrival-inside'),
  hourClock: strict('block'),
  hoursCountedAt: strict('arrival'),
  rampReturnMakesFlightDay: strict(true),
  flightDay: strict('calendar-day'),
  equalityAtLimit: strict('outside'),
  designatedStations: strict(null),
  bases: strict(null),
  opportunityMinutes: strict(0),
  melStops: {
    value: 'not-settled',
    source: "no regime: the operator's approved MEL says it, until it is settled here",
    mark: 'COMMON PRACTICE',
  },
  extension: {
    categories: strict([]),
    times: strict(1),
    longest: strict('own-interval'),
    notice: strict({ hours: 24 }),
    needsAgreement: strict(true),
    paragraph: "the operator's own approved procedure",
  },
};
