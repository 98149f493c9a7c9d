import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { minutesWords, roleWords } from '../words/words.js';
import { workInShort } from './why.js';

type Verdict = Schemas['Verdict'];

interface WorkToDoProps {
  verdict: Verdict;
  /** Open items of the aircraft, to lead to the page where their work is signed. */
  items: readonly Schemas['DefectLine'][];
  /** Planned off-block, ISO 8601. */
  offBlockAt: string | null;
}

/** What is still to be done before the flight: how long, and who does it. */
export function WorkToDo({ verdict, items, offBlockAt }: WorkToDoProps) {
  const { work, workMinutes, earliestOffBlockAt } = verdict;
  const { operator } = useSession();
  if (work.length === 0) return null;
  return (
    <section>
      <h3>
        To do before it: {work.length} {work.length === 1 ? 'thing' : 'things'}
        {workMinutes !== null && workMinutes > 0 ? `, ${minutesWords(workMinutes)}` : ''}
      </h3>
      <ol class="work">
        {work.map((one) => (
          <li key={`${one.work} ${one.defect}`}>
            <WorkText work={one} items={items} />{' '}
            <span class="soft">
              {roleWords(one.by)}
              {one.minutes === 0 ? '' : `, ${minutesWords(one.minutes)}`}
              {one.needsPersonAtStation ? ', at the station for this departure' : ''}
            </span>
          </li>
        ))}
      </ol>
      {earliestOffBlockAt && workMinutes !== null && workMinutes > 0 && (
        <p>
          {Date.parse(earliestOffBlockAt) === Date.parse(offBlockAt ?? '')
            ? 'Begun now, it is done before off-block.'
            : `Begun now, one after the other: off blocks not before ${withOffset(earliestOffBlockAt, operator.base)}.`}
        </p>
      )}
    </section>
  );
}

function WorkText({ work, items }: { work: Verdict['work'][number]; items: WorkToDoProps['items'] }) {
  const href = signingPage(work, items);
  const text = workInShort(work.text);
  return href === null ? <>{text}</> : <a href={href}>{text}</a>;
}

/** Work of a row that is recorded has a page; what is only tried has none. */
function signingPage({ work, defect }: Verdict['work'][number], items: WorkToDoProps['items']): string | null {
  const item = items.find(({ id }) => id === defect);
  if (item?.basis === null || item === undefined || item.row === null) return null;
  if (!work.startsWith(`${item.entry}/${item.row}/`)) return null;
  const last = work.split('/').at(-1) ?? '';
  if (last === 'placard') return `/defects/${item.id}/placard`;
  return item.work.some((one) => one.work === work) ? `/defects/${item.id}/procedures/${last}` : null;
}
