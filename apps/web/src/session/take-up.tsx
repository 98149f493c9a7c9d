import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { type How, proofOf, Prove, waysOf } from './prove.js';
import { useSession } from './session.js';

type Seen = Schemas['InvitationSeen'];

/** Takes up an invitation of one more operator, signed. */
export function TakeUp() {
  const { means, readAgain } = useSession();
  const [code, setCode] = useState('');
  const [seen, setSeen] = useState<Seen | null>(null);
  const [secret, setSecret] = useState('');
  const [how, setHow] = useState<How>(waysOf(means)[0] ?? 'secret');
  const looking = useAct();
  const taking = useAct();
  async function look(event: Event): Promise<void> {
    event.preventDefault();
    const answer = await looking.send<Seen>({ method: 'POST', path: '/session/invitation', body: { code } });
    setSeen(answer?.body ?? null);
  }
  async function takeUp(event: Event): Promise<void> {
    event.preventDefault();
    if (seen === null) return;
    const { statement, operator } = seen;
    const sign = () => proofOf(how, secret, statement);
    const act = async () =>
      ({ method: 'POST', path: '/session/memberships', body: { code, sign: await sign() } }) as const;
    if (!(await taking.send(act))) return;
    announce(`You work for ${operator} from now on. Change operator at the top.`);
    setCode('');
    setSeen(null);
    setSecret('');
    await readAgain();
  }
  return (
    <section>
      <h2>One more operator</h2>
      <details>
        <summary>Take up an invitation</summary>
        <form onSubmit={(event) => void look(event)}>
          <p>An administrator of another operator on this server gave you its code.</p>
          <FieldErrors.Provider value={looking.problem?.errors ?? []}>
            <Field label="Code of the invitation" value={code} onValue={setCode} pointer="/code" most={60} required />
          </FieldErrors.Provider>
          <ProblemBox problem={looking.problem} />
          <div class="buttons">
            <button disabled={looking.sending}>See what it is for</button>
          </div>
        </form>
        {seen && (
          <form onSubmit={(event) => void takeUp(event)}>
            <p class="strong">{seen.statement}</p>
            <FieldErrors.Provider value={taking.problem?.errors ?? []}>
              <Prove means={means} how={how} onHow={setHow} secret={secret} onSecret={setSecret} />
            </FieldErrors.Provider>
            <ProblemBox problem={taking.problem} />
            <div class="buttons">
              <button class="main" disabled={taking.sending}>
                Sign: work for {seen.operator}
              </button>
            </div>
          </form>
        )}
      </details>
    </section>
  );
}
