import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { carryOver } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';

const EMPTY = { manual: '', task: '', revision: '', issuedOn: '' };

/** Records that a manual was revised. From then on cards written from an older revision wait to be confirmed. */
export function RevisionPage() {
  const { route } = useLocation();
  const { send, sending, problem } = useAct();
  const [said, setSaid] = useState(EMPTY);
  const set = (key: keyof typeof EMPTY) => (value: string) => setSaid({ ...said, [key]: value });

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const { task, ...rest } = said;
    const body = { ...rest, ...(task.trim() === '' ? {} : { task }) };
    if (!(await send<Schemas['ManualRevision']>({ method: 'POST', path: '/manual-revisions', body }))) return;
    const title = `Revision ${said.revision} of ${said.manual} is recorded.`;
    carryOver({ title, lines: ['Cards written from an older one wait to be confirmed.'] });
    route('/cards');
  }

  return (
    <Page title="A manual was revised" back={{ href: '/cards', text: 'Work cards' }}>
      <p>
        As soon as it is recorded, no card written from an older revision is signed before an authorised person held
        it against this one. What was signed before stays signed.
      </p>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Manual"
            hint="As the cards cite it"
            value={said.manual}
            onValue={set('manual')}
            pointer="/manual"
            required
          />
          <Field
            label="Task"
            hint="As the cards cite it. Empty: the whole manual was revised."
            value={said.task}
            onValue={set('task')}
            pointer="/task"
          />
          <Field
            label="Revision"
            value={said.revision}
            onValue={set('revision')}
            pointer="/revision"
            required
            short
          />
          <Field
            label="Day it was issued"
            type="date"
            value={said.issuedOn}
            onValue={set('issuedOn')}
            pointer="/issuedOn"
            required
            short
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Record it
          </button>
        </div>
      </form>
    </Page>
  );
}
