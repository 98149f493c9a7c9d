import { maySeePeople } from '../people/people-page.js';
import { Page } from '../shell/page.js';
import { roleWords } from '../words/words.js';
import { useSession } from './session.js';
import { TakeUp } from './take-up.js';
import { YourPasskeys } from './your-passkeys.js';
import { YourSecret } from './your-secret.js';
import { YourSignOn } from './your-sign-on.js';
import { YourSignatures } from './your-signatures.js';

/** What belongs to the person signed in, and to nobody else. */
export function YouPage() {
  const { person, operator, roles } = useSession();
  return (
    <Page title={person.name} aside={`${roles.map(roleWords).join(', ')}, ${operator.name}`}>
      {maySeePeople(roles) && (
        <div class="buttons">
          <a class="button" href="/people">
            People and what they may sign
          </a>
        </div>
      )}
      <YourSecret />
      <YourPasskeys />
      <YourSignOn />
      <TakeUp />
      <YourSignatures />
    </Page>
  );
}
