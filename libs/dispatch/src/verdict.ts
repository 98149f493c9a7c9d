/**
 * The answer: may this aircraft fly this flight, and why.
 *
 * A verdict is made once, by the rules engine, from one situation. It carries everything it rests on, so that it can be
 * read, questioned and recorded without asking the program again. It dies at `validUntil`, or when anything it rests on
 * changes.
 */
import type { Role } from '#mel';

/** False, unknown, true. */
export type Truth = 'F' | 'U' | 'T';

/** Two readings of one condition: as things are now, and after the work that can be done before the flight. */
export interface NowAfter {
  now: Truth;
  after: Truth;
}

export type VerdictCode = 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';

/** The words for a code on pages and in the command. */
export const VERDICT_WORDS: Record<VerdictCode, string> = {
  'nothing-open': 'nothing open',
  'may-fly': 'may fly',
  'after-work': 'may fly after work',
  'not-settled': 'not settled',
  'may-not-fly': 'may not fly',
};

/** A node of an explained condition tree; leaves carry the fact they used. */
export interface ExplainedNode extends NowAfter {
  node: 'all' | 'any' | 'not' | 'leaf';
  text: string;
  children?: ExplainedNode[];
  /** Leaf only. */
  fact?: string;
  operator?: string;
  expected?: unknown;
  actual?: unknown;
  known?: boolean;
  /** Why a leaf's value is not known, or was not used. */
  because?: string;
  source?: string;
  observedAt?: string;
  validUntil?: string;
  /** Whole minutes since it was observed, at the instant of the answer. */
  ageMinutes?: number;
  /** How long it holds, where it names no end: for this flight, or until something is changed. */
  validFor?: string;
  /** Who may answer, when unknown. */
  mayAnswer?: Role[];
  question?: string;
}

export type ConditionKind =
  | 'covers'
  | 'number-required'
  | 'configuration'
  | 'directive'
  | 'interval'
  | 'proviso'
  | 'procedure'
  | 'placard'
  | 'judgement'
  | 'needs-down'
  | 'text-complete'
  | 'signed-row'
  | 'recorded-basis';

/** One condition of a row and its answer. */
export interface ConditionAnswer extends NowAfter {
  kind: ConditionKind;
  /** e.g. `32-42-01/1/a` */
  id: string;
  text: string;
  /** One sentence: why it holds, fails or is not known. */
  because: string;
  tree?: ExplainedNode;
  /** The document of an authority without which it would not hold: "permit PF-12". */
  onlyUnder?: string;
}

/** Why a unit is down. */
export type Cause =
  | { kind: 'failed'; defect: string }
  | { kind: 'considered-inoperative'; by: { entry: string; unit: string; row: string } };

/** One unit that is down, under one row, with every condition of that row. */
export interface ItemAnswer extends NowAfter {
  entry: string;
  title: string;
  unit: string;
  /** True when it is only one of several units that may be the failed one. */
  perhaps: boolean;
  cause: Cause;
  row: string | null;
  conditions: ConditionAnswer[];
}

export interface GateAnswer extends NowAfter {
  gate: 'unanswered-write-up' | 'open-work' | 'left-on-the-aircraft' | 'combination';
  text: string;
  because: string;
  /** Of the combination: what was found about the items together, for the person who judges it. */
  found?: string[];
}

export interface WorkToDo {
  work: string;
  text: string;
  minutes: number | null;
  by: Role;
  needsPersonAtStation: boolean;
  defect?: string;
}

/** A piece of work in the order in which it can be done. */
export interface WorkStep extends WorkToDo {
  /** 1, 2, 3 ... */
  step: number;
  /** Steps that must be done before it. */
  needs: number[];
  /** Minutes from now; null once something before it has no figure. */
  startsAfter: number | null;
  endsAfter: number | null;
}

export interface Question {
  fact: string;
  question: string;
  mayAnswer: Role[];
  /** The conditions that wait for it. */
  neededBy: string[];
}

/** A row that was considered and cannot be used, with what refuses it. */
export interface RefusedRow {
  entry: string;
  unit: string;
  row: string;
  because: string[];
}

export interface Verdict {
  verdict: VerdictCode;
  /** The words for the code; where it may fly only under documents of an authority, they are named. */
  words: string;
  /** Documents of authorities without which it may not fly this flight: "permit PF-12". */
  onlyUnder: string[];
  lo: 'may-fly' | 'after-work' | 'may-not-fly';
  hi: 'may-fly' | 'after-work' | 'may-not-fly';
  /**
   * Why the search ended early: its budget of steps, or too many readings of what is open. None found within it is
   * `not-settled`, never a no; one found keeps its answer, though a better one may exist.
   */
  reason: 'budget' | 'readings' | null;
  at: string;
  aircraft: string;
  flight: string | null;
  mel: { document: string; revision: string } | null;
  items: ItemAnswer[];
  gates: GateAnswer[];
  /** Sentences in plain words, the deciding ones first. */
  reasons: string[];
  refusedRows: RefusedRow[];
  /** Outstanding work, each step after those that it waits for. */
  work: WorkStep[];
  /** All of it one after another, as one person would; null when the MEL gives no figure for some of it. */
  workMinutes: number | null;
  /**
   * The instant from which the flight could leave when the work is begun now and different roles work side by side,
   * ISO 8601 UTC; null when not computable.
   */
  earliestOffBlockAt: string | null;
  /** How long after the planned off-block that is, in whole minutes; null when not computable. */
  lateMinutes: number | null;
  questions: Question[];
  validUntil: { at: string; because: string } | null;
  notLookedAt: string[];
  evaluator: 'json-rules-engine';
}
