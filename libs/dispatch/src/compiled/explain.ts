/**
 * The explained tree of a proviso as closures: one walk finds the values and writes the nodes.
 *
 * Searches explain what they show, so this is written to make no object but the nodes themselves: two values fit in one
 * number on the way up, and a node is written once with all its parts.
 */
import { Possible, Unknown, type FactLookup, type FactView } from '../evaluate/marker.js';
import type { LeafPlan, NodePlan } from '../evaluate/plan.js';
import type { ExplainedNode, Truth } from '../verdict.js';
import { ALL_FALSE, ALL_TRUE, notCode, pairOf, type Code } from './code.js';
import { codeOfValue, holdsOf } from './leaf-test.js';

type Explainer = (lookup: FactLookup) => ExplainedNode;
/** Writes its node and leaves the node's value in `found`. */
type Walk = (lookup: FactLookup, found: { code: Code }) => ExplainedNode;

const CODES = Array.from({ length: ALL_TRUE + 1 }, (_, code) => pairOf(code));
const NOW: readonly Truth[] = CODES.map(({ now }) => now);
const AFTER: readonly Truth[] = CODES.map(({ after }) => after);

export function explainerOf(plan: NodePlan): Explainer {
  const walk = walkOf(plan);
  const found = { code: ALL_FALSE };
  return (lookup) => walk(lookup, found);
}

function walkOf(plan: NodePlan): Walk {
  if (plan.node === 'leaf') return leafOf(plan);
  const { node, text } = plan;
  const parts = plan.children.map(walkOf);
  const count = parts.length;
  return (lookup, found) => {
    const children: ExplainedNode[] = [];
    let code = node === 'any' ? ALL_FALSE : ALL_TRUE;
    for (let at = 0; at < count; at++) {
      children.push(parts[at]!(lookup, found));
      if (node === 'any') code |= found.code;
      else code &= found.code;
    }
    if (node === 'not') code = notCode(code);
    found.code = code;
    return { node, text, now: NOW[code]!, after: AFTER[code]!, children };
  };
}

function leafOf(plan: LeafPlan): Walk {
  const { text, key, operator, expected } = plan;
  const holds = holdsOf(operator, expected);
  return (lookup, found) => {
    const view = lookup(key);
    const { value } = view;
    if (typeof value === 'object') return openLeaf(plan, view, (found.code = codeOfValue(value, holds)));
    const truth = holds(value) ? 'T' : 'F';
    found.code = truth === 'T' ? ALL_TRUE : ALL_FALSE;
    const node: ExplainedNode = {
      node: 'leaf',
      text,
      now: truth,
      after: truth,
      fact: key,
      operator,
      expected,
      actual: value,
      known: true,
    };
    return withOrigin(node, view);
  };
}

/** A leaf whose fact has no single value, with the question that would settle it. */
function openLeaf(plan: LeafPlan, view: FactView, code: Code): ExplainedNode {
  const { value } = view;
  const { text, key, operator, expected } = plan;
  const node: ExplainedNode = {
    node: 'leaf',
    text,
    now: NOW[code]!,
    after: AFTER[code]!,
    fact: key,
    operator,
    expected,
    actual: value instanceof Possible ? shownOf(value) : null,
    known: value instanceof Possible && value.now.length === 1 && value.after.length === 1,
  };
  if (value instanceof Unknown) node.because = value.reason;
  withOrigin(node, view);
  if (node.now === 'U' || node.after === 'U') {
    node.mayAnswer = plan.mayAnswer;
    node.question = plan.question;
  }
  return node;
}

function shownOf({ now }: Possible): unknown {
  return now.length === 1 ? now[0] : now;
}

function withOrigin(node: ExplainedNode, { source, observedAt, validUntil }: FactView): ExplainedNode {
  if (source !== undefined) node.source = source;
  if (observedAt !== undefined) node.observedAt = observedAt;
  if (validUntil !== undefined) node.validUntil = validUntil;
  return node;
}
