import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

interface SecretFormProps {
  /** What the secret is called that is replaced. */
  label: string;
  changed(): void;
}

/** A new secret in place of the one that somebody has. */
export function SecretForm({ label, changed }: SecretFormProps) {
  const [secret, setSecret] = useState('');
  const [fresh, setFresh] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'PUT', path: '/session/secret', body: { secret, fresh } }))) return;
    setSecret('');
    setFresh('');
    changed();
  }
  return (
    <form onSubmit={submit}>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <Field
          label={label}
          type="password"
          value={secret}
          onValue={setSecret}
          pointer="/secret"
          autoComplete="current-password"
          required
        />
        <Field
          label="The new one"
          hint="At least 12 characters; three or four words that nobody would guess are good."
          type="password"
          value={fresh}
          onValue={setFresh}
          pointer="/fresh"
          autoComplete="new-password"
          required
        />
      </FieldErrors.Provider>
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Change my secret
        </button>
      </div>
    </form>
  );
}
