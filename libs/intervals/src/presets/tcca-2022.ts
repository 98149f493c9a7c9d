import { EVERY_REGIME } from './every-regime.js';
import type { Preset } from './preset.js';
import { TCCA_2006 } from './tcca-2006.js';

/** Transport Canada after its 2022 alert: one extension, in some cases, justified and agreed. Never mixed with 2006. */
export const TCCA_2022: Preset = {
  name: 'tcca-2022',
  ...EVERY_REGIME,
  countsFrom: TCCA_2006.countsFrom,
  melStops: TCCA_2006.melStops,
  extension: {
    categories: {
      value: ['B', 'C', 'D'],
      source: 'the 2022 alert says "in some cases"; which, the authority settles when it agrees',
      mark: 'DERIVED',
    },
    times: { value: 1, source: 'Transport Canada alert of 2022', mark: 'SEEN' },
    longest: {
      value: 'own-interval',
      source: 'taken from the other regimes; the alert was not read for this',
      mark: 'DERIVED',
    },
    notice: {
      value: null,
      source: 'the authority agrees beforehand, so there is nothing to tell afterwards',
      mark: 'DERIVED',
    },
    needsAgreement: { value: true, source: 'Transport Canada alert of 2022: justified and agreed', mark: 'SEEN' },
    paragraph: 'Transport Canada alert of 2022 on extensions of rectification intervals',
  },
};
