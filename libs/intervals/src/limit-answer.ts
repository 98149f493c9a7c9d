import type { Limit } from './interval-text.js';

/** What one limit says to one planned flight. `unknown` carries what would settle it; unknown is never yes. */
export interface LimitAnswer {
  limit: Limit;
  answer: 'holds' | 'fails' | 'unknown';
  /** The arithmetic, in one sentence. */
  because: string;
}

/** The flight that asks to depart. Instants are ISO 8601 with `Z` or an offset, minutes are integers. */
export interface PlannedLeg {
  offBlockAt: string;
  onBlockAt?: string;
  flightMinutes?: number;
  blockMinutes?: number;
  /** Default 1. */
  cycles?: number;
  /** Station it leaves; null when nobody told. */
  from?: string | null;
  /** Of the engine that the interval is about; default those of the aircraft. */
  engineMinutes?: number;
  engineCycles?: number;
}
