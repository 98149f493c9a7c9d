import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { anyOf } from '../words/words.js';
import { OneQuestion, Questions, useFact } from './questions.js';

type Plan = Schemas['QuestionPlan'];
type Node = Schemas['QuestionNode'];

interface AskNextProps {
  aircraft: string;
  flight: string | null;
  verdict: Schemas['Verdict'];
  answered(): void;
}

/** The one question to ask now, who may answer it, and what still matters after each reply. */
export function AskNext({ aircraft, flight, verdict, answered }: AskNextProps) {
  const asked = verdict.questions.length > 1 && flight !== null;
  const plan = useRead<Plan>(asked ? `/aircraft/${aircraft}/questions?flight=${flight}` : null);
  const [first] = plan.value?.questions ?? [];
  const fact = useFact(first?.fact ?? null);
  if (!asked || plan.value === null || first === undefined || plan.value.method === 'listed') {
    return <Questions aircraft={aircraft} flight={flight} questions={verdict.questions} answered={answered} />;
  }
  const again = () => {
    void plan.readAgain();
    answered();
  };
  return (
    <section>
      <h3>Ask this first</h3>
      <OneQuestion question={first} fact={fact} aircraft={aircraft} flight={flight} answered={again} />
      <After plan={plan.value} />
      <details>
        <summary>All open questions, in this order</summary>
        <ol>
          {plan.value.questions.map(({ fact: key, question, mayAnswer }) => (
            <li key={key}>
              {question} <span class="soft">{mayAnswer.length > 0 && `Ask ${anyOf(mayAnswer)}.`}</span>
            </li>
          ))}
        </ol>
        <p class="soft">{plan.value.model}</p>
      </details>
    </section>
  );
}

/** One line for each reply: what the answer is then, or what is asked next. */
function After({ plan }: { plan: Plan }) {
  const { tree, questions } = plan;
  if (tree === null || !('ask' in tree)) return null;
  const words = (node: Node) =>
    'ask' in node
      ? `then ask: ${questions.find(({ fact }) => fact === node.ask)?.question ?? node.ask}`
      : `the answer is: ${VERDICT_WORDS[node.verdict] ?? node.verdict}`;
  return (
    <ul class="plain-list">
      {tree.then.map(({ words: reply, next }) => (
        <li key={reply}>
          <span class="strong">{reply}</span> – {words(next)}
        </li>
      ))}
    </ul>
  );
}

const VERDICT_WORDS: Record<string, string> = {
  'nothing-open': 'nothing open',
  'may-fly': 'may fly',
  'after-work': 'may fly after work',
  'not-settled': 'not settled',
  'may-not-fly': 'may not fly',
};
