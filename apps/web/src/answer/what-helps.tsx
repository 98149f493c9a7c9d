import type { ComponentChildren } from 'preact';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from './answer-words.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { useSession } from '../session/session.js';
import { counted, minutesWords } from '../words/words.js';

type Helps = Schemas['WhatHelps'];
type Items = readonly Schemas['DefectLine'][];

interface WhatHelpsProps {
  aircraft: string;
  verdict: Schemas['Verdict'];
  items: Items;
}

/** Where the answer is no, or not settled: the least to fix, rows that would do, and what refuses each row. */
export function WhatHelps({ aircraft, verdict, items }: WhatHelpsProps) {
  const closed = verdict.gates.filter(({ gate, after }) => after === 'F' && gate !== 'combination');
  const asked = closed.length === 0 && verdict.flight !== null && verdict.helps === undefined;
  const helps = useRead<Helps>(asked ? `/aircraft/${aircraft}/what-helps?flight=${verdict.flight}` : null);
  if (closed.length > 0) return <BeforeAllElse items={items} />;
  const told = verdict.helps ?? helps.value;
  if (told !== null && isEmpty(told)) return null;
  const named = namesFor(items, verdict);
  return (
    <section>
      <h3>What would help</h3>
      {told === null ? (
        <Read of={helps}>{() => null}</Read>
      ) : (
        <>
          {told.leastToFix && <LeastToFix least={told.leastToFix} named={named} />}
          {told.betterRows && <OtherRows better={told.betterRows} items={items} named={named} />}
          {told.whyRefused.length > 0 && <WhyRefused refused={told.whyRefused} named={named} />}
        </>
      )}
    </section>
  );
}

function isEmpty({ leastToFix, betterRows, whyRefused }: Helps): boolean {
  return leastToFix === null && betterRows === null && whyRefused.length === 0;
}

/** Whatever else is done, an aircraft with a write-up that nobody has answered does not leave. */
function BeforeAllElse({ items }: { items: Items }) {
  const unanswered = items.filter(({ state }) => state === 'unanswered');
  if (unanswered.length === 0) return null;
  return (
    <section>
      <h3>Before all else</h3>
      <ul class="plain-list">
        {unanswered.map(({ id, number, title }) => (
          <li key={id}>
            <a href={`/defects/${id}`}>
              Answer {number}, {title}
            </a>
            : rectify or defer it.
          </li>
        ))}
      </ul>
    </section>
  );
}

function LeastToFix({ least, named }: { least: NonNullable<Helps['leastToFix']>; named: Named }) {
  const { repairs, isWhole } = least;
  if (repairs.length === 0) {
    return (
      <p class="strong">
        {isWhole ? 'Fixing open items alone does not help.' : 'Nothing was found before the search was given up.'}
      </p>
    );
  }
  return (
    <>
      <h4>
        Least to fix{repairs.length > 1 ? ', any one of these' : ''}
        {isWhole ? '' : ' (these, perhaps others)'}
      </h4>
      <ul class="plain-list">
        {repairs.map(({ defects, minutes }) => (
          <li key={defects.join()}>
            <span class="strong">{named(defects)}</span>
            <span class="block soft">
              {minutes === null ? 'Nobody has said how long it takes.' : minutesWords(minutes)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

interface OtherRowsProps {
  better: NonNullable<Helps['betterRows']>;
  items: Items;
  named: Named;
}

function OtherRows({ better, items, named }: OtherRowsProps) {
  const { operator } = useSession();
  const { answer, rows, shownBest } = better;
  const { earliestOffBlockAt, lateMinutes, work } = answer;
  return (
    <>
      <h4>Other rows would do</h4>
      <p>
        With them: <AnswerWords code={answer.verdict} words={answer.words} />
        {work.length > 0 && `, ${counted(work.length, 'thing', 'things', 'nothing')} to do`}
        {lateMinutes ? `, ${lateMinutes} min late` : ''}
        {earliestOffBlockAt && `, off blocks not before ${withOffset(earliestOffBlockAt, operator.base)}`}.
      </p>
      <ul class="plain-list">
        {rows
          .filter(({ isChange, row }) => isChange && row !== null)
          .map(({ defect, entry, row, signedRow }) => (
            <li key={defect}>
              <RowLink href={items.some(({ id }) => id === defect) ? `/defects/${defect}/entries/${entry}` : null}>
                {signedRow === null ? 'Sign' : `Change from row ${signedRow} to`} row {row}
              </RowLink>{' '}
              for {named([defect])}
            </li>
          ))}
      </ul>
      {!shownBest && <p class="soft">The search was given up at its budget of steps; better rows may exist.</p>}
    </>
  );
}

/** What is only tried has no page. */
function RowLink({ href, children }: { href: string | null; children: ComponentChildren }) {
  return href === null ? <>{children}</> : <a href={href}>{children}</a>;
}

function WhyRefused({ refused, named }: { refused: Helps['whyRefused']; named: Named }) {
  return (
    <details>
      <summary>Why rows are refused, in the fewest conditions</summary>
      <ul>
        {refused.map(({ defect, row, because, isWhole }) => (
          <li key={`${defect} ${row}`}>
            <span class="strong">
              {named([defect])}, row {row}:
            </span>{' '}
            {because.length === 0 && 'not found before the search was given up.'}
            {because.map(({ conditions, openItems }, index) => (
              <span class="block" key={index}>
                {index > 0 && 'or '}
                {conditions.map(({ text }) => `“${text.replace(/[.\s]+$/, '')}”`).join(' and ')}
                {openItems.length > 0 && `, while ${named(openItems)} is open`}
              </span>
            ))}
            {!isWhole && because.length > 0 && <span class="block soft">Perhaps for other reasons too.</span>}
          </li>
        ))}
      </ul>
    </details>
  );
}

type Named = (ids: readonly string[]) => string;

/** Open items by title and number; what is only taken as failed has no number, and goes by its title. */
function namesFor(items: Items, verdict: Schemas['Verdict']): Named {
  const name = (id: string): string => {
    const item = items.find((one) => one.id === id);
    if (item !== undefined) return `${item.title} ${item.units.join(' or ')} (${item.number})`;
    const tried = verdict.items.find(({ cause }) => cause.kind === 'failed' && cause.defect === id);
    return tried === undefined ? 'an item' : `${tried.title} ${tried.unit}`;
  };
  return (ids) => ids.map(name).join(' and ');
}
