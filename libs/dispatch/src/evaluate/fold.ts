/**
 * Reads the engine's own result tree by Kleene logic.
 *
 * The engine has put into each leaf the value it found and whether the comparison held. Where it found a marker instead
 * of a value its yes or no means nothing, and the marker decides; the branches above are computed anew from the leaves.
 * The same walk makes the explanation.
 */
import { allOfPairs, anyOfPairs, FF, notPair, TT, UU } from '../kleene.js';
import type { ExplainedNode, NowAfter } from '../verdict.js';
import { comparesAll } from './compare.js';
import { Possible, Unknown, type FactLookup, type FactValue } from './marker.js';
import type { LeafPlan, NodePlan } from './plan.js';

/** The part of the engine's result that is read: its condition tree, with results filled in. */
export interface EngineNode {
  all?: EngineNode[];
  any?: EngineNode[];
  not?: EngineNode;
  factResult?: unknown;
  valueResult?: unknown;
  result?: boolean;
}

export function fold(plan: NodePlan, node: EngineNode, lookup: FactLookup): ExplainedNode {
  if (plan.node === 'leaf') return explainLeaf(plan, leafPair(plan, node), lookup);
  const below = plan.node === 'not' ? [node.not] : plan.node === 'all' ? node.all : node.any;
  const children = plan.children.map((child, index) => {
    const result = below?.[index];
    if (result === undefined) throw new Error(`The rules engine left out part of "${plan.text}".`);
    return fold(child, result, lookup);
  });
  const pair =
    plan.node === 'all'
      ? allOfPairs(children)
      : plan.node === 'any'
        ? anyOfPairs(children)
        : notPair(children[0] ?? UU);
  return { node: plan.node, text: plan.text, now: pair.now, after: pair.after, children };
}

function leafPair(plan: LeafPlan, { factResult, valueResult, result }: EngineNode): NowAfter {
  if (factResult instanceof Possible) {
    return {
      now: comparesAll(factResult.now, plan.operator, plan.expected),
      after: comparesAll(factResult.after, plan.operator, plan.expected),
    };
  }
  if (factResult === undefined || factResult === null || factResult instanceof Unknown) return UU;
  if (valueResult === undefined || valueResult instanceof Unknown || valueResult instanceof Possible) return UU;
  return result === true ? TT : FF;
}

function explainLeaf(plan: LeafPlan, pair: NowAfter, lookup: FactLookup): ExplainedNode {
  const view = lookup(plan.key);
  const node: ExplainedNode = {
    node: 'leaf',
    text: plan.text,
    now: pair.now,
    after: pair.after,
    fact: plan.key,
    operator: plan.operator,
    expected: plan.expected,
    actual: actualOf(view.value),
    known: isKnown(view.value),
  };
  if (view.value instanceof Unknown) node.because = view.value.reason;
  if (view.source !== undefined) node.source = view.source;
  if (view.observedAt !== undefined) node.observedAt = view.observedAt;
  if (view.validUntil !== undefined) node.validUntil = view.validUntil;
  if (pair.now === 'U' || pair.after === 'U') {
    node.mayAnswer = plan.mayAnswer;
    node.question = plan.question;
  }
  return node;
}

function isKnown(value: FactValue): boolean {
  if (value instanceof Possible) return value.now.length === 1 && value.after.length === 1;
  return !(value instanceof Unknown);
}

/** What the explanation shows as the value: nothing, the one value, or those that are possible now. */
function actualOf(value: FactValue): unknown {
  if (value instanceof Unknown) return null;
  if (!(value instanceof Possible)) return value;
  return value.now.length === 1 ? value.now[0] : value.now;
}
