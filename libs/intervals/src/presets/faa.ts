import { EVERY_REGIME } from './every-regime.js';
import type { Preset } from './preset.js';

/** FAA Order 8900.1 Vol 4 Ch 4 Sec 3 and operations specification D095. */
export const FAA: Preset = {
  name: 'faa',
  ...EVERY_REGIME,
  countsFrom: {
    value: 'deferral',
    source: 'MMEL Policy Letter 25 Rev 24, repair category A: flights count from the deferral, no day is excluded',
    mark: 'SEEN-Q',
  },
  melStops: {
    value: 'take-off-power',
    source: 'FAA guidance as quoted: the MEL applies until take-off power is set; the paragraph is not held',
    mark: 'SEEN-Q',
  },
  extension: {
    categories: {
      value: ['B', 'C'],
      source: 'operations specification D095; category D is not named',
      mark: 'SEEN-Q',
    },
    times: { value: 1, source: 'FAA Order 8900.1 Vol 4 Ch 4, 4-689B', mark: 'SEEN-Q' },
    longest: { value: 'own-interval', source: 'FAA Order 8900.1 Vol 4 Ch 4, 4-689B', mark: 'SEEN-Q' },
    notice: { value: { hours: 24 }, source: 'operations specification D095: told within 24 hours', mark: 'SEEN-Q' },
    needsAgreement: { value: false, source: 'continuing authorization of D095', mark: 'SEEN-Q' },
    paragraph: 'FAA Order 8900.1 Vol 4 Ch 4, 4-689B; operations specification D095',
  },
};
