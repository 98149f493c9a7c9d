import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { FirstSecret } from './first-secret.js';
import { GrantForm } from './grant-form.js';
import { OneOffForm } from './one-off-form.js';
import { ReasonForm } from './reason-form.js';
import { RolesForm } from './roles-form.js';

interface AccountActsProps {
  member: Schemas['MemberView'];
  known: Pick<Schemas['Members'], 'organisations' | 'aircraftTypes'>;
  changed(): Promise<void>;
}

/** What may be done with the account of somebody else who works here, by the roles of who looks. */
export function AccountActs({ member, known, changed }: AccountActsProps) {
  const { roles } = useSession();
  const has = (...some: string[]): boolean => roles.some((role) => some.includes(role));
  const { id, name, lockedAt } = member;
  const at = `/people/${id}`;
  return (
    <>
      {has('quality', 'maintenance-control') && <OneOffForm member={member} issued={changed} />}
      {has('administrator', 'quality') && (
        <details>
          <summary>Change the account of {name}</summary>
          {has('quality') && <GrantForm member={member} known={known} granted={changed} />}
          {has('administrator') && <RolesForm key={member.roles.join()} member={member} changed={changed} />}
          {lockedAt === null && (
            <ReasonForm
              title={`Lock the access of ${name}`}
              about="Every session ends and nobody gets in until it is unlocked. Authorisations and signatures stay."
              path={`${at}/lock`}
              button={`Lock the access of ${name}`}
              said={`The access of ${name} is locked.`}
              done={changed}
            />
          )}
          {has('administrator') && (
            <>
              <ReasonForm
                key={`unlock ${lockedAt}`}
                title={lockedAt === null ? `Free the sign-in name of ${name}` : `Unlock the access of ${name}`}
                about="Access is open, and a name that wrong secrets have locked is free again."
                path={`${at}/unlock`}
                button={lockedAt === null ? 'Free the name' : `Unlock the access of ${name}`}
                said={`The access of ${name} is open.`}
                done={changed}
              />
              <FirstSecret member={member} />
              <ReasonForm
                title={`${name} leaves now`}
                about="Every session and every authorisation ends at once. What was signed stays good."
                path={`${at}/leaving`}
                button={`End the access of ${name}`}
                said={`${name} has left.`}
                done={changed}
              />
            </>
          )}
        </details>
      )}
    </>
  );
}
