/**
 * A proviso as closures: the second evaluator of the same trees, for searches.
 *
 * It shares with the rules engine the tree as loaded, with its sentences, and nothing of how a tree gets its value. It
 * gives the two values alone, or the explained tree as the engine's fold makes it. A property test holds both to the
 * same answers; a recorded answer is still the engine's.
 */
import type { Proviso } from '#mel';
import type { CompiledProviso } from '../evaluate/compiled-proviso.js';
import { Possible, Unknown, type FactLookup, type FactValue } from '../evaluate/marker.js';
import { planOf, type LeafPlan, type NameOf, type NodePlan } from '../evaluate/plan.js';
import type { ExplainedNode } from '../verdict.js';
import { ALL_FALSE, ALL_TRUE, codeOf, notCode, pairOf, type Code } from './code.js';
import { codeOfValue, holdsOf, type Holds } from './leaf-test.js';

/** One leaf, in reading order. */
export interface ClosureLeaf {
  key: string;
  holds: Holds;
  plan: LeafPlan;
}

/** The tree's value from the codes of its leaves. */
export type Combine = (leaves: ArrayLike<Code>) => Code;

export interface ClosureProviso extends CompiledProviso {
  leaves: readonly ClosureLeaf[];
  combine: Combine;
  value(lookup: FactLookup): Code;
  judge(lookup: FactLookup): ExplainedNode;
}

export function compileClosure(proviso: Proviso, nameOf: NameOf = (subject) => subject): ClosureProviso {
  const leaves: ClosureLeaf[] = [];
  const plan = planOf(proviso.when, nameOf);
  const combine = combineOf(plan, leaves);
  const codes = (lookup: FactLookup): Code[] => leaves.map(({ key, holds }) => codeOfValue(lookup(key).value, holds));
  const keys = [...new Set(leaves.map(({ key }) => key))];
  return {
    leaves,
    combine,
    entryKeys: keys.filter((key) => key.startsWith('entry.')),
    value: (lookup) => combine(codes(lookup)),
    judge: (lookup) => explain(plan, codes(lookup), { next: 0 }, lookup),
  };
}

function combineOf(plan: NodePlan, leaves: ClosureLeaf[]): Combine {
  if (plan.node === 'leaf') {
    const at = leaves.push({ key: plan.key, holds: holdsOf(plan.operator, plan.expected), plan }) - 1;
    return (codes) => codes[at] as Code;
  }
  const parts = plan.children.map((child) => combineOf(child, leaves));
  const [only] = parts;
  if (plan.node === 'not' && only !== undefined) return (codes) => notCode(only(codes));
  return plan.node === 'all' ? allOfParts(parts) : anyOfParts(parts);
}

function allOfParts(parts: readonly Combine[]): Combine {
  return (codes) => {
    let code = ALL_TRUE;
    for (const part of parts) if ((code &= part(codes)) === ALL_FALSE) break;
    return code;
  };
}

function anyOfParts(parts: readonly Combine[]): Combine {
  return (codes) => {
    let code = ALL_FALSE;
    for (const part of parts) if ((code |= part(codes)) === ALL_TRUE) break;
    return code;
  };
}

/** `place` walks the leaves in the order in which they were compiled. */
function explain(plan: NodePlan, codes: readonly Code[], place: { next: number }, lookup: FactLookup): ExplainedNode {
  if (plan.node === 'leaf') return explainLeaf(plan, codes[place.next++] ?? ALL_FALSE, lookup);
  const children = plan.children.map((child) => explain(child, codes, place, lookup));
  const pair = pairOf(valueOf(plan, children));
  return { node: plan.node, text: plan.text, now: pair.now, after: pair.after, children };
}

function valueOf({ node }: NodePlan, children: readonly ExplainedNode[]): Code {
  const codes = children.map(codeOf);
  if (node === 'not') return notCode(codes[0] ?? ALL_FALSE);
  return node === 'all' ? codes.reduce((a, b) => a & b, ALL_TRUE) : codes.reduce((a, b) => a | b, ALL_FALSE);
}

function explainLeaf(plan: LeafPlan, code: Code, lookup: FactLookup): ExplainedNode {
  const { value, source, observedAt, validUntil } = lookup(plan.key);
  const { now, after } = pairOf(code);
  const node: ExplainedNode = {
    node: 'leaf',
    text: plan.text,
    now,
    after,
    fact: plan.key,
    operator: plan.operator,
    expected: plan.expected,
    ...shown(value),
  };
  if (source !== undefined) node.source = source;
  if (observedAt !== undefined) node.observedAt = observedAt;
  if (validUntil !== undefined) node.validUntil = validUntil;
  if (now === 'U' || after === 'U') {
    node.mayAnswer = plan.mayAnswer;
    node.question = plan.question;
  }
  return node;
}

function shown(value: FactValue): Pick<ExplainedNode, 'actual' | 'known' | 'because'> {
  if (value instanceof Unknown) return { actual: null, known: false, because: value.reason };
  if (!(value instanceof Possible)) return { actual: value, known: true };
  const [only] = value.now;
  const certain = value.now.length === 1;
  return { actual: certain ? only : value.now, known: certain && value.after.length === 1 };
}
