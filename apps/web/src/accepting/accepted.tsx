import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';

type Line = Schemas['AcceptanceLine'];

const DONE: Record<string, string> = { commander: 'Accepted', dispatcher: 'Limits acknowledged' };

/** Who accepted or declined the aircraft for the flight, and whether that still stands. */
export function Accepted({ given }: { given: readonly Line[] }) {
  const { operator } = useSession();
  if (given.length === 0) return null;
  return (
    <ul class="plain-list">
      {given.map((line) => (
        <li key={line.role}>
          <span class={line.accepted ? 'block' : 'strong block'}>
            {line.accepted ? DONE[line.role] : 'Declined'} by {line.by} ({line.role}),{' '}
            {withOffset(line.at, operator.base)}
            {line.reason && `: ${line.reason}`}
          </span>
          {line.void.length > 0 && <span class="soft block">No longer stands: {line.void.join('; ')}.</span>}
        </li>
      ))}
    </ul>
  );
}
