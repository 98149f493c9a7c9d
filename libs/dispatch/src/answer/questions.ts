/**
 * Which questions are worth asking (rule 11): those unknown facts on which the verdict still depends, whatever the other
 * unknown facts may be or whether they stay unknown.
 */
import { better, highest, lowest, verdictOf, type Bound } from '../bounds.js';
import type { JudgedChoice } from '../choice.js';
import type { Scalar } from '../evaluate/marker.js';
import type { JudgedGate } from '../gates.js';
import type { Found } from '../search.js';
import { byCode } from '../units/unit.js';
import type { ConditionAnswer, ExplainedNode, Question } from '../verdict.js';
import { isOpen, type OpenFact } from './open-fact.js';
import { openLeaves } from './open-leaves.js';
import { openReadings } from './open-readings.js';
import { revalue } from './revalue.js';

/** Above these the exact test gives way to listing every fact that keeps a condition open. */
const MOST_FACTS = 6;
const MOST_CASES = 4096;

export function questionsOf(found: Found, gates: readonly JudgedGate[]): Question[] {
  if (found.lo === found.hi) return [];
  const facts = [...openLeaves(found.kept, gates), ...openReadings(found.kept)].sort((a, b) => byCode(a.key, b.key));
  const cases = facts.reduce((count, { cells }) => count * (cells.length + 1), 1);
  const exact = found.keptAll && found.stopped === null && facts.length <= MOST_FACTS && cases <= MOST_CASES;
  const asked = exact
    ? facts.filter((fact) => (fact.aboutUnits && unitsAreOpen(found.kept)) || matters(fact, facts, found.kept, gates))
    : facts;
  return asked.map(({ key, question, mayAnswer, neededBy }) => ({ fact: key, question, mayAnswer, neededBy }));
}

/** Does some condition hang on which units are down? What it would become then is not computed here. */
function unitsAreOpen(choices: readonly JudgedChoice[]): boolean {
  const items = choices.flatMap(({ groups }) => groups.flatMap((group) => group.items));
  return items.some(
    ({ item, answer }) =>
      (item.defect === null && item.perhaps) ||
      answer.conditions.some(
        (one) => isOpen(one) && (one.tree === undefined ? aboutNumbers(one) : hasOpenUnits(one.tree)),
      ),
  );
}

const aboutNumbers = ({ kind }: ConditionAnswer): boolean => kind === 'number-required' || kind === 'needs-down';

function hasOpenUnits(node: ExplainedNode): boolean {
  if (node.node !== 'leaf') return (node.children ?? []).some(hasOpenUnits);
  return isOpen(node) && node.fact?.startsWith('entry.') === true;
}

/** Is there a state of the other facts, each known or not, in which learning this one changes the verdict? */
function matters(
  fact: OpenFact,
  facts: readonly OpenFact[],
  choices: readonly JudgedChoice[],
  gates: readonly JudgedGate[],
): boolean {
  const others = facts.filter((one) => one !== fact);
  for (const supposed of states(others)) {
    const before = verdictUnder(choices, gates, supposed);
    if (fact.cells.some((cell) => verdictUnder(choices, gates, new Map([...supposed, [fact.key, cell]])) !== before))
      return true;
  }
  return false;
}

function* states(facts: readonly OpenFact[]): Generator<Map<string, Scalar>> {
  const [first, ...rest] = facts;
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const state of states(rest)) {
    yield state;
    for (const cell of first.cells) yield new Map([...state, [first.key, cell]]);
  }
}

function verdictUnder(
  choices: readonly JudgedChoice[],
  gates: readonly JudgedGate[],
  supposed: Map<string, Scalar>,
): string {
  let lo: Bound = 'may-not-fly';
  let hi: Bound = 'may-not-fly';
  for (const choice of choices) {
    const value = revalue(choice, gates, supposed);
    lo = better(lo, lowest(value));
    hi = better(hi, highest(value));
  }
  return verdictOf(lo, hi);
}
