import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { FileTextField } from '../shell/file-text-field.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { counted } from '../words/words.js';
import { MAY_PLAN } from './plan-page.js';

type Planned = Schemas['FlightsPlanned'];

/** Signs; of bytes no more, since a list has no other letters than A to Z. */
const MOST = 60_000;
const HEAD = 'flight,from,to,departure,arrival,aircraft';
const EXAMPLE = 'QX 107,QXA,QXB,2026-12-01T05:30Z,2026-12-01T07:10Z,Q-ABC';

/** A list of flights is planned whole, pasted from a spreadsheet or read from a file. */
export function PlanListPage() {
  const { roles } = useSession();
  const may = roles.some((role) => MAY_PLAN.includes(role));
  return (
    <Page title="Plan a list of flights" back={{ href: '/control', text: 'Fleet' }}>
      <p>
        One flight a line, under a first line that names the columns. Times are in UTC and say so by a Z at the end:
        one without it may be the local time of a spreadsheet, and is refused. The list is checked whole: if one line
        is wrong, nothing of it is planned, and every fault is named by line and column. A flight that is planned just
        so already is left as it is.
      </p>
      <p class="breakable soft">
        {HEAD}
        <span class="block">{EXAMPLE}</span>
      </p>
      {may ? <ListForm /> : <p>Maintenance control or a dispatcher plans flights.</p>}
    </Page>
  );
}

function ListForm() {
  const [text, setText] = useState('');
  const [done, setDone] = useState<Planned | null>(null);
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    setDone(null);
    const answer = await send<Planned>({ method: 'POST', path: '/flight-plans', body: { text } });
    if (answer === null) return;
    setDone(answer.body);
    setText('');
    announce(doneWords(answer.body));
  }

  return (
    <form class="card" onSubmit={(event) => void submit(event)}>
      <FileTextField
        id="flights-file"
        accept=".csv,.tsv,.txt"
        label="Take them from a file (if there is one)"
        most={MOST}
        onText={setText}
      />
      <Field
        label="The list"
        hint="Commas, semicolons or tabs between the columns"
        lines={10}
        most={MOST}
        value={text}
        onValue={setText}
        required
      />
      <ProblemBox problem={problem} />
      {problem && <p class="strong">Nothing of the list was planned.</p>}
      {done && <Done done={done} />}
      <div class="buttons">
        <button class="main" disabled={sending}>
          {sending ? 'Checking…' : 'Check it and plan the flights'}
        </button>
      </div>
    </form>
  );
}

function Done({ done }: { done: Planned }) {
  return (
    <div class="done-box">
      <p class="strong">{doneWords(done)}</p>
      {done.aircraft.length > 0 && (
        <p>
          See what they can fly:{' '}
          {done.aircraft.map(({ id, registration }, index) => (
            <>
              {index > 0 && ', '}
              <a href={`/aircraft/${id}/day`}>{registration}</a>
            </>
          ))}
        </p>
      )}
    </div>
  );
}

function doneWords({ planned, kept }: Planned): string {
  const was = kept === 0 ? '' : ` ${counted(kept, 'was', 'were', 'None')} planned just so already.`;
  return `${counted(planned, 'flight is', 'flights are', 'No flight is')} planned.${was}`;
}
