/**
 * The shape of an operator's minimum equipment list (MEL) as Proviso reads it.
 *
 * A file holds one revision for one aircraft type. It begins as the operator's approved text, is put into this shape by
 * a MEL engineer, is checked whole by the loader (a bad file loads nothing), and ends when a later revision replaces it.
 * The column names are those every MEL prints: item, category, number installed, number required, remarks.
 */

import type { Card } from './cards/card.js';
import type { LeftKind } from './left-kind.js';

/** Rectification interval letter. B, C and D are calendar days; A says its own interval in the row. */
export type Category = 'A' | 'B' | 'C' | 'D';

/** Who may answer, sign or judge. These are roles of people, not of programs. */
export type Role =
  | 'technician'
  | 'maintenance-control'
  | 'engineer'
  | 'commander'
  | 'dispatcher'
  | 'quality'
  | 'mel-engineer'
  | 'administrator';

/** How well the text behind an entry is known: read, quoted, reported, derived, remembered, or invented for the demo. */
export type Mark = 'SEEN' | 'SEEN-Q' | 'SEEN-2' | 'SEEN-P' | 'DERIVED' | 'FROM MEMORY' | 'INVENTED';

/** Where the text of an entry or row comes from. */
export interface Source {
  document: string;
  revision?: string;
  page?: string;
  mark?: Mark;
}

/** Which aircraft a part of the MEL is written for. Absent lists do not restrict; all that are present must match. */
export interface AppliesTo {
  types?: string[];
  /** Configuration codes of which at least one is fitted. */
  configurations?: string[];
  /** Inclusive ranges of serial numbers. */
  serials?: { from: number; to: number }[];
}

/** A leaf of a condition: one fact compared with one value, and the sentence it stands for. */
export interface ConditionLeaf {
  fact: string;
  operator: Operator;
  value: string | number | boolean | (string | number)[];
  /**
   * `entry` and `units` for entry facts, `entry` for facts about one system; `work` and `judgement` take whole keys:
   * `<entry>/<row>/<id>`, `<entry>/<row>/placard`, `combination`.
   */
  params?: { entry?: string; units?: string[]; work?: string; judgement?: string };
  /** The sentence this leaf stands for, as read aloud. When absent it is made from the fact's label. */
  text?: string;
}

/** The operators a MEL may use: those of json-rules-engine that compare a scalar or a list, no others. */
export type Operator =
  'equal' | 'notEqual' | 'lessThan' | 'lessThanInclusive' | 'greaterThan' | 'greaterThanInclusive' | 'in' | 'notIn';

/** A condition tree as json-rules-engine reads it: exactly one of all / any / not, never empty, at most 20 deep. */
export type Condition =
  | ConditionLeaf
  | { all: Condition[]; text?: string }
  | { any: Condition[]; text?: string }
  | { not: Condition; text?: string };

/** One thing that must hold for a row to be used. */
export interface Proviso {
  id: string;
  text: string;
  when: Condition;
}

/** How often a procedure is owed while the item is open. */
export type Repeat =
  'once' | 'each-departure' | 'each-flight-day' | { every: string } | { afterFirstFlightThenEvery: string };

/** Something a procedure leaves altered on the aircraft; it must be undone before the item may be closed. */
export interface Leaves {
  kind: LeftKind;
  where: string;
  undo: string;
}

/** An (M) or (O) procedure of a row. */
export interface Procedure {
  /** Unique within the row: M1, M2, O1 ... */
  id: string;
  kind: 'M' | 'O';
  text: string;
  /** Manual reference, e.g. "AMM 80-11-02, task 040". The manual prevails. */
  reference?: string;
  minutes?: number;
  repeat?: Repeat;
  /** True when somebody authorised and equipped must stand at the station for each departure. */
  needsPersonAtStation?: boolean;
  /** The role that does and signs it; (M) defaults to technician, (O) to commander. */
  by?: Role;
  leaves?: Leaves[];
  cautions?: string[];
  /** Id of the work card by which it is done; then it counts as done only once that card is signed. */
  card?: string;
}

export interface Placard {
  text: string;
  position: string;
}

/** A question that only a named person can settle (rule 6 of the trade: judgement is a person's). */
export interface JudgementAsked {
  id: string;
  question: string;
  by: Role;
}

/** One installed item, or some of them, of an entry. Without `units` all units of the entry are meant. */
export interface EntryRef {
  entry: string;
  units?: string[];
}

/** A NOTE. It is no proviso; but functions that it says are lost are considered inoperative. */
export interface Note {
  text: string;
  lost?: EntryRef[];
}

/** One relief that an entry offers. */
export interface Row {
  /** Unique within the sub-entry. */
  id: string;
  category: Category;
  /**
   * The row's own interval, e.g. "2 flight-days", "3 flights or 6 flight-hours", "3 flight-days, M1 within 1 flight-day",
   * "125 engine-hours, time-limited dispatch". Needed for category A; for B, C, D only a shorter number of calendar days.
   */
  interval?: string;
  /** Needed where an interval says "whichever is later": the words of the cited row that say so. */
  lastOf?: { says: string; source: Source };
  /** Category A intervals that differ by unit: `{ "1": "2 flight-days", "2": "3 flight-days" }`. */
  intervalByUnit?: Record<string, string>;
  /** A file may leave it out: the loader then takes the number of units. */
  numberInstalled: number;
  numberRequired: number;
  /** The units this row relieves; absent means any unit of the entry. */
  covers?: string[];
  remarks: string;
  provisos?: Proviso[];
  procedures?: Procedure[];
  placard?: Placard;
  judgements?: JudgementAsked[];
  consideredInoperative?: EntryRef[];
  /** Items that must be DOWN for this row (a symmetrical partner). */
  needsDown?: EntryRef[];
  notes?: Note[];
  /** Set when the text is held incompletely: the row then never answers better than "not settled". */
  incomplete?: string;
  source?: Source;
}

/** What an entry says for one configuration of the aircraft. */
export interface SubEntry {
  id: string;
  appliesTo?: AppliesTo;
  /** Names of the installed positions. Their count is the number installed. */
  units: string[];
  rows: Row[];
}

/** One item of the MEL. */
export interface Entry {
  number: string;
  title: string;
  /** System (ATA chapter), two digits, and optionally the four-digit JASC code. */
  chapter: string;
  jasc?: string;
  /** Words a technician may look for. */
  words?: string[];
  /** Messages shown by the aircraft when this item fails. */
  faultMessages?: string[];
  /** Entries marked so stay out of the judgement of the combination (cabin, NEF). */
  interaction?: 'none';
  subEntries: SubEntry[];
  source?: Source;
}

/** One revision of an operator's MEL for one aircraft type, checked and ready to be judged by. */
export interface MelContent {
  format: 'proviso-mel/1';
  document: string;
  operator: string;
  aircraftType: string;
  revision: string;
  /** Calendar day, YYYY-MM-DD. */
  effectiveOn: string;
  /** A notice shown wherever the content is shown, e.g. that it is invented and never for flight. */
  notice?: string;
  entries: Entry[];
  /** Work cards that procedures name. */
  cards?: Card[];
}
