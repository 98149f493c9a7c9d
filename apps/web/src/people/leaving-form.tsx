import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

/** Somebody leaves: access ends at once, what was signed stays good. */
export function LeavingForm({ member, left }: { member: Schemas['MemberView']; left(): Promise<void> }) {
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'POST', path: `/people/${member.id}/leaving`, body: { reason } }))) return;
    announce(`${member.name} has left.`);
    await left();
  }
  return (
    <details>
      <summary>{member.name} leaves now</summary>
      <form onSubmit={submit}>
        <p>Every session and every authorisation ends at once. What was signed stays good.</p>
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
            End the access of {member.name}
          </button>
        </div>
      </form>
    </details>
  );
}
