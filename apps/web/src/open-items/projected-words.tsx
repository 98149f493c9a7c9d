import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

type Projected = NonNullable<Schemas['DeadlineLine']['projected']>;

const HOW = { plan: 'from the plan', 'mean-use': 'from the mean use' };

/** Where an interval is expected to end by use, and how that was found. */
export function ProjectedWords({ projected }: { projected: Projected }) {
  const { operator } = useSession();
  return (
    <details class="projected">
      <summary>{`Projected end ${withOffset(projected.endsAt, operator.base)}, ${HOW[projected.method]}`}</summary>
      <p class="soft">{projected.sentence}</p>
    </details>
  );
}
