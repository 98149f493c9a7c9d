/** One down unit under one row, as the conditions of rule 5 look at it. */
import type { Entry, Row, SubEntry } from '#mel';
import type { Frame } from '../frame/frame.js';
import type { TreeOf } from '../frame/trees.js';
import type { Until } from '../frame/until.js';
import type { OpenDefect } from '../situation.js';
import type { DownState } from '../units/down-state.js';
import type { Cause, ConditionAnswer, ConditionKind, ExplainedNode, NowAfter, WorkToDo } from '../verdict.js';

export interface Item {
  /** Null for a defect on another basis that no entry of the MEL is about. */
  entry: Entry | null;
  unit: string;
  subEntry: SubEntry | null;
  row: Row | null;
  /** False when it is not known which sub-entry is written for this aircraft. */
  configurationKnown: boolean;
  /** Null for a unit that is only considered inoperative. */
  defect: OpenDefect | null;
  cause: Cause;
  perhaps: boolean;
}

/** An item that stands on a row of its entry. */
export interface RowItem extends Item {
  entry: Entry;
  subEntry: SubEntry;
  row: Row;
}

/** A condition's answer, with what the whole verdict needs of it. */
export interface Judged {
  answer: ConditionAnswer;
  untils: Until[];
  work?: WorkToDo;
}

/** A condition of a row: answers for one item, none when it does not concern it. */
export type Rule = (item: RowItem, frame: Frame, state: DownState, treeOf: TreeOf) => Judged[];

/** A condition that no other unit's state can change. */
export type FixedRule = (item: RowItem, frame: Frame) => Judged[];

interface Parts {
  untils?: Until[];
  work?: WorkToDo;
  tree?: ExplainedNode;
  onlyUnder?: string;
}

export function judged(
  kind: ConditionKind,
  id: string,
  text: string,
  pair: NowAfter,
  because: string,
  { untils = [], work, tree, onlyUnder }: Parts = {},
): Judged {
  const answer: ConditionAnswer = { kind, id, text, now: pair.now, after: pair.after, because };
  if (tree !== undefined) answer.tree = tree;
  if (onlyUnder !== undefined) answer.onlyUnder = onlyUnder;
  return work === undefined ? { answer, untils } : { answer, untils, work };
}

/** `<entry>/<row>/<id>`: the key of a part of a row. */
export function partOf(item: RowItem, id: string): string {
  return `${item.entry.number}/${item.row.id}/${id}`;
}
