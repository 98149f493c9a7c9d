import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { MadeAccount } from './made-account.js';
import { OrganisationChoice } from './organisation-choice.js';
import { RoleTicks } from './role-ticks.js';

interface AccountFormProps {
  organisations: Schemas['Members']['organisations'];
  made(): Promise<void>;
}

/** A new account. Whoever makes it never learns the secret that its owner signs with. */
export function AccountForm({ organisations, made }: AccountFormProps) {
  const [name, setName] = useState('');
  const [licence, setLicence] = useState('');
  const [signInName, setSignInName] = useState('');
  const [organisation, setOrganisation] = useState('');
  const [roles, setRoles] = useState<string[]>([]);
  const [last, setLast] = useState<Schemas['AccountMade'] | null>(null);
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const more = { ...(licence.trim() && { licence }), ...(organisation && { organisation }) };
    const body = { name, signInName, roles, ...more };
    const answer = await send<Schemas['AccountMade']>({ method: 'POST', path: '/people', body });
    if (!answer) return;
    setLast(answer.body);
    for (const empty of [setName, setLicence, setSignInName, setOrganisation]) empty('');
    setRoles([]);
    await made();
  }
  return (
    <>
      {last && <MadeAccount made={last} />}
      <details>
        <summary>Make an account</summary>
        <form onSubmit={submit}>
          <FieldErrors.Provider value={problem?.errors ?? []}>
            <Field label="Name" most={120} value={name} onValue={setName} pointer="/name" required />
            <Field label="Licence number" most={60} value={licence} onValue={setLicence} pointer="/licence" short />
            <Field
              label="Sign-in name"
              most={80}
              value={signInName}
              onValue={setSignInName}
              pointer="/signInName"
              required
              short
            />
            {organisations.length > 0 && (
              <OrganisationChoice organisations={organisations} value={organisation} onValue={setOrganisation} />
            )}
            <RoleTicks roles={roles} onRoles={setRoles} />
          </FieldErrors.Provider>
          <ProblemBox problem={problem} />
          <div class="buttons">
            <button class="main" disabled={sending || roles.length === 0}>
              Make the account
            </button>
          </div>
        </form>
      </details>
    </>
  );
}
