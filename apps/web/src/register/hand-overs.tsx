import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { withOffset } from '../words/time.js';
import { ShiftLines } from './shift-lines.js';

type View = Schemas['RegisterView'];

/** The hand-over that waits to be taken, and the last one that was. */
export function HandOvers({ view }: { view: View }) {
  const { operator, person } = useSession();
  const { offered, lastTaken } = view;
  return (
    <section>
      <h2>Hand-over</h2>
      {offered === null && lastTaken === null && <p>None yet.</p>}
      {offered !== null && (
        <>
          <p>
            {offered.by} hands over to {offered.to}, {withOffset(offered.at, operator.base)}. Nobody has taken it yet.
          </p>
          {offered.note && <p>{offered.note}</p>}
          <ShiftLines title="Left on it" lines={offered.left} />
          <ShiftLines title="Open" lines={offered.open} />
          {offered.by !== person.name && (
            <a class="button main" href={`/aircraft/${view.aircraft}/left/hand-overs-taken?given=${offered.id}`}>
              Take over
            </a>
          )}
        </>
      )}
      {lastTaken !== null && (
        <p class="soft">
          Last taken over by {lastTaken.takenBy} from {lastTaken.by}, {withOffset(lastTaken.takenAt, operator.base)}.
          {lastTaken.remarks && ` ${lastTaken.remarks}`}
        </p>
      )}
    </section>
  );
}
