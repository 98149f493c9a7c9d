import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { NobodyYet } from './nobody-yet.js';
import { passkeyFor, passkeysHere } from './passkey.js';
import { SignOnProblem } from './sign-on-problem.js';

/** Without a name and a secret: by a passkey, or where people sign on elsewhere. */
function OtherWays({ signedIn }: { signedIn(): Promise<void> }) {
  const offered = useRead<Schemas['SignOn']>('/sign-on').value;
  const refused = new URLSearchParams(window.location.search).get('problem');
  const { send, sending, problem } = useAct();
  async function byPasskey(): Promise<void> {
    const body = () => passkeyFor('/session/passkey-challenge');
    const done = await send(async () => ({ method: 'POST', path: '/session/passkey', body: await body() }));
    if (done) await signedIn();
  }
  async function elsewhere(): Promise<void> {
    const begun = await send<Schemas['SignOnBegun']>({ method: 'POST', path: '/sign-on', body: {} });
    if (begun) window.location.assign(begun.body.address);
  }
  if (!passkeysHere() && !offered?.name) return null;
  return (
    <section aria-label="Other ways to sign in">
      <ProblemBox problem={problem} />
      {refused && !problem && <SignOnProblem code={refused} />}
      <div class="buttons">
        {passkeysHere() && (
          <button type="button" disabled={sending} onClick={() => void byPasskey()}>
            With a passkey
          </button>
        )}
        {offered?.name && (
          <button type="button" disabled={sending} onClick={() => void elsewhere()}>
            {offered.name}
          </button>
        )}
      </div>
    </section>
  );
}

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
      <NobodyYet />
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
      <OtherWays signedIn={signedIn} />
    </Page>
  );
}
