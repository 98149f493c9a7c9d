import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { ProblemBox } from '../shell/problem-box.js';
import { type How, proofOf, Prove, waysOf } from './prove.js';
import { useSession } from './session.js';

/** Where the server knows a sign-on of somebody else: one's own account there is linked, by oneself alone. */
export function YourSignOn() {
  const { means } = useSession();
  const offered = useRead<Schemas['SignOn']>('/sign-on').value;
  if (!offered || offered.name === null) return null;
  return (
    <section>
      <h2>{offered.name}</h2>
      {means.signOn === null ? (
        <Link statement={offered.statement} name={offered.name} />
      ) : (
        <p>Your account there is linked: it signs you in, and a fresh sign-on signs in your name.</p>
      )}
    </section>
  );
}

function Link({ statement, name }: { statement: string; name: string }) {
  const { means } = useSession();
  const [secret, setSecret] = useState('');
  const [how, setHow] = useState<How>(waysOf(means)[0] ?? 'secret');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const begun = await send<Schemas['SignOnBegun']>(async () => ({
      method: 'POST',
      path: '/sign-on/link',
      body: await proofOf(how, secret, statement),
    }));
    if (begun) window.location.assign(begun.body.address);
  }
  return (
    <form onSubmit={submit}>
      <blockquote>{statement}</blockquote>
      <Prove means={means} how={how} onHow={setHow} secret={secret} onSecret={setSecret} />
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Link my account at {name}
        </button>
      </div>
    </form>
  );
}
