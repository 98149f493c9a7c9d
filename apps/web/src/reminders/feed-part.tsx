import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';

type Feed = Schemas['CalendarFeed'];

/** The same deadlines in a calendar program: one address for each device, told once. */
export function FeedPart() {
  const read = useRead<Schemas['CalendarFeeds']>('/calendar-feeds');
  return (
    <>
      <h2>In your calendar program</h2>
      <p>
        It reads the deadlines of every operator you work for under an address of its own. Whoever knows the address
        reads them; revoke it when the device is lost.
      </p>
      <FeedForm made={read.readAgain} />
      <Read of={read}>
        {({ feeds }) => (
          <ul class="plain-list">
            {feeds
              .filter(({ revokedAt }) => revokedAt === null)
              .map((feed) => (
                <li key={feed.id}>
                  <FeedCard feed={feed} revoked={read.readAgain} />
                </li>
              ))}
          </ul>
        )}
      </Read>
    </>
  );
}

function FeedForm({ made }: { made(): Promise<void> }) {
  const [label, setLabel] = useState('');
  const [address, setAddress] = useState<string | null>(null);
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { label, everywhere: true };
    const answer = await send<Schemas['CalendarFeedMade']>({ method: 'POST', path: '/calendar-feeds', body });
    if (!answer) return;
    setAddress(answer.body.address);
    setLabel('');
    await made();
  }

  return (
    <form class="card" onSubmit={submit} aria-label="Make an address for a calendar program">
      <Field
        label="Device that reads it"
        hint="Such as: my telephone"
        value={label}
        onValue={setLabel}
        pointer="/label"
        most={80}
        required
      />
      <ProblemBox problem={problem} />
      {address && (
        <div class="caution" role="status">
          <p class="strong">The address for the calendar program. It is shown now and never again:</p>
          <p>
            <code class="breakable">{`${window.location.origin}${address}`}</code>
          </p>
        </div>
      )}
      <div class="buttons">
        <button disabled={sending}>Make an address</button>
      </div>
    </form>
  );
}

function FeedCard({ feed, revoked }: { feed: Feed; revoked(): Promise<void> }) {
  const { operator } = useSession();
  const { send, sending, problem } = useAct();
  const { id, label, of, registration, everywhere, createdAt } = feed;

  async function revoke(): Promise<void> {
    if (!(await send({ method: 'DELETE', path: `/calendar-feeds/${id}` }))) return;
    announce(`${label} is revoked.`);
    await revoked();
  }

  return (
    <div class="card">
      <p class="strong">{label}</p>
      <p>
        {everywhere ? 'Every operator you work for' : (registration ?? 'Every aircraft of this operator')}, of {of},
        made {withOffset(createdAt, operator.base)}
      </p>
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button type="button" disabled={sending} onClick={() => void revoke()} aria-label={`Revoke ${label}`}>
          Revoke
        </button>
      </div>
    </div>
  );
}
