import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { withOffset } from '../words/time.js';
import { roleWords } from '../words/words.js';
import { RoleTicks } from './role-ticks.js';

type Made = Schemas['InvitationMade'];

/** For somebody who has an account here already: nobody is named, and the code is handed over in person. */
export function Invitations() {
  const { operator } = useSession();
  const waiting = useRead<Schemas['Invitations']>('/invitations');
  const [roles, setRoles] = useState<string[]>([]);
  const [made, setMade] = useState<Made | null>(null);
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const answer = await send<Made>({ method: 'POST', path: '/invitations', body: { roles } });
    if (!answer) return;
    setMade(answer.body);
    setRoles([]);
    await waiting.readAgain();
  }
  return (
    <details>
      <summary>Invite somebody who has an account on this server</summary>
      <p>
        Such as a technician who works for another operator here. You name nobody: whoever holds the code takes it up
        on their own page, signed with their own secret.
      </p>
      {made?.code && (
        <div class="done-box" role="status">
          <p class="strong">The code, shown this once:</p>
          <p class="registration breakable">{made.code}</p>
          <p>Hand it over in person. It is good until {withOffset(made.invitation.untilAt, operator.base)}.</p>
        </div>
      )}
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <RoleTicks roles={roles} onRoles={setRoles} />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending || roles.length === 0}>
            Make the invitation
          </button>
        </div>
      </form>
      <ul class="plain-list">
        {(waiting.value?.invitations ?? []).map((one) => (
          <li key={one.id}>
            <Waiting invitation={one} changed={waiting.readAgain} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Waiting({
  invitation: { id, roles, untilAt, notUsable },
  changed,
}: {
  invitation: Made['invitation'];
  changed(): Promise<void>;
}) {
  const { operator } = useSession();
  const { send, sending, problem } = useAct();
  async function withdraw(): Promise<void> {
    if (await send({ method: 'POST', path: `/invitations/${id}/withdrawal` })) await changed();
  }
  return (
    <>
      {notUsable === null ? 'Waits to be taken up' : <strong>Lets nobody in: {notUsable}</strong>}, as{' '}
      {roles.map(roleWords).join(', ')}, until {withOffset(untilAt, operator.base)}.{' '}
      <button type="button" class="quiet" disabled={sending} onClick={() => void withdraw()}>
        Withdraw it
      </button>
      <ProblemBox problem={problem} readAgain={() => void changed()} />
    </>
  );
}
