import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { minutesWords } from '../words/words.js';
import { AnswerWords } from './answer-words.js';
import { AskNext } from './ask-next.js';
import { ConditionLine } from './condition-tree.js';
import { Questions, QuestionsTold } from './questions.js';
import { itemOf, type WhyLine, whyLines } from './why.js';
import { WhatHelps } from './what-helps.js';
import { WhyList } from './why-list.js';
import { WorkToDo } from './work-to-do.js';

type Verdict = Schemas['Verdict'];

interface AnswerBoxProps {
  verdict: Verdict;
  aircraft: string;
  /** Which flight it is about, in words. */
  about: string;
  /** Planned off-block, ISO 8601; null without a flight. */
  offBlockAt: string | null;
  items?: readonly Schemas['DefectLine'][];
  /** Asks for the answer anew, after a question was answered. */
  answered(): void;
  /** `<entry>/<row>/` of a row that is tried: its provisos are shown one by one. */
  tried?: string;
  /** What would be, not what is: questions are told, and answered elsewhere. */
  supposed?: boolean;
  /** On a page of its own: every condition open, what would help, and which question to ask first. */
  whole?: boolean;
}

const HELPED = new Set(['may-not-fly', 'not-settled']);

/** May it fly, and why: what refuses it, what is open, what is to be done, and what was not looked at. */
export function AnswerBox({
  verdict,
  aircraft,
  about,
  offBlockAt,
  items = [],
  tried,
  answered,
  supposed = false,
  whole = false,
}: AnswerBoxProps) {
  const { operator } = useSession();
  const { flight, questions, validUntil, notLookedAt } = verdict;
  return (
    <section class={`answer ${verdict.verdict}`} aria-label={`Answer for ${about}`}>
      <p>
        <AnswerWords code={verdict.verdict} words={verdict.words} /> <span class="about">{about}</span>
      </p>
      {verdict.reason !== null && verdict.verdict === 'not-settled' && <GivenUp />}
      <Why verdict={verdict} tried={tried} />
      {(whole || supposed) && HELPED.has(verdict.verdict) && (
        // Read anew with each answer: what helped before a reply may help no more.
        <WhatHelps key={verdict.at} aircraft={aircraft} verdict={verdict} items={items} />
      )}
      {tried !== undefined && <Provisos verdict={verdict} tried={tried} />}
      {supposed && <QuestionsTold questions={questions} />}
      {!supposed && whole && <AskNext aircraft={aircraft} flight={flight} verdict={verdict} answered={answered} />}
      {!supposed && !whole && (
        <Questions aircraft={aircraft} flight={flight} questions={questions} answered={answered} />
      )}
      <WorkToDo work={verdict.work} items={items} title="To do before it" />
      <Earliest verdict={verdict} offBlockAt={offBlockAt} />
      {verdict.items.length > 0 && <Conditions verdict={verdict} open={whole} />}
      {verdict.refusedRows.length > 0 && verdict.verdict !== 'may-not-fly' && <RefusedRows verdict={verdict} />}
      <p class="cover">
        {validUntil && (
          <span class="block">
            Good until {withOffset(validUntil.at, operator.base)}: {validUntil.because}.
          </span>
        )}
        <span class="block">Not looked at: {notLookedAt.join('; ')}.</span>
      </p>
    </section>
  );
}

/** Whether the work fits before the planned off-block, when it is begun now. */
function Earliest({ verdict, offBlockAt }: { verdict: Verdict; offBlockAt: string | null }) {
  const { operator } = useSession();
  const { earliestOffBlockAt, lateMinutes, workMinutes } = verdict;
  if (!earliestOffBlockAt || !workMinutes || offBlockAt === null) return null;
  if (!lateMinutes) return <p>Begun now, it is done before off-block.</p>;
  return (
    <p class="strong">
      Late by {minutesWords(lateMinutes)}: begun now, off blocks not before{' '}
      {withOffset(earliestOffBlockAt, operator.base)}.
    </p>
  );
}

/** Neither yes nor no: the search ended before it had looked at everything. */
function GivenUp() {
  return (
    <p class="caution">
      <strong>This was not worked out to the end.</strong> There are too many ways to choose rows, or to read what is
      open, and the search stopped at its budget of steps. It is neither a yes nor a no. Name the failed units, fix or
      answer something and ask again, or let maintenance control judge it by the MEL itself.
    </p>
  );
}

/** What decides it. What is only to be done stands in the list of work, and is not said twice. */
function Why({ verdict, tried }: { verdict: Verdict; tried: string | undefined }) {
  const code = verdict.verdict;
  const said = ({ key }: WhyLine) => tried === undefined || !isProviso(verdict, key, tried);
  const refused = code === 'may-not-fly' || code === 'not-settled' ? whyLines(verdict, 'refused').filter(said) : [];
  const open = code === 'may-not-fly' ? [] : whyLines(verdict, 'open').filter(said);
  const rest =
    code === 'may-fly' ||
    code === 'nothing-open' ||
    whyLines(verdict, 'refused').length + whyLines(verdict, 'open').length + verdict.work.length === 0;
  return (
    <>
      <WhyList lines={[...refused, ...open]} />
      {rest &&
        verdict.reasons.map((reason) => (
          <p key={reason}>
            <Said text={reason} />
          </p>
        ))}
    </>
  );
}

function provisosOf({ items }: Verdict, tried: string) {
  const conditions = items.flatMap((item) => item.conditions.map((condition) => ({ condition, unit: item.unit })));
  return conditions.filter(({ condition: { kind, id } }) => kind === 'proviso' && id.startsWith(tried));
}

function isProviso(verdict: Verdict, key: string, tried: string): boolean {
  return provisosOf(verdict, tried).some(({ condition, unit }) => `${condition.id} ${unit}` === key);
}

function Provisos({ verdict, tried }: { verdict: Verdict; tried: string }) {
  const provisos = provisosOf(verdict, tried);
  if (provisos.length === 0) return null;
  return (
    <>
      <h3>Provisos</h3>
      <ul class="plain-list">
        {provisos.map(({ condition, unit }) => (
          <ConditionLine key={condition.id + unit} condition={condition} />
        ))}
      </ul>
    </>
  );
}

function Conditions({ verdict: { items }, open }: { verdict: Verdict; open: boolean }) {
  return (
    <details open={open}>
      <summary>Why, condition by condition</summary>
      {items.map((item) => (
        <div key={`${item.entry} ${item.unit} ${item.row}`}>
          <h3>
            {itemOf(item)}
            {item.cause.kind === 'considered-inoperative' && (
              <span class="soft"> considered inoperative with {item.cause.by.entry}</span>
            )}
          </h3>
          <ul class="plain-list">
            {item.conditions.map((condition) => (
              <ConditionLine key={condition.id + condition.kind} condition={condition} />
            ))}
          </ul>
        </div>
      ))}
    </details>
  );
}

function RefusedRows({ verdict: { refusedRows } }: { verdict: Verdict }) {
  return (
    <details>
      <summary>Rows that cannot be used</summary>
      <ul>
        {refusedRows.map(({ entry, unit, row, because }) => (
          <li key={`${entry} ${unit} ${row}`}>
            <span class="strong">
              {entry}, unit {unit}, row {row}:
            </span>{' '}
            <Said text={because.join('; ')} />
          </li>
        ))}
      </ul>
    </details>
  );
}
