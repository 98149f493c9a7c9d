import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-clock.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { Ticks } from '../shell/ticks.js';
import { useSettled } from '../shell/use-settled.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';
import { privilegeWords } from '../words/words.js';
import { OrganisationChoice } from './organisation-choice.js';

const PRIVILEGES = [
  'write-up',
  'defer',
  'concur',
  'sign-procedure',
  'inspect',
  'release',
  'extend',
  'judge-combination',
  'confirm-card',
];
const CATEGORIES = ['A', 'B1', 'B2', 'C'];

interface GrantFormProps {
  member: Schemas['MemberView'];
  known: Pick<Schemas['Members'], 'organisations' | 'aircraftTypes'>;
  granted(): Promise<void>;
}

/** A standing authorisation with its scope and its validity, signed by quality. */
export function GrantForm({ member, known, granted }: GrantFormProps) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Grant {member.name} an authorisation</summary>
      {open && <Grant member={member} known={known} granted={granted} />}
    </details>
  );
}

function Grant({ member, known, granted }: GrantFormProps) {
  const { operator } = useSession();
  const [number, setNumber] = useState('');
  const [organisation, setOrganisation] = useState('');
  const [types, setTypes] = useState<string[]>([]);
  const [categories, setCategories] = useState<string[]>([]);
  const [privileges, setPrivileges] = useState<string[]>([]);
  const [until, setUntil] = useState(NO_WALL);
  const [validFrom] = useState(serverNow);
  const validUntil = instantOf(until, operator.base);
  const scope = {
    number,
    organisation,
    aircraftTypes: types.join(','),
    ...(categories.length > 0 && { licenceCategories: categories.join(',') }),
    privileges: privileges.join(','),
    validFrom,
    ...(validUntil !== null && { validUntil }),
  };
  const asked = useSettled(new URLSearchParams(scope).toString());
  const told = [number.trim(), organisation, scope.aircraftTypes, scope.privileges].every((one) => one !== '');
  async function done(): Promise<void> {
    announce(`${member.name} is authorised.`);
    await granted();
  }
  return (
    <SignForm
      statementPath={told ? `/people/${member.id}/authorisation-statement?${asked}` : null}
      path={`/people/${member.id}/authorisations`}
      body={() => scope}
      button={`Sign: authorise ${member.name}`}
      done={() => void done()}
    >
      <Field label="Its number" most={40} value={number} onValue={setNumber} pointer="/number" required short />
      <OrganisationChoice organisations={known.organisations} value={organisation} onValue={setOrganisation} />
      <Ticks legend="Aircraft types" options={known.aircraftTypes.map(same)} values={types} onValues={setTypes} />
      <Ticks
        legend="Licence categories"
        options={CATEGORIES.map(same)}
        values={categories}
        onValues={setCategories}
      />
      <Ticks
        legend="It lets its holder"
        options={PRIVILEGES.map((value) => ({ value, text: privilegeWords(value) }))}
        values={privileges}
        onValues={setPrivileges}
      />
      <WallInput
        what="it ends"
        zone={operator.base}
        value={until}
        onValue={setUntil}
        pointer="/validUntil"
        required={false}
      />
      <p class="soft">It begins now.</p>
    </SignForm>
  );
}

const same = (value: string): { value: string; text: string } => ({ value, text: value });
