/** When an aircraft stood still: from a write-up until its answer, and while work on it was open. 14 CFR 121.563. */
import { instantOf, type SeedFlight } from './planned-flights.js';
import type { Seed, SeedAct } from './seed-files.js';

/** A time in which an aircraft may not fly; it has no end while nothing ends it. */
export interface Grounded {
  /** Mark of the aircraft. */
  aircraft: string;
  from: string;
  until: string | null;
}

const BEGINS: readonly SeedAct['act'][] = ['written-up', 'rectification'];
const ENDS: readonly SeedAct['act'][] = ['deferred', 'released'];

export function groundedIn(seed: Seed, dayZero: string): Grounded[] {
  return seed.openItems.aircraft.flatMap(({ mark, items }) =>
    items.flatMap(({ acts }) =>
      acts.flatMap((act, index) => {
        if (!BEGINS.includes(act.act)) return [];
        const end = acts.slice(index + 1).find((later) => ENDS.includes(later.act));
        const until = end ? instantOf(end.at, dayZero, seed) : null;
        return [{ aircraft: mark, from: instantOf(act.at, dayZero, seed), until }];
      }),
    ),
  );
}

/** True when the aircraft stood still at off-block. */
export function isGrounded(times: readonly Grounded[], { aircraft, offBlockAt }: SeedFlight): boolean {
  const off = Date.parse(offBlockAt);
  return times.some(
    (one) =>
      one.aircraft === aircraft && Date.parse(one.from) <= off && (one.until === null || off < Date.parse(one.until)),
  );
}
