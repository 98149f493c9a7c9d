/**
 * Where the MEL stops: what holds for the very flight on which something was found (published checks D-05 and D-06).
 *
 * On the way to the take-off the regimes differ, so the operator's setting says it. What fails after the take-off is for
 * the manual and not for the MEL (14 CFR 121.627(b)); it is answered before the next departure (14 CFR 121.563). A later
 * flight is another matter: an unanswered item keeps it on the ground whatever is said here.
 */
import type { MelStops, Sourced, ValueMark } from '#intervals';
import type { WhenFound } from '../acts.js';

export interface OnItsFlight {
  holds: 'mel-applies' | 'decide-before-take-off' | 'commander-judges' | 'no-relief' | 'not-known';
  words: string;
  source: string;
  mark: ValueMark;
}

/** Null while nobody has said when it was found. */
export function onItsFlight(whenFound: WhenFound | null, stops: Sourced<MelStops>): OnItsFlight | null {
  switch (whenFound) {
    case null:
      return null;
    case 'before-moving':
      return BEFORE_MOVING;
    case 'own-power':
      return { ...ON_THE_WAY[stops.value], source: stops.source, mark: stops.mark };
    case 'after-take-off':
      return AFTER_TAKE_OFF;
  }
}

const BEFORE_MOVING: OnItsFlight = {
  holds: 'mel-applies',
  words: 'Found before the aircraft moved: the MEL applies to this flight in full.',
  source: '14 CFR 121.628 and ORO.MLR.105: no flight begins with an inoperative item but under the MEL',
  mark: 'FROM MEMORY',
};

const ON_THE_WAY: Record<MelStops, Pick<OnItsFlight, 'holds' | 'words'>> = {
  'take-off-power': {
    holds: 'decide-before-take-off',
    words:
      'Found on the way to the take-off: the MEL still applies, and a decision under it is needed before take-off.',
  },
  'commencement-of-flight': {
    holds: 'commander-judges',
    words:
      'Found on the way to the take-off: whether this flight goes on is for the commander to judge, who may consult the MEL.',
  },
  'not-settled': {
    holds: 'not-known',
    words:
      'Found on the way to the take-off: whether the MEL still applies is not known here. Look it up in the approved MEL before take-off.',
  },
};

const AFTER_TAKE_OFF: OnItsFlight = {
  holds: 'no-relief',
  words:
    'Found after take-off: the MEL gives no relief for that flight; the flight manual and the procedures of the operator are followed. Deal with it before the next departure.',
  source: '14 CFR 121.627(b) and 121.563: en route the manual, and an answer before the next flight',
  mark: 'SEEN-Q',
};
