import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { withOffset } from '../words/time.js';

interface TellCodeProps {
  address: Schemas['ReminderAddress'];
  changed(): Promise<void>;
}

/** A mailbox that nobody has shown to read: nothing goes there before its code is told. */
export function TellCode({ address, changed }: TellCodeProps) {
  const { operator } = useSession();
  const { id, label, codeSentAt, codeProblem, waitsForCode } = address;
  const [code, setCode] = useState('');
  const telling = useAct();
  const asking = useAct();

  async function tell(event: Event): Promise<void> {
    event.preventDefault();
    const path = `/reminder-addresses/${id}/confirmation`;
    if (!(await telling.send({ method: 'POST', path, body: { code } }))) return;
    announce(`Reminders go to ${label} from now on.`);
    await changed();
  }
  async function another(): Promise<void> {
    if (!(await asking.send({ method: 'POST', path: `/reminder-addresses/${id}/code` }))) return;
    announce('Another code is on its way; the one before is good no longer.');
    await changed();
  }

  return (
    <form onSubmit={tell} aria-label={`Confirm ${label}`}>
      <p>
        <span class="state dashed">Not confirmed</span> No reminder goes there before the code is told that was sent
        there{codeSentAt && waitsForCode && ` ${withOffset(codeSentAt, operator.base)}`}.
      </p>
      {codeProblem && (
        <p class="caution">
          <span class="state heavy">The code is not sent</span> {codeProblem} It is tried again.
        </p>
      )}
      <FieldErrors.Provider value={telling.problem?.errors ?? []}>
        <Field
          label="Code from the mail"
          hint="Eight digits, good for a day"
          value={code}
          onValue={setCode}
          pointer="/code"
          inputMode="numeric"
          most={20}
          required
          short
        />
      </FieldErrors.Provider>
      <ProblemBox problem={telling.problem ?? asking.problem} />
      <div class="buttons">
        <button class="main" disabled={telling.sending}>
          Confirm
        </button>
        <button type="button" disabled={asking.sending} onClick={() => void another()}>
          Send another code
        </button>
      </div>
    </form>
  );
}
