import type { Schemas } from '../api/client.js';
import { isOf, pageOf } from '../item/work-address.js';
import { counted, minutesWords, roleWords } from '../words/words.js';
import { workInShort } from './why.js';

type Verdict = Schemas['Verdict'];

interface WorkToDoProps {
  work: Verdict['work'];
  /** Open items of the aircraft, to lead to the page where their work is signed. */
  items: readonly Schemas['DefectLine'][];
  title: string;
}

/** What is still to be done before a flight: how long, and who does it. */
export function WorkToDo({ work, items, title }: WorkToDoProps) {
  if (work.length === 0) return null;
  const minutes = work.reduce<number | null>(
    (sum, one) => (sum === null || one.minutes === null ? null : sum + one.minutes),
    0,
  );
  return (
    <section>
      <h3>
        {title}: {counted(work.length, 'thing', 'things', '')}
        {minutes ? `, ${minutesWords(minutes)}` : ''}
      </h3>
      <ol class="work">
        {work.map((one) => (
          <li key={`${one.work} ${one.defect}`}>
            <WorkText work={one} items={items} />{' '}
            <span class="soft">
              {roleWords(one.by)}
              {one.minutes === 0 ? '' : `, ${minutesWords(one.minutes)}`}
              {one.needs.length > 0 && `, after ${one.needs.join(' and ')}`}
              {one.needsPersonAtStation ? ', at the station for this departure' : ''}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function WorkText({ work, items }: { work: Verdict['work'][number]; items: WorkToDoProps['items'] }) {
  const href = items.map((item) => (isOf(work, item) ? pageOf(item, work.work) : null)).find((page) => page !== null);
  const text = workInShort(work.text);
  return href === undefined ? <>{text}</> : <a href={href}>{text}</a>;
}
