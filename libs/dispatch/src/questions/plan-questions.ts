/**
 * The question to ask next, so that fewest are asked on average until the answer is settled (rule 11).
 */
import type { Mel } from '#mel';
import type { OpenFact } from '../answer/open-fact.js';
import type { Scalar } from '../evaluate/marker.js';
import type { Situation } from '../situation.js';
import { isSettled, nothingKnown, openFacts, settles, learn, type Known, type Lattice } from './lattice.js';
import { LeastExpected } from './least-expected.js';
import { likeliest } from './likeliest.js';
import type { AskedQuestion, QuestionMethod, QuestionNode, QuestionPlan, Reply, WeightOf } from './question-plan.js';
import { Readings } from './readings.js';
import { repliesTo } from './replies.js';

/** Above these all orders are no longer compared. */
const MOST_FACTS = 6;
const MOST_STATES = 20_000;

const MODELS: Record<QuestionMethod, string> = {
  'least-expected':
    'Of all orders of questions this one needs fewest on average. Replies to different questions are taken to be independent, and replies that make a difference to be equally likely where the MEL gives no weights.',
  'most-likely-to-settle':
    'Too many facts are open to compare all orders of questions, so the one most likely to settle the answer is asked first. Replies are taken to be independent and equally likely where the MEL gives no weights.',
  listed: 'What would follow from each reply is not computed here, so the open facts are listed without an order.',
  'nothing-to-ask': 'No reply to any question changes the answer.',
};

/** `weightOf` gives the likelihood of a value where the content knows one. Throws as `judge` does. */
export async function planQuestions(
  mel: Mel,
  situation: Situation,
  weightOf: WeightOf = () => undefined,
): Promise<QuestionPlan> {
  const readings = await Readings.of(mel, situation);
  const open = readings.facts().map(({ fact, leaves }) => ({ fact, replies: repliesTo(fact, leaves, weightOf) }));
  const lattice = latticeOf(readings, open);
  const start = nothingKnown(lattice);
  const nothingOpen = situation.defects.length === 0 && readings.now.gates.every(({ answer }) => answer.now === 'T');
  const verdict = nothingOpen ? 'nothing-open' : lattice.verdict(start);
  const plan = (method: QuestionMethod, rest: Partial<QuestionPlan> = {}): QuestionPlan => ({
    verdict,
    method,
    model: MODELS[method],
    expected: method === 'nothing-to-ask' ? 0 : null,
    questions: [],
    tree: null,
    ...rest,
  });
  const ask = (facts: readonly number[]) => facts.map((fact) => asked(lattice, open[fact]!, fact));
  if (verdict !== 'not-settled') return plan('nothing-to-ask');
  if (!readings.exact) return plan('listed', { questions: ask(openFacts(start)) });
  const states = open.reduce((count, { replies }) => count * (replies.length + 1), 1);
  if (open.length > MOST_FACTS || states > MOST_STATES) {
    const facts = likeliest(lattice);
    if (facts.length === 0) return plan('listed', { questions: ask(openFacts(start)) });
    return plan('most-likely-to-settle', { questions: ask(facts) });
  }
  const least = new LeastExpected(lattice);
  const { ask: first, expected } = least.step(start);
  if (first === null) return plan('nothing-to-ask');
  const tree = treeFrom(least, open, start);
  const others = openFacts(start).filter((fact) => least.matters(start, fact));
  const inOrder = [...new Set([...factsIn(tree, open), ...others])];
  return plan('least-expected', { expected, tree, questions: ask(inOrder) });
}

interface Open {
  fact: OpenFact;
  replies: Reply[];
}

function latticeOf(readings: Readings, open: readonly Open[]): Lattice {
  const verdicts = new Map<string, ReturnType<Lattice['verdict']>>();
  return {
    facts: open.map(({ fact, replies }) => ({ key: fact.key, weights: replies.map(({ weight }) => weight) })),
    verdict: (known) => {
      const key = known.join();
      let verdict = verdicts.get(key);
      if (verdict === undefined) verdicts.set(key, (verdict = readings.verdict(supposedBy(open, known))));
      return verdict;
    },
  };
}

function supposedBy(open: readonly Open[], known: Known): Map<string, Scalar> {
  return new Map(
    open.flatMap(({ fact, replies }, index) => {
      const reply = known[index] ?? null;
      return reply === null ? [] : [[fact.key, replies[reply]!.value] as const];
    }),
  );
}

function asked(lattice: Lattice, { fact, replies }: Open, index: number): AskedQuestion {
  const { key, question, mayAnswer, neededBy } = fact;
  return {
    fact: key,
    question,
    mayAnswer,
    neededBy,
    replies,
    settles: settles(lattice, nothingKnown(lattice), index),
  };
}

function treeFrom(least: LeastExpected, open: readonly Open[], known: Known): QuestionNode {
  const { ask } = least.step(known);
  if (ask === null || isSettled(least.lattice, known)) return { verdict: least.lattice.verdict(known) };
  const { fact, replies } = open[ask]!;
  return {
    ask: fact.key,
    then: replies.map((reply, index) => ({ ...reply, next: treeFrom(least, open, learn(known, ask, index)) })),
  };
}

/** Facts in the order in which they may come up, the first question first. */
function factsIn(tree: QuestionNode, open: readonly Open[]): number[] {
  const found: number[] = [];
  const level: QuestionNode[] = [tree];
  for (let node = level.shift(); node !== undefined; node = level.shift()) {
    if ('verdict' in node) continue;
    const { ask } = node;
    found.push(open.findIndex(({ fact }) => fact.key === ask));
    level.push(...node.then.map(({ next }) => next));
  }
  return [...new Set(found)];
}
