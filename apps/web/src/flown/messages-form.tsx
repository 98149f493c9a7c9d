import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

/** Takes messages in as they came, for who has them on paper or in a mail. */
export function MessagesForm({ took }: { took(received: Schemas['MovementsReceived']): void }) {
  const { send, sending, problem } = useAct();
  const [text, setText] = useState('');

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const answer = await send<Schemas['MovementsReceived']>({ method: 'POST', path: '/movements', body: { text } });
    if (answer === null) return;
    setText('');
    took(answer.body);
  }

  return (
    <details>
      <summary>Take messages in by hand</summary>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="The messages as they came"
            hint="MVT, MVA or DIV, COR for a correction; a blank line between two. A line RECEIVED 2026-01-21T11:20Z says when those after it came."
            lines={8}
            most={100_000}
            value={text}
            onValue={setText}
            pointer="/text"
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            {sending ? 'Reading…' : 'Take them in'}
          </button>
        </div>
      </form>
    </details>
  );
}
