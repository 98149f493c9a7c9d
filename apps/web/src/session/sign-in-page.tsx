import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';

/** Stands in place of every page until somebody is signed in. */
export function SignInPage({ signedIn }: { signedIn(): Promise<void> }) {
  const [name, setName] = useState('');
  const [secret, setSecret] = useState('');
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const answer = await send({ method: 'POST', path: '/session', body: { name, secret } });
    if (answer) await signedIn();
  }

  return (
    <Page title="Sign in">
      <form onSubmit={submit}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Sign-in name"
            value={name}
            onValue={setName}
            pointer="/name"
            required
            autoComplete="username"
          />
          <Field
            label="Secret"
            type="password"
            value={secret}
            onValue={setSecret}
            pointer="/secret"
            required
            autoComplete="current-password"
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            {sending ? 'Signing in…' : 'Sign in'}
          </button>
        </div>
      </form>
    </Page>
  );
}
