/**
 * What the oracles are asked: one aircraft, its open defects and one flight, in shapes of their own. No file of this
 * folder imports anything of libs, so that no mistake there can be repeated here; tests/cases/plain-of.ts translates.
 */
export type Scalar = string | number | boolean;

export interface PlainUnits {
  entry: string;
  /** All units of the entry when absent. */
  units?: readonly string[];
}

export interface PlainLeaf {
  /** A fact of the flight by its name, or `entry.up`, `entry.notFailed`, `work.done`, `judgement.accepted`. */
  fact: string;
  operator: string;
  value: Scalar | readonly (string | number)[];
  params?: { entry?: string; units?: readonly string[]; work?: string; judgement?: string };
}
export type PlainCondition =
  { all: readonly PlainCondition[] } | { any: readonly PlainCondition[] } | { not: PlainCondition } | PlainLeaf;

export interface PlainRow {
  id: string;
  numberRequired: number;
  covers?: readonly string[];
  /** Present where its text is not held whole. */
  incomplete?: string;
  provisos?: readonly { id: string; when: PlainCondition }[];
  needsDown?: readonly PlainUnits[];
  consideredInoperative?: readonly PlainUnits[];
  notes?: readonly { lost?: readonly PlainUnits[] }[];
  judgements?: readonly { id: string }[];
  procedures?: readonly { id: string; minutes?: number }[];
  placard?: object;
}

export interface PlainSub {
  id: string;
  units: readonly string[];
  rows: readonly PlainRow[];
}

export interface PlainEntry {
  number: string;
  /** One for each configuration; the aircraft has one of them. */
  subEntries: readonly PlainSub[];
}

export interface PlainDefect {
  id: string;
  entry: string;
  /** Several when it is of one of these. */
  units: readonly string[];
  row: string | null;
  signed: boolean;
}

export interface PlainWork {
  work: string;
  defect?: string;
  doneAt?: string;
  /** Absent means yes; null means that nobody knows. */
  possible?: boolean | null;
}

export interface PlainCase {
  entries: readonly PlainEntry[];
  /** The sub-entry fitted, where an entry has several; null when not known. */
  fitted: string | null;
  defects: readonly PlainDefect[];
  /** Present when each defect stays under its row; otherwise all rows of its entry may be chosen. */
  isRowFixed?: true;
  /** By name; null or absent when not known. */
  facts: Readonly<Record<string, Scalar | null>>;
  work: readonly PlainWork[];
  judgements: readonly { judgement: string; accepted: boolean }[];
  /** Directives that need an entry to work. */
  directives: readonly { number: string; entry: string }[];
  /** Write-ups without an answer that are no open defect. */
  unanswered: number;
  /** Whether somebody must accept the combination of several defects. */
  combinationAsked: boolean;
}

/** 2 may fly, 1 may fly after work, 0 may not fly. */
export type Rank = 0 | 1 | 2;
