/** Rule 5: the value of a unit under a row is the least of all conditions of that row. */
import type { Proviso } from '#mel';
import type { Frame } from '../frame/frame.js';
import { treesIn, type TreeOf } from '../frame/trees.js';
import { allOfPairs, UU } from '../kleene.js';
import type { DownState } from '../units/down-state.js';
import type { ItemAnswer, NowAfter } from '../verdict.js';
import { configuration } from './configuration.js';
import { covers } from './covers.js';
import { directive } from './directive.js';
import { formerLimits } from './former-limits.js';
import { formerRow } from './former-row.js';
import { interval } from './interval.js';
import { judged, type FixedRule, type Item, type Judged, type RowItem, type Rule } from './item.js';
import { judgements } from './judgement.js';
import { needsDown } from './needs-down.js';
import { numberRequired } from './number-required.js';
import { provisos } from './proviso.js';
import { noBasis, otherBasis } from './recorded-basis.js';
import { signedRow } from './signed-row.js';
import { textComplete } from './text-complete.js';
import { placard, procedures } from './work.js';

/** In the order in which they are read out. */
const FIRST: readonly FixedRule[] = [configuration, covers, directive, textComplete, interval];
const OF_CHANGE: readonly FixedRule[] = [formerRow, formerLimits];
const OF_OTHERS: readonly Rule[] = [numberRequired, needsDown, provisos];
const LAST: readonly FixedRule[] = [judgements, procedures, placard, signedRow];

/** Those that a search judges once for each row, whatever the other units do. */
export const FIXED_RULES: readonly FixedRule[] = [...FIRST, ...OF_CHANGE, ...LAST];

export interface JudgedItem {
  item: Item;
  answer: ItemAnswer;
  judged: readonly Judged[];
}

/** Judges items of one state; their provisos run through the evaluator first, all at once. */
export async function judgeItems(items: readonly Item[], frame: Frame, state: DownState): Promise<JudgedItem[]> {
  const treeOf = await treesIn(frame, state, items.flatMap(provisosOf));
  return items.map((item) => judgeItem(item, frame, state, treeOf));
}

function provisosOf({ defect, row }: Item): readonly Proviso[] {
  return defect?.basis?.conditions ?? row?.provisos ?? [];
}

function judgeItem(item: Item, frame: Frame, state: DownState, treeOf: TreeOf): JudgedItem {
  const judged = conditionsOf(item, frame, state, treeOf);
  const conditions = judged.map(({ answer }) => answer);
  const value: NowAfter = allOfPairs(conditions);
  return {
    item,
    judged,
    answer: {
      entry: item.entry?.number ?? '',
      title: item.entry?.title ?? item.defect?.basis?.reference ?? '',
      unit: item.unit,
      perhaps: item.perhaps,
      cause: item.cause,
      row: item.row?.id ?? null,
      conditions,
      now: value.now,
      after: value.after,
    },
  };
}

function conditionsOf(item: Item, frame: Frame, state: DownState, treeOf: TreeOf): Judged[] {
  const { defect } = item;
  if (defect?.basis !== undefined) return otherBasis(defect, defect.basis, frame, treeOf);
  if (isOnRow(item)) {
    const { first, last } = fixedOf(item, frame);
    return [...first, ...OF_OTHERS.flatMap((rule) => rule(item, frame, state, treeOf)), ...last];
  }
  const unknownConfiguration = defect === null && !item.configurationKnown && item.entry !== null;
  return [unknownConfiguration ? rowNotKnown(item) : noBasis(item)];
}

interface Fixed {
  first: readonly Judged[];
  last: readonly Judged[];
}
const FIXED = Symbol('fixed conditions');

/** Judged once in a frame, however many choices the row stands in. */
function fixedOf(item: RowItem, frame: Frame): Fixed {
  const known = frame.once(FIXED, () => new Map<string, Fixed>());
  const key = [item.entry.number, item.subEntry.id, item.row.id, item.unit, item.defect?.id ?? ''].join('/');
  let fixed = known.get(key);
  if (fixed === undefined) {
    const judgeBy = (rules: readonly FixedRule[]): Judged[] => rules.flatMap((rule) => rule(item, frame));
    known.set(key, (fixed = { first: [...judgeBy(FIRST), ...judgeBy(OF_CHANGE)], last: judgeBy(LAST) }));
  }
  return fixed;
}

function isOnRow(item: Item): item is RowItem {
  return item.entry !== null && item.subEntry !== null && item.row !== null;
}

/** Which rows there are for a considered-inoperative unit hangs on a configuration that nobody knows. */
function rowNotKnown({ entry, unit }: Item): Judged {
  const name = `${entry?.title ?? ''} ${unit}`;
  return judged(
    'configuration',
    `${entry?.number ?? ''}/${unit}/configuration`,
    `a row of ${name} fits this aircraft`,
    UU,
    `which rows ${name} has is not known, since the aircraft's configuration is not known`,
  );
}
