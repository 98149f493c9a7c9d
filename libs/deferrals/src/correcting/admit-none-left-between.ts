/**
 * When work was done is not corrected across a departure: what left meanwhile left without it, and what was missed stays
 * missed. Signed so at first it would have wanted a reason why it is late; see admit-late-work.ts. ORO.MLR.105; M.A.305.
 */
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';
import type { Departure } from '../repeating/obligation.js';
import type { CorrectionSaid } from './admit-correction.js';

type Moved = Pick<CorrectionSaid, 'was' | 'now'>;

/**
 * Throws Refusal `correction-over-a-departure`.
 *
 * @param flown departures known to have flown from the corrected time on; undefined where nobody looked, which is no none
 */
export function admitNoneLeftBetween({ was, now }: Moved, flown: readonly Departure[] | undefined): void {
  const left = flown?.filter(({ leg: { offBlockAt } }) => !before(offBlockAt, now) && before(offBlockAt, was ?? now));
  if (left?.length === 0) return;
  const departures = left?.map(inWords) ?? ['nobody looked which departures'];
  throw new Refusal('correction-over-a-departure', { was: was ?? 'not said', now, departures });
}

function inWords({ from, leg }: Departure): string {
  return `from ${from ?? 'a station that is not known'} at ${leg.offBlockAt}`;
}
