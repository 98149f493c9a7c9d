/**
 * A condition tree made ready once, when a MEL is loaded: the tree that the engine is given, and beside it, node for
 * node, everything the explanation says that no fact can change (sentences, keys, questions).
 */
import { factKey, factOf, questionOf, type Condition, type ConditionLeaf, type Role } from '#mel';

export interface LeafPlan {
  node: 'leaf';
  text: string;
  key: string;
  fact: string;
  operator: ConditionLeaf['operator'];
  expected: ConditionLeaf['value'];
  mayAnswer: Role[];
  question: string;
}
export interface BranchPlan {
  node: 'all' | 'any' | 'not';
  text: string;
  children: NodePlan[];
}
export type NodePlan = LeafPlan | BranchPlan;

/** Gives the title of an entry, or of a piece of work or judgement by its key. */
export type NameOf = (subject: string) => string;

const OPERATOR_WORDS: Record<ConditionLeaf['operator'], string> = {
  equal: 'is',
  notEqual: 'is not',
  lessThan: 'is less than',
  lessThanInclusive: 'is at most',
  greaterThan: 'is more than',
  greaterThanInclusive: 'is at least',
  in: 'is one of',
  notIn: 'is none of',
};
const BRANCH_WORDS = { all: 'all of these hold', any: 'at least one of these holds', not: 'this does not hold' };

export function planOf(condition: Condition, nameOf: NameOf): NodePlan {
  if ('all' in condition) return branch('all', condition.all, condition.text, nameOf);
  if ('any' in condition) return branch('any', condition.any, condition.text, nameOf);
  if ('not' in condition) return branch('not', [condition.not], condition.text, nameOf);
  const key = factKey(condition);
  return {
    node: 'leaf',
    text: condition.text ?? sentenceOf(condition, nameOf),
    key,
    fact: condition.fact,
    operator: condition.operator,
    expected: condition.value,
    mayAnswer: [...(factOf(condition.fact)?.mayAnswer ?? [])],
    question: questionOf(condition, nameOf),
  };
}

function branch(node: BranchPlan['node'], parts: Condition[], text: string | undefined, nameOf: NameOf): BranchPlan {
  return { node, text: text ?? BRANCH_WORDS[node], children: parts.map((part) => planOf(part, nameOf)) };
}

/** e.g. "icing is none", "at least 2 of Engine driven generator operative". */
function sentenceOf(leaf: ConditionLeaf, nameOf: NameOf): string {
  const label = factOf(leaf.fact)?.label ?? leaf.fact;
  const { entry, units, work, judgement } = leaf.params ?? {};
  const subject = entry ?? work ?? judgement;
  const value = Array.isArray(leaf.value) ? leaf.value.join(', ') : wordFor(leaf.value);
  const name = subject === undefined ? '' : nameOf(subject);
  if (leaf.fact.startsWith('entry.')) {
    const which = units ? ` (${units.join(', ')})` : '';
    return `number of ${name}${which} ${label} ${OPERATOR_WORDS[leaf.operator]} ${value}`;
  }
  return `${name === '' ? '' : `${name}: `}${label} ${OPERATOR_WORDS[leaf.operator]} ${value}`;
}

function wordFor(value: string | number | boolean): string {
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}

/** Every leaf below a node, in reading order. */
export function leavesOf(plan: NodePlan): LeafPlan[] {
  return plan.node === 'leaf' ? [plan] : plan.children.flatMap(leavesOf);
}
