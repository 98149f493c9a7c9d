import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

/** What authorities allow beyond the deadline, each document as such. */
export function AllowedBeyond({ documents }: { documents: Schemas['DocumentLine'][] }) {
  const { operator } = useSession();
  if (documents.length === 0) return null;
  return (
    <section>
      <h2>Allowed by an authority beyond the deadline</h2>
      <ul class="plain-list">
        {documents.map((one) => (
          <li key={one.words}>
            <div class="card">
              <p>
                <span class="state double">{one.words}</span> {one.authority}: {one.limit}
              </p>
              {one.conditions.length > 0 && <p>{one.conditions.join('; ')}</p>}
              <p>
                {withOffset(one.from, operator.base)} to before {withOffset(one.until, operator.base)}
                {one.flights !== null && `, flights: ${one.flights}`}
                {one.kindsOfFlight !== null && `, ${one.kindsOfFlight.join(', ')} alone`}
              </p>
              <p class="soft">
                Entered by {one.enteredBy} {withOffset(one.enteredAt, operator.base)}. It moves no deadline.
              </p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
