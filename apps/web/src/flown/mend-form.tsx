import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Choice, Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

interface MendFormProps {
  entry: Schemas['TrayLine'];
  mended(received: Schemas['MovementsReceived'] | null): void;
}

const HOW = [
  { value: 'text', text: 'Send the text as it should read, or the message that is missing' },
  { value: 'stays', text: 'It stays as it is' },
] as const;

/** Mends one entry: what came in stays readable, and who mended it and why stands beside it. */
export function MendForm({ entry, mended }: MendFormProps) {
  const { send, sending, problem } = useAct();
  const [how, setHow] = useState<'text' | 'stays' | null>(null);
  const [text, setText] = useState(entry.text);
  const [reason, setReason] = useState('');

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { reason, ...(how === 'text' ? { text } : {}) };
    const path = `/movements/tray/${entry.id}/mended`;
    const answer = await send<Schemas['MovementMended']>({ method: 'POST', path, body });
    if (answer !== null) mended(answer.body.received);
  }

  return (
    <details>
      <summary>Mend it</summary>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Choice legend="What is to be done" options={HOW} value={how} onValue={setHow} />
          {how === 'text' && (
            <Field label="The text" lines={6} most={8000} value={text} onValue={setText} pointer="/text" required />
          )}
          <Field
            label="Why, or where you know it from"
            most={1000}
            value={reason}
            onValue={setReason}
            pointer="/reason"
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            {how === 'stays' ? 'Leave it as it is' : 'Mend it'}
          </button>
        </div>
      </form>
    </details>
  );
}
