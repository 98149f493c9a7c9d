/** The facts that are not known and stand in some condition, with the values that would make a difference. */
import { readFactKey, type Role } from '#mel';
import type { JudgedChoice } from '../choice.js';
import type { Scalar } from '../evaluate/compare.js';
import type { JudgedGate } from '../gates.js';
import { byCode } from '../units/unit.js';
import type { ExplainedNode } from '../verdict.js';

export interface OpenFact {
  key: string;
  question: string;
  mayAnswer: Role[];
  /** One value from each part of the domain that the conditions tell apart. */
  cells: Scalar[];
  neededBy: string[];
}

/** By key. Facts about units are left out: nobody is asked how many are up, it follows from the defects. */
export function openFacts(choices: readonly JudgedChoice[], gates: readonly JudgedGate[]): OpenFact[] {
  const leaves = new Map<string, { leaf: ExplainedNode; expected: unknown[]; neededBy: Set<string> }>();
  for (const { id, tree } of treesOf(choices, gates)) {
    for (const leaf of leavesOf(tree)) {
      const { fact = '' } = leaf;
      if ((leaf.now !== 'U' && leaf.after !== 'U') || leaf.question === undefined || fact.startsWith('entry.'))
        continue;
      const seen = leaves.get(fact) ?? { leaf, expected: [], neededBy: new Set<string>() };
      seen.expected.push(...(Array.isArray(leaf.expected) ? leaf.expected : [leaf.expected]));
      seen.neededBy.add(id);
      leaves.set(fact, seen);
    }
  }
  return [...leaves]
    .map(([key, { leaf, expected, neededBy }]) => ({
      key,
      question: leaf.question ?? '',
      mayAnswer: leaf.mayAnswer ?? [],
      cells: cellsOf(key, expected),
      neededBy: [...neededBy].sort(byCode),
    }))
    .sort((a, b) => byCode(a.key, b.key));
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

export function leavesOf(node: ExplainedNode): ExplainedNode[] {
  return node.node === 'leaf' ? [node] : (node.children ?? []).flatMap(leavesOf);
}

/** A number is cut at the thresholds in use; a choice is each of its values, and "something else" where it is open. */
function cellsOf(key: string, expected: readonly unknown[]): Scalar[] {
  const fact = readFactKey(key)?.fact;
  if (fact?.type === 'number') {
    const cuts = [...new Set(expected.map(Number))].sort((a, b) => a - b);
    const between = cuts.slice(1).map((cut, index) => (cut + (cuts[index] ?? cut)) / 2);
    return [...cuts, ...between, (cuts[0] ?? 0) - 1, (cuts.at(-1) ?? 0) + 1];
  }
  if (fact?.type === 'choice') return [...(fact.choices ?? [...new Set(expected.map(String)), '\u0000'])];
  return [true, false];
}
