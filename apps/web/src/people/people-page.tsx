import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { OrganisationForm } from '../entering/organisation-form.js';
import { StillToDo } from '../opening/still-to-do.js';
import { RecordAlarm } from '../record/record-alarm.js';
import { useSession } from '../session/session.js';
import { Finder } from '../shell/finder.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { roleWords } from '../words/words.js';
import { AccountActs } from './account-acts.js';
import { AccountForm } from './account-form.js';
import { ErasureForm } from './erasure-form.js';
import { Invitations } from './invitations.js';
import { Scope } from './scope.js';
import { ErasedBox } from './written-names.js';

type Members = Schemas['Members'];

const MAY_SEE = ['administrator', 'quality', 'maintenance-control'];
const MAY_ENTER = ['administrator', 'quality'];
const MAY_ERASE = ['administrator', 'quality'];

/** How the server names somebody whose personal data were erased. */
const NAME_ERASED = '(name erased)';

export const maySeePeople = (roles: readonly string[]): boolean => roles.some((role) => MAY_SEE.includes(role));

/** Who works for the operator, what each may sign, and until when. */
export function PeoplePage() {
  const { roles } = useSession();
  const members = useRead<Members>('/people');
  const [erased, setErased] = useState<Schemas['PersonErased'] | null>(null);
  const administrator = roles.includes('administrator');
  return (
    <Page title="People">
      {administrator && <RecordAlarm />}
      <StillToDo />
      {erased && <ErasedBox answer={erased} />}
      <Read of={members}>
        {(view) => (
          <>
            {administrator && <AccountForm organisations={view.organisations} made={members.readAgain} />}
            {administrator && <Invitations />}
            {roles.some((role) => MAY_ENTER.includes(role)) && <OrganisationForm entered={members.readAgain} />}
            <Finder of={view.people} textOf={wordsOf} hint="By name, licence, authorisation, role or organisation.">
              {(found) => (
                <ul class="plain-list cards">
                  {found.map((member) => (
                    <One key={member.id} member={member} view={view} changed={members.readAgain} erased={setErased} />
                  ))}
                </ul>
              )}
            </Finder>
          </>
        )}
      </Read>
    </Page>
  );
}

const wordsOf = ({ name, licence, roles, organisation, authorisations }: Schemas['MemberView']): string =>
  [name, licence, organisation, ...roles.map(roleWords), ...authorisations.map(({ number }) => number)].join(' ');

interface OneProps {
  member: Schemas['MemberView'];
  view: Members;
  changed(): Promise<void>;
  erased(answer: Schemas['PersonErased']): void;
}

function One({ member, view, changed, erased: told }: OneProps) {
  const { person, roles, operator } = useSession();
  const { id, name, licence, roles: held, organisation, works, validUntil, lockedAt, authorisations } = member;
  const erased = name.startsWith(NAME_ERASED);
  return (
    <li class="card">
      <h2>{name}</h2>
      <p>
        {held.map(roleWords).join(', ')}
        {organisation && `, ${organisation}`}
        {licence && `, licence ${licence}`}
      </p>
      {!works && validUntil && <p class="strong">Left {withOffset(validUntil, operator.base)}.</p>}
      {works && lockedAt && <p class="strong">Access locked since {withOffset(lockedAt, operator.base)}.</p>}
      {authorisations.length === 0 && <p class="soft">No authorisation.</p>}
      <ul>
        {authorisations.map((one) => (
          <li key={one.id}>
            <Scope member={member} authorisation={one} at={view.at} changed={changed} />
          </li>
        ))}
      </ul>
      {id !== person.id && works && <AccountActs member={member} known={view} changed={changed} />}
      {!works && !erased && roles.some((role) => MAY_ERASE.includes(role)) && (
        <ErasureForm
          member={member}
          erased={async (answer) => {
            told(answer);
            await changed();
          }}
        />
      )}
    </li>
  );
}
