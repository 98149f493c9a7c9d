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
  /** Stations left and reached, as the operator writes them, null when nobody told; needed where a row ends by station. */
  from?: string | null;
  to?: string | null;
  /** By position; an engine that is not named ran with the aircraft: its minutes and cycles are those of the leg. */
  engines?: Readonly<Record<string, EngineUse>>;
  /** Engines ran and the aircraft did not move: no departure, no flight-day, no use of an engine that is not named. */
  onlyEngines?: true;
}

/** What a leg used of one engine. A start that led to no flight can be a cycle of the engine and none of the aircraft. */
export interface EngineUse {
  minutes: number;
  cycles: number;
}

/** A leg counts as a flight once the aircraft left the ground on it. */
export function hasFlown(leg: Leg): boolean {
  return leg.airborneAt !== undefined || leg.flightMinutes > 0 || leg.cycles > 0;
}
