/**
 * Everything that one answer is computed from: one aircraft, one flight, one instant.
 *
 * A situation is made by the server from its tables, or read from a case file. It holds no rule: it only says what is
 * known. What it does not say is unknown, and unknown is never yes.
 */
import type { GrantTerms } from '#deferrals';
import type { CountingSettings, RectificationClock, Used } from '#intervals';
import type { Proviso, Role } from '#mel';

export type { Used };

/** A fact with where it came from. `value: null` means asked for and still unknown. Instants are ISO 8601 with offset. */
export interface KnownFact {
  value: string | number | boolean | null;
  source?: string;
  by?: string;
  observedAt?: string;
  validUntil?: string;
}

export interface AircraftFacts {
  registration: string;
  type: string;
  /** Configuration codes fitted; null when not known. */
  configuration: string[] | null;
  serial: number | null;
}

/** One open defect as it stands on the aircraft. */
export interface OpenDefect {
  id: string;
  /** MEL entry number; null for a write-up that nobody has matched to an entry, or that stands on another basis. */
  entry: string | null;
  /** The failed unit, or several names when it is one of these and nobody knows which. */
  units: string[];
  /** The row recorded for it, or proposed for it when `signed` is false; null when none is chosen. */
  row: string | null;
  /** True when this row is the one signed for this unit. */
  signed: boolean;
  /** Somebody asks about this row alone: no other is proposed instead. */
  rowAsked?: boolean;
  /** The row signed for this unit, where `row` is proposed to replace it. Its interval still binds. */
  insteadOf?: string;
  /** Estimated minutes to rectify it; absent means that nobody has said. */
  rectifyMinutes?: number;
  /** When it was written in the log: ISO 8601, with offset, or local to the base. */
  recordedAt: string;
  /** Where the stored legal deadline is known it is used instead of computing it anew. */
  deadline?: { lastDay?: string; endsAt?: string; tzdb?: string };
  used?: Used;
  /** Counted limits of rows signed before the one in force. They bind as long as nothing has let them go. */
  formerLimits?: FormerLimit[];
  /** What authorities allow beyond the deadline. They move no deadline; each carries the flights it covers and no other. */
  grants?: GrantInForce[];
  /** A basis other than an MEL row brings its own limits as conditions of the same shape. */
  basis?: OtherBasis;
}

/** `pair` is true where the row relieved several units at once: its limit goes with its cause. */
export interface FormerLimit {
  clock: RectificationClock;
  pair: boolean;
}

/** A document of an authority, and how many of its flights are used; absent means not known. */
export interface GrantInForce extends GrantTerms {
  flightsUsed?: number;
}

export interface OtherBasis {
  kind: 'cdl' | 'nef' | 'approved-data' | 'design-approval' | 'permit' | 'authority-document';
  reference: string;
  limit: string;
  /** The interval it gives, counted from the record; absent when it gives none. */
  interval?: string;
  conditions: Proviso[];
}

/** One planned flight. */
export interface PlannedFlight {
  id: string;
  number?: string;
  from: string;
  to: string;
  /** Planned off-block and on-block, ISO 8601 with offset. */
  offBlockAt: string;
  onBlockAt?: string;
  /** Airborne minutes planned; used for hour limits counted at arrival. */
  flightMinutes?: number;
  /** Block minutes planned, for operators whose hours are block hours. */
  blockMinutes?: number;
  facts?: Record<string, KnownFact | string | number | boolean | null>;
}

/** A procedure, placard or repeat that was done and signed, or that was found possible or impossible before the flight. */
export interface WorkState {
  /** `<entry>/<row>/<procedure id>` or `<entry>/<row>/placard`. */
  work: string;
  defect?: string;
  doneAt?: string;
  by?: string;
  /** Still valid for this flight until; absent means as long as the row says. */
  validUntil?: string;
  /** The flight it was signed for, where it is owed for each departure. */
  forFlight?: string;
  /** What was flown since it was done, for work owed again after so many hours, flights or cycles. */
  usedSince?: Used;
  /** Can it be done before this flight? Absent means yes; null means nobody knows. */
  possible?: boolean | null;
  because?: string;
}

/** A named person's recorded answer to a question that only a person can settle. */
export interface RecordedJudgement {
  /** `<entry>/<row>/<judgement id>`, or `combination`. */
  judgement: string;
  accepted: boolean;
  by: string;
  role: Role;
  at: string;
  validUntil?: string;
  forFlight?: string;
  /** What it was given on; absent: whatever is open and flown. */
  givenOn?: GivenOn;
}

/** The open items and flights that a person looked at. A fact that was not known then is not among the facts. */
export interface GivenOn {
  items: { defect: string; row: string | null }[];
  /** Empty: any flight. */
  flights: { from: string; to: string; facts: Record<string, string | number | boolean> }[];
}

/** An airworthiness directive that needs an item to work. */
export interface Directive {
  number: string;
  entry: string;
  units?: string[];
}

/** Conditions of the whole aircraft, outside any one row. */
export interface Gates {
  /** Write-ups without an answer: ids or short descriptions. */
  unanswered: string[];
  /** Work opened since the last release and not yet released. */
  openWork: string[];
  /** Things left altered on the aircraft that no open item, modification, directive or permit owns. */
  orphans: string[];
}

export interface JudgeSettings {
  /** UTC or one IANA zone. */
  base: string;
  expiryInFlight: 'departure-inside' | 'arrival-inside';
  /** Whether a named person must accept the combination of open items. */
  combinationNeedsAcceptance: boolean;
  /** Search nodes, never time. */
  budget: number;
  /**
   * From when a row counts that allows more than one unit down: the record of the last unit (default), or of the first.
   * All other rows count from the record of their own unit.
   */
  pairCountsFrom?: 'last-record' | 'first-record';
  /**
   * Whether a changed row stays inside the interval of the row signed before (default), or is counted by its own
   * alone, from the record of the defect.
   */
  changeOfRow?: 'keep-earliest' | 'own-window';
  /** What else the operator settled about counting hours; the preset's own values when absent. */
  counting?: Partial<Omit<CountingSettings, 'expiryInFlight'>>;
}

export interface Situation {
  at: string;
  tzdb: string;
  aircraft: AircraftFacts;
  defects: OpenDefect[];
  flight: PlannedFlight | null;
  /** By fact key: `flight.icing`, or `flight.minimaNeed[22-10-01]` for a fact about one system. */
  facts: Record<string, KnownFact>;
  work: WorkState[];
  judgements: RecordedJudgement[];
  directives: Directive[];
  gates: Gates;
  settings: JudgeSettings;
}
