import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { DeadlineWords } from '../item/deadline-words.js';
import { neverSigned } from '../item/work-address.js';
import { StateWords } from '../item/state-words.js';
import { ProjectedWords } from './projected-words.js';
import { endsOf, TimeLine } from './time-line.js';
import { TimeLineKey } from './time-line-key.js';
import { type Scale, scaleFor } from './time-line-scale.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Finder } from '../shell/finder.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted, itemName } from '../words/words.js';

type Line = Schemas['DefectLine'];

/** Every open item of the fleet by what is left of it; what is not answered stands first. */
export function OpenItemsPage() {
  const { operator } = useSession();
  const list = useRead<Schemas['DefectList']>('/defects');
  useLive(list);
  return (
    <Page title="Open items" aside={list.value && `as of ${withOffset(list.value.at, operator.base)}`}>
      <p>
        <a href="/repeats">Work owed again and again</a>: repeated procedures and inspections, due and missed.
      </p>
      <p>
        <a href="/extensions">Extensions</a>: what was asked for and granted, and which notices are owed.
      </p>
      <p>
        <a href="/reminders">Reminders</a>: where they go, what was sent, what could not be delivered.
      </p>
      <p>
        <a href="/cards">Work cards</a>: what each was written from, and which wait for a newer revision of the
        manual.
      </p>
      <p>
        <a href="/zone-data">Time-zone data</a>: deadlines that newer data ends at another instant.
      </p>
      <div class="buttons">
        <a class="button" href="/api/defects.csv" download="open-items.csv">
          This list for a spreadsheet
        </a>
      </div>
      <Read of={list}>
        {({ at, defects }) =>
          defects.length === 0 ? (
            <p>Nothing is open.</p>
          ) : (
            <Finder of={defects} textOf={wordsOf} hint="By aircraft, item, system or basis.">
              {(items) => <ItemTable items={items} scale={scaleOf(at, defects)} />}
            </Finder>
          )
        }
      </Read>
    </Page>
  );
}

const wordsOf = (item: Line): string =>
  [item.number, itemName(item), item.description, item.entry, item.basis].filter(Boolean).join(' ');

/** One line of time for all items, so that they can be compared. */
function scaleOf(at: string, defects: Line[]): Scale {
  const ends = defects.flatMap(({ deadline }) => Object.values(endsOf(deadline)));
  return scaleFor(
    at,
    ends.filter((end) => end !== null),
  );
}

function ItemTable({ items, scale }: { items: readonly Line[]; scale: Scale }) {
  return (
    <>
      <TimeLineKey scale={scale} />
      <table class="stack">
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">What</th>
            <th scope="col">Stands</th>
            <th scope="col">What is left</th>
            <th scope="col">Owed</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <ItemRow key={item.id} item={item} scale={scale} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function ItemRow({ item, scale }: { item: Line; scale: Scale }) {
  const { operator } = useSession();
  const owed = neverSigned(item).length;
  return (
    <tr>
      <th scope="row">
        <a class="registration" href={`/defects/${item.id}`}>
          {item.number}
        </a>
      </th>
      <Cell head="What">
        {item.entry === null ? item.description : itemName(item)}
        {item.basis && <span class="soft block">{item.basis}</span>}
      </Cell>
      <Cell head="Stands">
        <StateWords state={item.state} />
      </Cell>
      <Cell head="What is left">
        {item.deadline ? (
          <div>
            <DeadlineWords deadline={item.deadline} />
            {item.deadline.projected && <ProjectedWords projected={item.deadline.projected} />}
            <TimeLine deadline={item.deadline} scale={scale} />
          </div>
        ) : (
          `Written up ${withOffset(item.recordedAt, operator.base)}`
        )}
      </Cell>
      <Cell head="Owed">{counted(owed, 'signature', 'signatures', 'nothing')}</Cell>
    </tr>
  );
}
