import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { RoleTicks } from './role-ticks.js';

/** Other roles from now on. */
export function RolesForm({ member, changed }: { member: Schemas['MemberView']; changed(): Promise<void> }) {
  const [roles, setRoles] = useState<string[]>(member.roles);
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'PUT', path: `/people/${member.id}/roles`, body: { roles, reason } }))) return;
    announce(`The roles of ${member.name} are changed.`);
    await changed();
  }
  return (
    <details>
      <summary>Change the roles of {member.name}</summary>
      <form onSubmit={submit}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <RoleTicks roles={roles} onRoles={setRoles} />
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
          <button class="main" disabled={sending || roles.length === 0}>
            Change the roles
          </button>
        </div>
      </form>
    </details>
  );
}
