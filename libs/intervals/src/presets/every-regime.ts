import type { Preset } from './preset.js';

/** What no regime sets otherwise; each preset may. */
export const EVERY_REGIME: Pick<
  Preset,
  | 'expiryInFlight'
  | 'hourClock'
  | 'hoursCountedAt'
  | 'rampReturnMakesFlightDay'
  | 'flightDay'
  | 'equalityAtLimit'
  | 'designatedStations'
  | 'bases'
  | 'opportunityMinutes'
> = {
  expiryInFlight: {
    value: 'departure-inside',
    source: 'operators let a flight that left inside the interval end after it; no text was found',
    mark: 'COMMON PRACTICE',
  },
  hourClock: {
    value: 'airborne',
    source: '14 CFR 1.1, time in service: off the surface until touching it',
    mark: 'SEEN-2',
  },
  hoursCountedAt: {
    value: 'arrival',
    source:
      'worked training exercise on a row of 3 flights or 6 flight-hours; policy letter 45 for time-limited dispatch',
    mark: 'SEEN-Q',
  },
  rampReturnMakesFlightDay: {
    value: false,
    source: 'a flight-day is a day on which a flight is initiated; that a taxi-out alone is none is our reading',
    mark: 'DERIVED',
  },
  flightDay: {
    value: 'calendar-day',
    source: 'MMEL Policy Letter 25, definition of flight-day: a calendar day on which a flight is initiated',
    mark: 'SEEN-Q',
  },
  equalityAtLimit: {
    value: 'inside',
    source: 'a limit of 6 hours is reached, not passed, by 6 h 00 min; no text was found that says otherwise',
    mark: 'DERIVED',
  },
  designatedStations: {
    value: null,
    source: "the operator's own list of stations; until it is settled, a row that asks for it is not known",
    mark: 'DERIVED',
  },
  bases: {
    value: null,
    source: "the operator's own list of bases; until it is settled, a row that asks for it is not known",
    mark: 'DERIVED',
  },
  opportunityMinutes: {
    value: 0,
    source: 'no text says how long; every stay at a base is an opportunity until the operator settles a time',
    mark: 'DERIVED',
  },
};
