import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

/** An organisation under whose approval people sign. */
export function OrganisationForm({ entered }: { entered(): Promise<void> }) {
  const [name, setName] = useState('');
  const [approval, setApproval] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'POST', path: '/organisations', body: { name, approval } }))) return;
    announce(`${name} is entered.`);
    setName('');
    setApproval('');
    await entered();
  }
  return (
    <details>
      <summary>Enter an organisation</summary>
      <form onSubmit={(event) => void submit(event)}>
        <p>Whose approval people sign under: your own, or one that works for you.</p>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Its name, as in the approval"
            most={120}
            value={name}
            onValue={setName}
            pointer="/name"
            required
          />
          <Field
            label="Number of its approval"
            most={60}
            value={approval}
            onValue={setApproval}
            pointer="/approval"
            required
            short
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Enter the organisation
          </button>
        </div>
      </form>
    </details>
  );
}
