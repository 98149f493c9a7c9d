import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

interface ReasonFormProps {
  title: string;
  /** What follows from it, before it is done. */
  about: string;
  path: string;
  button: string;
  said: string;
  done(): Promise<void>;
}

/** One act on an account that needs nothing but a reason for the record. */
export function ReasonForm({ title, about, path, button, said, done }: ReasonFormProps) {
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'POST', path, body: { reason } }))) return;
    announce(said);
    await done();
  }
  return (
    <details>
      <summary>{title}</summary>
      <form onSubmit={submit}>
        <p>{about}</p>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Why, for the record"
            value={reason}
            onValue={setReason}
            pointer="/reason"
            most={300}
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            {button}
          </button>
        </div>
      </form>
    </details>
  );
}
