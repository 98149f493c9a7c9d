import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';

interface NoticeFormProps {
  extension: string;
  version: number;
  what: 'sent' | 'acknowledged';
  noted(said: string): void;
}

/** Notes that the notice was sent, or that the authority acknowledged it, with the reference. */
export function NoticeForm({ extension, version, what, noted }: NoticeFormProps) {
  const { operator } = useSession();
  const [when, setWhen] = useState(NO_WALL);
  const [reference, setReference] = useState('');
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const at = instantOf(when, operator.base);
    if (at === null) return;
    const path = `/extensions/${extension}/notice`;
    const body = { what, at, reference };
    if (await send({ method: 'POST', path, body, seen: `"${version}"` })) noted(`Noted: ${what}.`);
  }

  return (
    <details>
      <summary>Note that it was {what}</summary>
      <form onSubmit={submit}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <WallInput what={what} zone={operator.base} value={when} onValue={setWhen} pointer="/at" />
          <Field
            label="Reference"
            hint="Number of the message, name of the inspector"
            value={reference}
            onValue={setReference}
            pointer="/reference"
            most={200}
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button disabled={sending}>It was {what}</button>
        </div>
      </form>
    </details>
  );
}
