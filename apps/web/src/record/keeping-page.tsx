import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { dayText } from '../words/time.js';
import { Holds } from './holds.js';

interface Kept {
  id: string;
  what: string;
  href: string;
  since: string;
  keptUntil: string;
  notedAt: string | null;
  held: boolean;
}

/** How long things are kept, and what is past it. */
export function KeepingPage() {
  const kept = useRead<Schemas['Retention']>('/record/retention');
  return (
    <Page title="Periods of keeping" back={{ href: '/record', text: 'The record' }}>
      <Read of={kept}>
        {({ months, says, erasesLeavers, holds, logs, defects, people }) => (
          <>
            <p>
              Logs are kept {months.log} months after their last entry, records of work {months.work} months after
              release. <a href="/settings">Change the periods under settings</a>
            </p>
            <p class="soft">{says}</p>
            <p>
              {erasesLeavers
                ? 'People who left are erased by the program once nothing of them has to be kept. '
                : 'Nobody is erased by the program itself: a person decides that and signs. '}
              <a href="/settings/eraseLeavers">Change that under settings</a>
            </p>
            <Holds holds={holds} defects={defects} changed={kept.readAgain} />
            <Past
              title="Logs"
              none="No log is past its period."
              rows={logs.map(({ registration, ...one }) => ({
                ...one,
                what: registration,
                href: `/aircraft/${one.id}`,
              }))}
            />
            <Past
              title="Closed items"
              none="No closed item is past its period."
              rows={defects.map(({ number, ...one }) => ({ ...one, what: number, href: `/defects/${one.id}` }))}
            />
            <Past
              title="People who left"
              none="Nobody who left is past the period: there is nothing to erase yet."
              rows={people.map(({ name, ...one }) => ({ ...one, what: name, href: '/people' }))}
            />
          </>
        )}
      </Read>
    </Page>
  );
}

function Past({ title, none, rows }: { title: string; none: string; rows: readonly Kept[] }) {
  const { operator } = useSession();
  return (
    <>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p>{none}</p>
      ) : (
        <table class="stack">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Counted from</th>
              <th scope="col">Kept until</th>
              <th scope="col">Stands</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ id, what, href, since, keptUntil, notedAt, held }) => (
              <tr key={id}>
                <th scope="row">
                  <a href={href}>{what}</a>
                </th>
                <Cell head="Counted from">{dayText(since, operator.base)}</Cell>
                <Cell head="Kept until">{dayText(keptUntil, operator.base)}</Cell>
                <Cell head="Stands">
                  {held && <span class="state heavy">Held</span>}
                  <span class="block">
                    {notedAt
                      ? `Noted ${dayText(notedAt, operator.base)}`
                      : 'To be noted at the next look, twice a day'}
                  </span>
                </Cell>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
