import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { newPasskey, passkeysHere } from './passkey.js';
import { type How, proofOf, Prove, waysOf } from './prove.js';
import { useSession } from './session.js';

type Passkeys = Schemas['Passkeys'];

/** Several may be held, a telephone and a key ring; a lost one is removed, and the others stay. */
export function YourPasskeys() {
  const passkeys = useRead<Passkeys>('/passkeys');
  const { readAgain } = useSession();
  async function changed(): Promise<void> {
    await passkeys.readAgain();
    await readAgain();
  }
  return (
    <section>
      <h2>Passkeys</h2>
      <p>A passkey on a telephone or a key ring signs you in, and signs in your name, in place of the secret.</p>
      <Read of={passkeys}>
        {(view) => (
          <>
            <ul class="plain-list">
              {view.passkeys.map((one) => (
                <Held key={one.id} passkey={one} removed={changed} />
              ))}
            </ul>
            {passkeysHere() ? (
              <Add statement={view.statement} added={changed} />
            ) : (
              <p>Passkeys work only where these pages are opened over https.</p>
            )}
          </>
        )}
      </Read>
    </section>
  );
}

function Held({ passkey, removed }: { passkey: Passkeys['passkeys'][number]; removed(): Promise<void> }) {
  const { operator } = useSession();
  const { send, sending, problem } = useAct();
  const { id, label, createdAt, lastUsedAt } = passkey;
  async function remove(): Promise<void> {
    if (!(await send({ method: 'DELETE', path: `/passkeys/${id}` }))) return;
    announce(`The passkey ${label} is removed.`);
    await removed();
  }
  return (
    <li>
      <span class="strong">{label}</span>
      <span class="soft block">
        Added {withOffset(createdAt, operator.base)}
        {lastUsedAt && `, last used ${withOffset(lastUsedAt, operator.base)}`}
      </span>
      <ProblemBox problem={problem} />
      <button type="button" disabled={sending} onClick={() => void remove()}>
        Remove {label}
      </button>
    </li>
  );
}

function Add({ statement, added }: { statement: string; added(): Promise<void> }) {
  const { means } = useSession();
  const [label, setLabel] = useState('');
  const [secret, setSecret] = useState('');
  const [how, setHow] = useState<How>(waysOf(means)[0] ?? 'secret');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const done = await send(async () => {
      const passkey = await newPasskey('/passkeys/challenge', await proofOf(how, secret, statement));
      return { method: 'POST', path: '/passkeys', body: { label, passkey } };
    });
    if (!done) return;
    setLabel('');
    setSecret('');
    announce(`The passkey ${label} is added.`);
    await added();
  }
  return (
    <details>
      <summary>Add a passkey</summary>
      <form onSubmit={submit}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field label="What you call it" value={label} onValue={setLabel} pointer="/label" most={60} required />
          <blockquote>{statement}</blockquote>
          <Prove means={means} how={how} onHow={setHow} secret={secret} onSecret={setSecret} />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Add this passkey
          </button>
        </div>
      </form>
    </details>
  );
}
