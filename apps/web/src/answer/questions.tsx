import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { anyOf } from '../words/words.js';
import { type Fact, FactForm } from './fact-form.js';
import { JudgementForm } from './judgement-form.js';

type Question = Schemas['Verdict']['questions'][number];

interface QuestionsProps {
  aircraft: string;
  flight: string | null;
  questions: Question[];
  /** Asks for the answer anew. */
  answered(): void;
}

/** What is still to be found out: an input where the person may answer, otherwise whom to ask. */
export function Questions({ aircraft, flight, questions, answered }: QuestionsProps) {
  const facts = useRead<Schemas['FactList']>(questions.length === 0 ? null : '/facts');
  if (questions.length === 0) return null;
  return (
    <section>
      <h3>{openWords(questions.length)}</h3>
      {questions.map((question) => (
        <OneQuestion
          key={question.fact}
          question={question}
          fact={facts.value?.facts.find(({ id }) => id === idOf(question.fact)) ?? null}
          aircraft={aircraft}
          flight={flight}
          answered={answered}
        />
      ))}
    </section>
  );
}

interface OneQuestionProps extends Omit<QuestionsProps, 'questions'> {
  question: Question;
  fact: Fact | null;
}

export function OneQuestion({ question, fact, aircraft, flight, answered }: OneQuestionProps) {
  const { roles } = useSession();
  const mine = question.mayAnswer.some((role) => roles.includes(role));
  const judgement = /^judgement\.accepted\[(.+)\]$/.exec(question.fact)?.[1];
  if (mine && judgement !== undefined) {
    const asked = { aircraft, flight, judgement, question: question.question, given: answered };
    return <JudgementForm {...asked} />;
  }
  if (mine && fact && /^(flight|aircraft)\./.test(fact.id)) {
    const asked = { aircraft, flight, fact, factKey: question.fact, question: question.question, answered };
    return <FactForm {...asked} />;
  }
  return <Told question={question} />;
}

/** Questions that are not to be answered here: each with whom to ask. */
export function QuestionsTold({ questions }: { questions: readonly Question[] }) {
  if (questions.length === 0) return null;
  return (
    <section>
      <h3>{openWords(questions.length)}</h3>
      {questions.map((question) => (
        <Told key={question.fact} question={question} />
      ))}
    </section>
  );
}

function Told({ question }: { question: Question }) {
  return (
    <p class="card">
      <span class="strong">{question.question}</span>
      <span class="block">{whoAnswers(question)}</span>
    </p>
  );
}

function openWords(count: number): string {
  return count === 1 ? 'One question is open' : `${count} questions are open`;
}

/** The registered fact behind a key; null while it is read, or when there is none. */
export function useFact(key: string | null): Fact | null {
  const facts = useRead<Schemas['FactList']>(key === null ? null : '/facts');
  return key === null ? null : (facts.value?.facts.find(({ id }) => id === idOf(key)) ?? null);
}

function whoAnswers({ fact, mayAnswer }: Question): string {
  if (fact.startsWith('defect.unit')) return 'Answered by naming the unit on the item itself.';
  if (fact.startsWith('aircraft.configuration')) return `Answered by ${anyOf(mayAnswer)} in the aircraft's data.`;
  return mayAnswer.length === 0 ? 'Answered by what is recorded.' : `Ask ${anyOf(mayAnswer)}.`;
}

/** `flight.minimaNeed[34-51-11]` asks for the fact `flight.minimaNeed`. */
function idOf(key: string): string {
  return key.split('[')[0] ?? key;
}
