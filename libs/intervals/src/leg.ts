/**
 * One leg as it was flown, or begun. It starts when the aircraft leaves the blocks and gets its later times as they
 * become known; it is corrected, never dropped, when a message turns out wrong.
 *
 * Instants are ISO 8601 with `Z` or an offset. Minutes are integers. A return to the ramp has block minutes but no
 * flight minutes, no cycle and no landing.
 */
export interface Leg {
  offBlockAt: string;
  airborneAt?: string;
  landedAt?: string;
  onBlockAt?: string;
  blockMinutes: number;
  flightMinutes: number;
  cycles: number;
  landings: number;
}

/** A leg counts as a flight once the aircraft left the ground on it. */
export function hasFlown(leg: Leg): boolean {
  return leg.airborneAt !== undefined || leg.flightMinutes > 0 || leg.cycles > 0;
}
