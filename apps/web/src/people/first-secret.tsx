import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { ProblemBox } from '../shell/problem-box.js';
import { MadeAccount } from './made-account.js';

/** Another first secret for somebody who never used theirs; refused once there is an own one. */
export function FirstSecret({ member }: { member: Schemas['MemberView'] }) {
  const [made, setMade] = useState<Schemas['AccountMade'] | null>(null);
  const { send, sending, problem } = useAct();
  async function another(): Promise<void> {
    const path = `/people/${member.id}/first-secret`;
    const answer = await send<Schemas['AccountMade']>({ method: 'POST', path });
    if (answer) setMade(answer.body);
  }
  return (
    <details>
      <summary>Another first secret for {member.name}</summary>
      <p>Only where the first was never used. Whoever has a secret of their own changes it themselves.</p>
      {made && <MadeAccount made={made} />}
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button type="button" disabled={sending} onClick={() => void another()}>
          Give another first secret
        </button>
      </div>
    </details>
  );
}
