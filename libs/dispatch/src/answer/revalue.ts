/**
 * Computes a choice's value anew under supposed facts, from the explained trees alone. Used to find out which questions
 * can still change the answer; never for an answer itself.
 */
import type { Operator } from '#mel';
import { valueOf, type Group, type JudgedChoice } from '../choice.js';
import type { Item } from '../conditions/item.js';
import { compares } from '../evaluate/compare.js';
import type { Scalar } from '../evaluate/marker.js';
import type { JudgedGate } from '../gates.js';
import { allOfPairs, anyOfPairs, FF, FT, notPair, TT } from '../kleene.js';
import type { ConditionAnswer, ExplainedNode, NowAfter } from '../verdict.js';
import { isOpen } from './open-fact.js';
import { configurationQuestion, unitQuestion } from './open-readings.js';

/** Supposed values by fact key; a fact that is not in it stays as it is. */
export type Supposed = ReadonlyMap<string, Scalar>;

export function revalue(choice: JudgedChoice, gates: readonly JudgedGate[], supposed: Supposed): NowAfter {
  return allOfPairs([
    ...choice.groups.map((group) => valueOf(regroup(group, supposed))),
    ...gates.map(({ answer, tree }) => (tree === undefined ? answer : retree(tree, supposed))),
  ]);
}

function regroup({ counts, items }: Group, supposed: Supposed): Group {
  const left = items.filter(({ item }) => isStillPossible(item, supposed));
  return {
    counts,
    items: left.map((one) => {
      const known = one.item.entry !== null && supposed.has(configurationQuestion(one.item.entry.number));
      const value = allOfPairs(one.answer.conditions.map((condition) => recondition(condition, supposed, known)));
      return { ...one, answer: { ...one.answer, now: value.now, after: value.after } };
    }),
  };
}

function isStillPossible({ entry, defect, unit, subEntry }: Item, supposed: Supposed): boolean {
  const which = defect === null ? undefined : supposed.get(unitQuestion(defect.id));
  const fitted = entry === null ? undefined : supposed.get(configurationQuestion(entry.number));
  return (
    (which === undefined || which === unit) && (fitted === undefined || subEntry === null || fitted === subEntry.id)
  );
}

function recondition(condition: ConditionAnswer, supposed: Supposed, configurationKnown: boolean): NowAfter {
  if (condition.kind === 'configuration' && configurationKnown) return TT;
  return condition.tree === undefined ? condition : retree(condition.tree, supposed);
}

function retree(node: ExplainedNode, supposed: Supposed): NowAfter {
  if (node.node === 'leaf') return releaf(node, supposed);
  const children = (node.children ?? []).map((child) => retree(child, supposed));
  if (node.node === 'not') return children[0] === undefined ? node : notPair(children[0]);
  return node.node === 'all' ? allOfPairs(children) : anyOfPairs(children);
}

/** A leaf that waits for work turns on whether the work can be done; every other one on its fact. */
function releaf(leaf: ExplainedNode, supposed: Supposed): NowAfter {
  const value = leaf.fact === undefined ? undefined : supposed.get(leaf.fact);
  if (value === undefined || !isOpen(leaf)) return leaf;
  if (leaf.now === 'F') return value === true ? FT : FF;
  if (leaf.after === 'T') return value === true ? TT : FT;
  return compares(value, leaf.operator as Operator, leaf.expected as Scalar) ? TT : FF;
}
