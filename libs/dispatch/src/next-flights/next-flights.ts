/**
 * What is said of the flights that an aircraft is planned to fly, one after another (rules 8 and 9).
 *
 * Each flight is judged as if all before it were flown as planned, with the work done that they owed. It begins with a
 * plan and what is known now, and dies with either.
 */
import type { PlannedFlight } from '../situation.js';
import type { NowAfter, Truth, Verdict, VerdictCode } from '../verdict.js';

/**
 * What is known of a station in the plan, always or between two instants. A station that is not named has what the facts
 * of each flight say. Where several hold at a departure, somebody who is there counts before nobody.
 */
export interface StationFacts {
  station: string;
  /** Whether somebody authorised and equipped is there to do and sign maintenance; null when nobody knows. */
  maintenance: boolean | null;
  /** ISO 8601; absent: since ever. */
  from?: string;
  /** Exclusive; absent: standing. */
  until?: string;
  /** Where this is known from: "Wick Straddock, roster of day 3". */
  source?: string;
}

/** Names of stations by their code, for what people read. */
export type StationNames = ReadonlyMap<string, string>;

export interface NextFlightsOptions {
  stations?: readonly StationFacts[];
  stationNames?: StationNames;
  /** `recorded` (default) keeps the rows of the situation; `any` looks for the best rows for the whole plan. */
  rows?: 'recorded' | 'any';
  /** Search nodes for the plan; the situation's own budget when absent. */
  budget?: number;
  /** Search nodes for what would save the plan. */
  savingBudget?: number;
}

/** One counted limit, or the end, of one open defect at the departure of a flight. */
export interface LeftOfDefect {
  defect: string;
  entry: string | null;
  row: string | null;
  /** Exclusive end, where one is known. */
  endsAt: string | null;
  /** What is left in one sentence, and limit by limit. `left` is null where the counter is not known. */
  sentence: string;
  limits: { text: string; countedIn: string; left: number | null }[];
}

/** Work that is owed again and again, and is owed before this flight. */
export interface RepeatOwed {
  work: string;
  text: string;
  defect: string | null;
  because: string;
  /** Where the aircraft stands before the flight, from when and until when. */
  station: string;
  from: string;
  until: string;
  /** Null when the MEL gives no figure. */
  minutes: number | null;
  /** Whether it fits between the flights; null when there is no figure. */
  fits: boolean | null;
  /** Whether somebody can do it there. */
  possible: Truth;
}

/** A condition that this flight answers otherwise than the flight before, as things are or after work. */
export interface Changed {
  id: string;
  /** The item it is about, in words; null for the whole aircraft. */
  about: string | null;
  was: NowAfter | null;
  is: NowAfter | null;
  because: string;
  /** The condition with its reason, in one sentence. */
  says: string;
}

export interface NextFlight {
  flight: PlannedFlight;
  verdict: Verdict;
  /** The flight that has to be flown after all for this answer to matter; null up to the first that breaks. */
  ifFlown: string | null;
  /** Minutes on the ground before it, whole, never below 0. */
  groundMinutes: number;
  /** By how much the outstanding work would make it late; null when some work has no figure. */
  lateMinutes: number | null;
  left: LeftOfDefect[];
  repeats: RepeatOwed[];
  changed: Changed[];
}

/** A stop before a flight where something can be done. */
export interface Stop {
  station: string;
  beforeFlight: string;
  groundMinutes: number;
  /** Whether the minutes fit; null when there is no figure. */
  fits: boolean | null;
}

export type SingleKind = 'fix' | 'change-row' | 'do-work' | 'send-person' | 'leave-out';

/** What would let the broken flight leave, with all flights before it. */
export interface Saver {
  /** `several`: changes of different kinds, or of the rows of different defects, that help only together. */
  kind: SingleKind | 'several';
  /** Only of several: each of them. */
  parts?: { kind: SingleKind; words: string }[];
  text: string;
  /** How many changes it is: defects fixed, rows changed, flights left out. */
  size: number;
  minutes: number | null;
  /** Where it can be done, the latest first; empty for flights left out. */
  stops: Stop[];
  defects?: string[];
  row?: string;
  work?: string[];
  flights?: string[];
  /** Leading flights kept with it. */
  keeps: number;
}

/** The first flight that is not known to be kept. */
export interface Break {
  flight: string;
  station: string;
  verdict: VerdictCode;
  because: string[];
}

export interface NextFlights {
  flights: NextFlight[];
  /** Rule 8: leading flights known to be kept under the choice shown. */
  kept: number;
  /** The most leading flights that any choice may keep if the unknown turns out well. */
  possible: number;
  breaks: Break | null;
  savers: Saver[];
  /** False reads "these, perhaps others". */
  saversComplete: boolean;
  /** The rows under which the plan is judged. */
  rows: { entry: string; unit: string; row: string | null; signed: boolean }[];
  /** False when a better choice may exist, since the search was given up. */
  shownBest: boolean;
}
