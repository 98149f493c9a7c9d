import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { RecordAlarm } from '../record/record-alarm.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { privilegeWords, roleWords } from '../words/words.js';
import { ErasureForm } from './erasure-form.js';
import { LeavingForm } from './leaving-form.js';
import { OneOffForm } from './one-off-form.js';

type Member = Schemas['MemberView'];
type Authorisation = Member['authorisations'][number];

const MAY_SEE = ['administrator', 'quality', 'maintenance-control'];
const MAY_ERASE = ['administrator', 'quality'];
const MAY_ISSUE = ['quality', 'maintenance-control'];

/** How the server names somebody whose personal data were erased. */
const NAME_ERASED = '(name erased)';

export const maySeePeople = (roles: readonly string[]): boolean => roles.some((role) => MAY_SEE.includes(role));

/** Who works for the operator, what each may sign, and until when. */
export function PeoplePage() {
  const { roles } = useSession();
  const members = useRead<Schemas['Members']>('/people');
  return (
    <Page title="People">
      {roles.includes('administrator') && <RecordAlarm />}
      <Read of={members}>
        {({ at, people }) => (
          <ul class="plain-list cards">
            {people.map((member) => (
              <One key={member.id} member={member} at={at} changed={members.readAgain} />
            ))}
          </ul>
        )}
      </Read>
    </Page>
  );
}

function One({ member, at, changed }: { member: Member; at: string; changed(): Promise<void> }) {
  const { person, roles, operator } = useSession();
  const { id, name, licence, roles: held, organisation, works, validUntil, authorisations } = member;
  const other = id !== person.id && works;
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
      {authorisations.length === 0 && <p class="soft">No authorisation.</p>}
      <ul>
        {authorisations.map((one) => (
          <li key={one.id}>
            <Scope authorisation={one} at={at} />
          </li>
        ))}
      </ul>
      {other && roles.some((role) => MAY_ISSUE.includes(role)) && <OneOffForm member={member} issued={changed} />}
      {other && roles.includes('administrator') && <LeavingForm member={member} left={changed} />}
      {!works && !erased && roles.some((role) => MAY_ERASE.includes(role)) && (
        <ErasureForm member={member} erased={changed} />
      )}
    </li>
  );
}

function Scope({ authorisation, at }: { authorisation: Authorisation; at: string }) {
  const { operator } = useSession();
  const { number, aircraftTypes, licenceCategories, privileges, validUntil, revokedAt, oneOff } = authorisation;
  const over = validUntil !== null && Date.parse(validUntil) <= Date.parse(at);
  return (
    <>
      <span class="strong">{number}</span>: {privileges.map(privilegeWords).join(', ')}; {aircraftTypes.join(', ')}
      {licenceCategories.length > 0 && `; ${licenceCategories.join(', ')}`}
      {validUntil && `; ${over ? 'ended' : 'until'} ${withOffset(validUntil, operator.base)}`}
      {revokedAt && <span class="strong">; revoked {withOffset(revokedAt, operator.base)}</span>}
      {oneOff && <span class="soft block">For one signature, because {oneOff.because}</span>}
    </>
  );
}
