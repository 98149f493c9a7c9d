import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

/** The first secret, shown once. */
export function MadeAccount({ made }: { made: Schemas['AccountMade'] }) {
  const { operator } = useSession();
  const { person, firstSecret, firstUntil } = made;
  if (firstSecret === null || firstUntil === null) return null;
  return (
    <div class="done-box" role="status">
      <p class="strong">The first secret of {person.name}, shown this once:</p>
      <p class="registration breakable">{firstSecret}</p>
      <p>
        Hand it over in person. It opens one thing, the choice of an own secret, until{' '}
        {withOffset(firstUntil, operator.base)}.
      </p>
    </div>
  );
}
