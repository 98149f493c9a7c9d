import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { privilegeWords } from '../words/words.js';
import { ReasonForm } from './reason-form.js';

interface ScopeProps {
  member: Schemas['MemberView'];
  authorisation: Schemas['MemberView']['authorisations'][number];
  at: string;
  changed(): Promise<void>;
}

const MAY_REVOKE = ['quality', 'administrator'];

/** One authorisation: its number, what it covers, and until when. */
export function Scope({ member, authorisation, at, changed }: ScopeProps) {
  const { operator, roles } = useSession();
  const { id, number, aircraftTypes, licenceCategories, privileges, validUntil, revokedAt, oneOff } = authorisation;
  const over = validUntil !== null && Date.parse(validUntil) <= Date.parse(at);
  const mayRevoke = !over && revokedAt === null && roles.some((role) => MAY_REVOKE.includes(role));
  return (
    <>
      <span class="strong">{number}</span>: {privileges.map(privilegeWords).join(', ')}; {aircraftTypes.join(', ')}
      {licenceCategories.length > 0 && `; ${licenceCategories.join(', ')}`}
      {validUntil && `; ${over ? 'ended' : 'until'} ${withOffset(validUntil, operator.base)}`}
      {revokedAt && <span class="strong">; revoked {withOffset(revokedAt, operator.base)}</span>}
      {oneOff && <span class="soft block">For one signature, because {oneOff.because}</span>}
      {mayRevoke && (
        <ReasonForm
          title={`Revoke ${number}`}
          about="It covers nothing that is signed from now on. What was signed under it stays good."
          path={`/people/${member.id}/authorisations/${id}/revocation`}
          button={`Revoke ${number}`}
          said={`${number} is revoked.`}
          done={changed}
        />
      )}
    </>
  );
}
