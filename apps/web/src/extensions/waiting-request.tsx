import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { Field } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Asked } from './extension-states.js';

interface WaitingProps {
  defect: string;
  line: Schemas['ExtensionLine'];
  seen: string | null;
  done(said: string): void;
  readAgain(): void;
}

/** A request that waits: another person grants it by a signature, or it is declined or withdrawn with the reason. */
export function WaitingRequest({ defect, line, seen, done, readAgain }: WaitingProps) {
  const { person } = useSession();
  const own = line.asked.by === person.name;
  return (
    <section class="card">
      <h2>A request waits</h2>
      <Asked asked={line.asked} />
      {own ? (
        <p>
          <span class="state dashed">Not yours to grant</span> Another authorised person grants it, before the
          interval ends.
        </p>
      ) : (
        <SignForm<Schemas['ActDone']>
          statementPath={`/defects/${defect}/statement?act=extend`}
          path={`/defects/${defect}/extension`}
          seen={seen}
          readAgain={readAgain}
          body={() => ({})}
          button="Sign: grant the extension"
          done={() => done('The extension is granted.')}
        />
      )}
      <Closing defect={defect} seen={seen} own={own} done={done} />
    </section>
  );
}

interface ClosingProps extends Pick<WaitingProps, 'defect' | 'seen' | 'done'> {
  own: boolean;
}

function Closing({ defect, seen, own, done }: ClosingProps) {
  const [because, setBecause] = useState('');
  const { send, sending, problem } = useAct();
  async function close(event: Event): Promise<void> {
    event.preventDefault();
    const path = `/defects/${defect}/extension-request/closed`;
    if (!(await send({ method: 'POST', path, body: { because }, seen }))) return;
    done(own ? 'The request is withdrawn.' : 'The request is declined.');
  }
  return (
    <details>
      <summary>{own ? 'Withdraw it' : 'Decline it'}</summary>
      <form onSubmit={close}>
        <Field label="Why" lines={2} most={1000} required value={because} onValue={setBecause} pointer="/because" />
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button disabled={sending}>{own ? 'Withdraw the request' : 'Decline the request'}</button>
        </div>
      </form>
    </details>
  );
}
