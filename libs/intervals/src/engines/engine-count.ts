/** What the counters of an engine read at an instant, as a person states it. */
export interface EngineReading {
  /** Where the engine stands: the unit, as the MEL names it. */
  position: string;
  /** Serial number of the engine that stands there then. */
  serial: string;
  readAt: string;
  /** Hours of the engine in whole minutes. */
  minutes: number;
  cycles: number;
}

/** What an engine used and no leg tells: a run on the ground, a start that was broken off. */
export interface EngineRun {
  position: string;
  at: string;
  minutes: number;
  cycles: number;
}

/** What people state of the engines of one aircraft, in any order. */
export interface EngineCounts {
  readings: readonly EngineReading[];
  runs: readonly EngineRun[];
}

export const NO_ENGINE_COUNTS: EngineCounts = { readings: [], runs: [] };
