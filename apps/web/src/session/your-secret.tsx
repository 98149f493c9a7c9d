import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { useSession } from './session.js';

/** A new secret in place of the old one; every other session of one's own ends with it. */
export function YourSecret() {
  const { means } = useSession();
  const [secret, setSecret] = useState('');
  const [fresh, setFresh] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'PUT', path: '/session/secret', body: { secret, fresh } }))) return;
    setSecret('');
    setFresh('');
    announce('Your secret is changed. Every other session of yours has ended.');
  }
  if (!means.secret) return null;
  return (
    <section>
      <h2>Your secret</h2>
      <details>
        <summary>Change it</summary>
        <form onSubmit={submit}>
          <FieldErrors.Provider value={problem?.errors ?? []}>
            <Field
              label="The one you have"
              type="password"
              value={secret}
              onValue={setSecret}
              pointer="/secret"
              autoComplete="current-password"
              required
            />
            <Field
              label="The new one"
              hint="At least 12 characters; three or four words that nobody would guess are good."
              type="password"
              value={fresh}
              onValue={setFresh}
              pointer="/fresh"
              autoComplete="new-password"
              required
            />
          </FieldErrors.Provider>
          <ProblemBox problem={problem} />
          <div class="buttons">
            <button class="main" disabled={sending}>
              Change my secret
            </button>
          </div>
        </form>
      </details>
    </section>
  );
}
