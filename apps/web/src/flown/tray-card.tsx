import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { Said } from '../shell/said.js';
import { withOffset } from '../words/time.js';
import { MendForm } from './mend-form.js';

type Entry = Schemas['TrayLine'];

const CAME_BY: Record<Entry['cameBy'], string> = {
  text: 'sent as text',
  json: 'sent by a program or a page',
  mended: 'sent to mend another',
  file: 'out of the watched folder',
};

interface TrayCardProps {
  entry: Entry;
  mayMend: boolean;
  mended(received: Schemas['MovementsReceived'] | null): void;
}

/** What is wrong, the message as it came, and what a person may do about it. */
export function TrayCard({ entry, mayMend, mended }: TrayCardProps) {
  const { operator } = useSession();
  const { sentence, text, inUse, receivedAt, cameBy, sentBy, registration, aircraft, closedAt, closedBy, why } =
    entry;
  return (
    <section class="card" aria-label={sentence}>
      <p class="strong">
        <Said text={sentence} />
      </p>
      <pre class="message">{text}</pre>
      <p class="soft">
        Received {withOffset(receivedAt, operator.base)}, {CAME_BY[cameBy]}
        {sentBy !== null && ` by ${sentBy}`}. {inUse ? 'The rest of it is in use.' : 'Nothing of it is in use.'}
      </p>
      {aircraft !== null && (
        <p>
          <a href={`/aircraft/${aircraft}/flown`}>What {registration} flew</a>
        </p>
      )}
      {closedAt !== null && (
        <p>
          {closedBy === null ? 'Settled' : `Mended by ${closedBy}`} {withOffset(closedAt, operator.base)}
          {why !== null && `: ${why}`}
        </p>
      )}
      {mayMend && <MendForm entry={entry} mended={mended} />}
    </section>
  );
}
