/**
 * A proviso as closures: the second evaluator of the same trees, for searches.
 *
 * It shares with the rules engine the tree as loaded, with its sentences, and nothing of how a tree gets its value. It
 * gives the two values alone, or the explained tree as the engine's fold makes it. A property test holds both to the
 * same answers; a recorded answer is still the engine's.
 */
import type { Proviso } from '#mel';
import type { CompiledProviso } from '../evaluate/compiled-proviso.js';
import type { FactLookup } from '../evaluate/marker.js';
import { planOf, type LeafPlan, type NameOf, type NodePlan } from '../evaluate/plan.js';
import type { ExplainedNode } from '../verdict.js';
import { ALL_FALSE, ALL_TRUE, notCode, type Code } from './code.js';
import { explainerOf } from './explain.js';
import { codeOfValue, holdsOf, type Holds } from './leaf-test.js';

/** One leaf, in reading order. */
export interface ClosureLeaf {
  key: string;
  /** The same for two leaves that ask the same. */
  asks: string;
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
  const keys = [...new Set(leaves.map(({ key }) => key))];
  return {
    leaves,
    combine,
    entryKeys: keys.filter((key) => key.startsWith('entry.')),
    value: valueOf(plan),
    judge: explainerOf(plan),
  };
}

function combineOf(plan: NodePlan, leaves: ClosureLeaf[]): Combine {
  if (plan.node === 'leaf') {
    const { key, operator, expected } = plan;
    const asks = `${key} ${operator} ${JSON.stringify(expected)}`;
    const at = leaves.push({ key, asks, holds: holdsOf(operator, expected), plan }) - 1;
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

/** The value alone, asking for no more facts than it needs. */
function valueOf(plan: NodePlan): (lookup: FactLookup) => Code {
  if (plan.node === 'leaf') {
    const { key } = plan;
    const holds = holdsOf(plan.operator, plan.expected);
    return (lookup) => codeOfValue(lookup(key).value, holds);
  }
  const parts = plan.children.map(valueOf);
  const [only] = parts;
  if (plan.node === 'not' && only !== undefined) return (lookup) => notCode(only(lookup));
  if (plan.node === 'all')
    return (lookup) => {
      let code = ALL_TRUE;
      for (let at = 0; at < parts.length && code !== ALL_FALSE; at++) code &= parts[at]!(lookup);
      return code;
    };
  return (lookup) => {
    let code = ALL_FALSE;
    for (let at = 0; at < parts.length && code !== ALL_TRUE; at++) code |= parts[at]!(lookup);
    return code;
  };
}
