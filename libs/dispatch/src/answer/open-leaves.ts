/**
 * The facts, pieces of work and judgements that are not known, from the leaves of the explained trees. How many units
 * are up is asked of nobody: it follows from the defects.
 */
import { readFactKey } from '#mel';
import type { JudgedChoice } from '../choice.js';
import type { Scalar } from '../evaluate/marker.js';
import type { JudgedGate } from '../gates.js';
import { byCode } from '../units/unit.js';
import type { ExplainedNode } from '../verdict.js';
import { isOpen, type OpenFact } from './open-fact.js';

export function openLeaves(choices: readonly JudgedChoice[], gates: readonly JudgedGate[]): OpenFact[] {
  const leaves = new Map<string, { leaf: ExplainedNode; expected: unknown[]; neededBy: Set<string> }>();
  for (const { id, tree } of treesOf(choices, gates)) {
    for (const leaf of leavesOf(tree)) {
      const { fact = '' } = leaf;
      if (!isOpen(leaf) || leaf.question === undefined || fact.startsWith('entry.')) continue;
      const seen = leaves.get(fact) ?? { leaf, expected: [], neededBy: new Set<string>() };
      seen.expected.push(...(Array.isArray(leaf.expected) ? leaf.expected : [leaf.expected]));
      seen.neededBy.add(id);
      leaves.set(fact, seen);
    }
  }
  return [...leaves].map(([key, { leaf, expected, neededBy }]) => ({
    key,
    question: leaf.question ?? '',
    mayAnswer: leaf.mayAnswer ?? [],
    cells: cellsOf(key, expected),
    neededBy: [...neededBy].sort(byCode),
    aboutUnits: false,
  }));
}

function treesOf(
  choices: readonly JudgedChoice[],
  gates: readonly JudgedGate[],
): { id: string; tree: ExplainedNode }[] {
  const answers = choices.flatMap(({ groups }) =>
    groups.flatMap(({ items }) => items.flatMap(({ answer }) => answer.conditions)),
  );
  return [
    ...answers.flatMap(({ id, tree }) => (tree === undefined ? [] : [{ id, tree }])),
    ...gates.flatMap(({ answer, tree }) => (tree === undefined ? [] : [{ id: answer.gate, tree }])),
  ];
}

function leavesOf(node: ExplainedNode): ExplainedNode[] {
  return node.node === 'leaf' ? [node] : (node.children ?? []).flatMap(leavesOf);
}

/** A number is cut at the thresholds in use; a choice is each of its values, and "something else" where it is open. */
export function cellsOf(key: string, expected: readonly unknown[]): Scalar[] {
  const fact = readFactKey(key)?.fact;
  if (fact?.type === 'number') {
    const cuts = [...new Set(expected.map(Number))].sort((a, b) => a - b);
    const between = cuts.slice(1).map((cut, index) => (cut + (cuts[index] ?? cut)) / 2);
    return [...cuts, ...between, (cuts[0] ?? 0) - 1, (cuts.at(-1) ?? 0) + 1];
  }
  if (fact?.type === 'choice') return [...(fact.choices ?? [...new Set(expected.map(String)), '\u0000'])];
  return [true, false];
}
