import { useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { Changed } from './changed.js';
import { EngineCounts } from './engine-counts.js';
import { EngineForm } from './engine-form.js';
import { hoursText } from './hours.js';

type View = Schemas['EnginesView'];
type Counter = View['counters'][number];

/** Signed by an authorised person; who holds no such role reads. */
const MAY_STATE = ['technician', 'engineer'];

/** The counters of each engine: read by a person, and since then by what was flown. */
export function EnginesPage() {
  const { id = '' } = useRoute().params;
  const { roles } = useSession();
  const engines = useRead<View>(`/aircraft/${id}/engines`);
  const [written, setWritten] = useState<Schemas['EngineCounted'] | null>(null);
  const mayState = roles.some((role) => MAY_STATE.includes(role));
  const again = (after: Schemas['EngineCounted']) => {
    setWritten(after);
    void engines.readAgain();
  };
  return (
    <Page title="Engines" aside={engines.value?.registration} back={{ href: `/aircraft/${id}/flown`, text: 'Flown' }}>
      <p>
        Hours and cycles of each engine by itself. An interval on one engine counts what that engine used; where
        nothing is stated here, an engine used what the aircraft used.
      </p>
      {written && (
        <section class="done-box" role="status">
          <p class="strong">It is signed and counted.</p>
          <Changed items={written.items} answers={written.answers} />
        </section>
      )}
      <Read of={engines}>
        {(view) => (
          <>
            {view.counters.length === 0 ? (
              <p class="strong">Nobody has read the counters of an engine yet: they are not known.</p>
            ) : (
              <CounterTable counters={view.counters} />
            )}
            {mayState && (
              <EngineForm aircraft={id} of={null} done={again} readAgain={() => void engines.readAgain()} />
            )}
            <EngineCounts aircraft={id} counts={view.counts} mayState={mayState} done={again} />
          </>
        )}
      </Read>
    </Page>
  );
}

function CounterTable({ counters }: { counters: Counter[] }) {
  const { operator } = useSession();
  return (
    <table class="stack">
      <thead>
        <tr>
          <th scope="col">Engine</th>
          <th scope="col">Hours</th>
          <th scope="col">Cycles</th>
          <th scope="col">Read last</th>
          <th scope="col">Used since</th>
        </tr>
      </thead>
      <tbody>
        {counters.map(({ position, serial, minutes, cycles, read, since, differed }) => (
          <tr key={position}>
            <th scope="row">
              <span class="registration">Engine {position}</span>
              <span class="soft block">{serial}</span>
            </th>
            <Cell head="Hours">
              <span class="strong">{hoursText(minutes)}</span>
            </Cell>
            <Cell head="Cycles">
              <span class="strong">{cycles}</span>
            </Cell>
            <Cell head="Read last">
              {hoursText(read.minutes)}, {counted(read.cycles, 'cycle', 'cycles', 'no cycle')}
              <span class="soft block">{withOffset(read.at, operator.base)}</span>
              {differed !== null && <Differed differed={differed} />}
            </Cell>
            <Cell head="Used since">
              {hoursText(since.minutes)}, {counted(since.cycles, 'cycle', 'cycles', 'no cycle')}
            </Cell>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Differed({ differed: { minutes, cycles } }: { differed: NonNullable<Counter['differed']> }) {
  if (minutes === 0 && cycles === 0) return <span class="soft block">As counted from the reading before.</span>;
  return (
    <span class="block">
      <span class="strong">Not as counted</span> from the reading before: {hoursText(minutes)}, {cycles} cycles. What
      was read beyond the count is used up.
    </span>
  );
}
