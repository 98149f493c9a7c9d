import { EVERY_REGIME } from './every-regime.js';
import type { Preset } from './preset.js';

/** (EU) 965/2012 ORO.MLR.105; UK rules are the same text. */
export const EASA: Preset = {
  name: 'easa',
  ...EVERY_REGIME,
  countsFrom: {
    value: 'deferral',
    source:
      'CS-MMEL generic text: a category A period in anything but calendar days starts at the moment of deferral',
    mark: 'SEEN-2',
  },
  melStops: {
    value: 'commencement-of-flight',
    source:
      'European guidance on how far an MEL goes: between the commencement of flight and take-off the commander judges and may consult it (AMC1 ORO.MLR.105(d)(3), its number from memory)',
    mark: 'SEEN',
  },
  extension: {
    categories: { value: ['B', 'C', 'D'], source: 'ORO.MLR.105(f)', mark: 'SEEN' },
    times: { value: 1, source: 'ORO.MLR.105(f)', mark: 'SEEN' },
    longest: {
      value: 'own-interval',
      source: 'ORO.MLR.105(f): at most the interval of the list itself',
      mark: 'SEEN',
    },
    notice: {
      value: { months: 1 },
      source: 'one month unless the approved procedure says otherwise; UK practice is 10 days (SEEN-2)',
      mark: 'FROM MEMORY',
    },
    needsAgreement: { value: false, source: 'granted by the operator under its approved procedure', mark: 'SEEN' },
    paragraph: 'ORO.MLR.105(f)',
  },
};
