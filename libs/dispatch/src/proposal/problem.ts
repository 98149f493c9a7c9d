/**
 * A situation as a search over rows needs it: units, rows and conditions by number, and apart from them what the situation
 * says of each. Only that differs from stop to stop of a plan; everything else is found once.
 */
import type { Procedure, Row } from '#mel';
import type { Code } from '../compiled/code.js';
import type { ClosureLeaf, Combine } from '../compiled/closure.js';
import type { Holds } from '../compiled/leaf-test.js';
import type { Item } from '../conditions/item.js';
import type { OpenDefect } from '../situation.js';
import type { Unit } from '../units/unit.js';

/** Work still to be done, counted once in a choice whoever owes it. */
export interface Act {
  key: string;
  work: string;
  defect?: string;
  /** Null when the MEL gives no figure. */
  minutes: number | null;
}

/** A condition of a row as people know it. */
export interface Named {
  id: string;
  text: string;
}

/** What the fixed conditions of a row say. */
export interface Standing {
  code: Code;
  acts: readonly Act[];
  /** Those that are not true, one by one. */
  parts: readonly (Named & { code: Code })[];
}

/** A question about units or work whose answer differs from choice to choice; asked once in each choice. */
export type Atom =
  | {
      kind: 'up' | 'not-failed';
      /** One list for each sub-entry that may be fitted: units that may be down by number, and how many others there are. */
      lists: readonly { units: readonly number[]; others: number }[];
      holds: Holds;
    }
  | WorkAtom;

/** Work that the condition of another row asks for. */
export interface WorkAtom {
  kind: 'work';
  key: string;
  procedure: Procedure | null;
  /** The row that owes it; below zero where no defect can take that row. */
  group: number;
}

/** A proviso. Its open leaves hang on the choice, the others on the situation alone. */
export interface Tree {
  kind: 'tree';
  number: number;
  combine: Combine;
  leaves: readonly ClosureLeaf[];
  open: readonly { at: number; atom: number }[];
}

export type Condition = Named &
  ({ kind: 'atom'; atom: number } | { kind: 'needs-down'; units: readonly number[] } | Tree);

/** One unit under one row. */
export interface Option {
  number: number;
  /** Id of the row, also where the sub-entry has no such row. */
  row: string | null;
  item: Item;
  /** Null for a defect on no unit of this aircraft. */
  unit: number | null;
  takes: readonly number[];
  conditions: readonly Condition[];
}

/** A row that may be chosen, with one option for each unit that the defect may be of. */
export interface Choosable {
  id: string | null;
  row: Row | null;
  /** The defects of the entry under the same row, by number; null when there are none. */
  group: number | null;
  isChange: boolean;
  options: readonly Option[];
}

/** Something that needs a row: a defect, or a unit that some row may take along. */
export interface Variable {
  defect: OpenDefect | null;
  /** The unit of a variable without defect. */
  unit: number | null;
  entry: string;
  /** Where it stands in the list of entry, unit, row that decides between equals. */
  place: readonly [entry: string, unit: string, defect: string];
  rows: readonly Choosable[];
  /** Its value while it has no row to choose from, and the condition that it then fails. */
  rowless: Code;
  basis: Named;
}

export interface Problem {
  units: readonly Unit[];
  /** By place. */
  variables: readonly Variable[];
  /** The variable of each unit. */
  ofUnit: readonly number[];
  atoms: readonly Atom[];
  /** The variables that may take the row of each group. */
  groups: readonly (readonly { variable: number; row: number }[])[];
  /** Units whose own rows nobody knows, since the configuration is not known. */
  isUnsure: readonly boolean[];
  said: Said;
}

/** What one situation says of the rows of a problem. It is judged when a search first asks for it: much of it never is. */
export interface Said {
  /** True when the same question may be answered otherwise later. */
  readonly mayChange: boolean;
  /** The fixed conditions of an option, alone under its row of the entry or with another defect under the same row. */
  standing(option: Option, isShared: boolean): Standing;
  /** The codes of a tree's leaves; those of the open ones are the asker's to write. */
  leaves(tree: Tree): Uint8Array;
  /** A piece of work as the defect owes it that has this id, or as nobody does. */
  work(atom: WorkAtom, defect: string | null, isShared: boolean): Code;
}
