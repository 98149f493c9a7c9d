import { EVERY_REGIME } from './every-regime.js';
import type { Preset } from './preset.js';

/** Transport Canada TP 9155 as of 2006: the operator extends by itself and tells the inspector. Never mixed with 2022. */
export const TCCA_2006: Preset = {
  name: 'tcca-2006',
  ...EVERY_REGIME,
  countsFrom: {
    value: 'next-flight',
    source: 'Transport Canada MMEL text, ATA 78: cycles and flight time start with the next flight',
    mark: 'SEEN',
  },
  melStops: {
    value: 'not-settled',
    source: "no Canadian text was read for this: the operator's approved MEL says it, until it is settled here",
    mark: 'COMMON PRACTICE',
  },
  extension: {
    categories: {
      value: ['B', 'C', 'D'],
      source:
        'TP 9155 (2006); it names category A too, which this product refuses to the operator under every preset',
      mark: 'SEEN',
    },
    times: { value: null, source: 'TP 9155 (2006) sets no number; each one needs its own notice', mark: 'DERIVED' },
    longest: {
      value: 'own-interval',
      source: 'taken from the other regimes; the 2006 text was not read for this',
      mark: 'DERIVED',
    },
    notice: {
      value: { workingDays: 1 },
      source: 'TP 9155 (2006): the inspector is told within one working day',
      mark: 'SEEN',
    },
    needsAgreement: { value: false, source: 'TP 9155 (2006): extended by the operator itself', mark: 'SEEN' },
    paragraph: 'Transport Canada TP 9155 (2006)',
  },
};
