import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { FileField } from '../shell/file-field.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { calendarDayText, withOffset } from '../words/time.js';

type Revisions = Schemas['MelRevisions'];

/** The revisions of the MEL that were loaded, and loading the next one. */
export function MelPage() {
  const revisions = useRead<Revisions>('/mel');
  const { roles, operator } = useSession();
  return (
    <Page title="MEL">
      <Read of={revisions}>
        {({ revisions: all }) => (
          <>
            {all.length === 0 && <p>No MEL was loaded: no aircraft can be judged.</p>}
            <ul class="plain-list cards">
              {all.map((one) => (
                <li key={one.id} class="card">
                  <h2>
                    {one.document}, revision {one.revision}
                  </h2>
                  <p>
                    For {one.aircraftType}, effective {calendarDayText(one.effectiveOn)}.{' '}
                    {one.inForce ? <strong>In force.</strong> : 'Not in force any more.'}
                  </p>
                  <p class="soft">
                    Loaded {withOffset(one.loadedAt, operator.base)}. SHA-256{' '}
                    <span class="breakable">{one.sha256}</span>
                  </p>
                </li>
              ))}
            </ul>
          </>
        )}
      </Read>
      {roles.includes('mel-engineer') ? (
        <LoadForm loaded={revisions.readAgain} />
      ) : (
        <p class="soft">A MEL engineer loads a revision.</p>
      )}
    </Page>
  );
}

function LoadForm({ loaded }: { loaded(): Promise<void> }) {
  const [file, setFile] = useState<File | null>(null);
  const [warnings, setWarnings] = useState<string[]>([]);
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (file === null) return;
    // What the last load warned of says nothing of this one.
    setWarnings([]);
    const body = { file: file.name, text: await file.text() };
    const answer = await send<Schemas['MelLoaded']>({ method: 'POST', path: '/mel', body });
    if (!answer) return;
    const { revision, entries, warnings: told } = answer.body;
    setWarnings(told);
    announce(`${revision.document}, revision ${revision.revision}, is in force with ${entries} entries.`);
    await loaded();
  }
  return (
    <form class="card" onSubmit={(event) => void submit(event)}>
      <h2>Load a revision</h2>
      <p>
        A file for one aircraft type, YAML or JSON. It is checked whole: a bad one loads nothing, and every error is
        named. A good one comes into force at once; what is deferred stays under the row that was signed.
      </p>
      <FileField id="mel-file" onFile={setFile} />
      <ProblemBox problem={problem} />
      {warnings.length > 0 && (
        <section role="status">
          <h3>It is in force. Look at this</h3>
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </section>
      )}
      <div class="buttons">
        <button class="main" disabled={sending}>
          Check it and put it in force
        </button>
      </div>
    </form>
  );
}
