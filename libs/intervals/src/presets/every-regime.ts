import type { Preset } from './preset.js';

/** What no regime sets otherwise; each preset may. */
export const EVERY_REGIME: Pick<
  Preset,
  'expiryInFlight' | 'hourClock' | 'hoursCountedAt' | 'rampReturnMakesFlightDay'
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
};
