/**
 * What a swap is made of. The unit that changes hands is a whole rotation: all that is still planned for one aircraft,
 * from the station where it stands. An aircraft may take a rotation over when it stands at that station too and is ready
 * before the first flight leaves; a rotation is never cut on the way.
 */
import type { VerdictCode } from '../verdict.js';

export interface SwapFlight {
  id: string;
  from: string;
  to: string;
  /** Planned off-block, ISO 8601 with offset. */
  offBlockAt: string;
  /** The aircraft that operations allow on it; absent when operations have not said. */
  allowed?: readonly string[];
}

/** Flights in the order in which they are flown, and the aircraft that was planned for them. */
export interface Rotation {
  id: string;
  planned: string;
  flights: readonly SwapFlight[];
}

/** Where an aircraft stands, and from when it can leave. An aircraft without a rotation is a spare. */
export interface StandingAircraft {
  id: string;
  at: string;
  /** ISO 8601 with offset. */
  readyAt: string;
}

/** What the reasoner says of one aircraft on one flight, with the minutes of work still outstanding before that flight. */
export interface SwapAnswer {
  aircraft: string;
  flight: string;
  verdict: VerdictCode;
  /** Null when the MEL gives no figure for some of the work. */
  minutes: number | null;
  because: string;
}

export interface SwapQuestion {
  aircraft: readonly StandingAircraft[];
  rotations: readonly Rotation[];
  /** An aircraft and flight without an answer count as not settled. */
  answers: readonly SwapAnswer[];
}

export interface SwapAssignment {
  rotation: string;
  planned: string;
  aircraft: string;
  flights: string[];
  /** Outstanding before these flights; null when some of it has no figure. */
  minutes: number | null;
}

/** A flight that nobody can fly beside the others named, with the reason of each aircraft that cannot. */
export interface UncoveredFlight {
  flight: string;
  because: string[];
  /** Aircraft that could fly it alone, but are needed for the others. */
  couldBe: string[];
}

export type SwapProposal =
  | { answer: 'not-offered'; because: string; flights: string[] }
  | {
      answer: 'proposed';
      assignments: SwapAssignment[];
      /** Flights flown by another aircraft than planned. */
      changedFlights: number;
      /** All outstanding work of the assignment that has a figure. */
      minutes: number;
      /** Flights before which some work has no figure. */
      withoutFigure: number;
    }
  | { answer: 'impossible'; because: string; flights: UncoveredFlight[] };
