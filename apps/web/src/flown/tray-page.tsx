import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { counted } from '../words/words.js';
import { MAY_ENTER } from './flown-page.js';
import { MessagesForm } from './messages-form.js';
import { Received } from './received.js';
import { TrayCard } from './tray-card.js';

type Tray = Schemas['MovementTray'];
type ReceivedView = Schemas['MovementsReceived'];

const STATES = [
  { state: 'open', text: 'Waiting' },
  { state: 'mended', text: 'Mended by a person' },
  { state: 'settled', text: 'Settled by a later message' },
] as const;

/** Movement messages: taken in as text, and what of them could not be read or settled and waits for a person. */
export function TrayPage() {
  const { roles } = useSession();
  const { query } = useLocation();
  const state = STATES.find((one) => one.state === query['state'])?.state ?? 'open';
  const tray = useRead<Tray>(`/movements/tray?state=${state}`);
  const [received, setReceived] = useState<ReceivedView | null>(null);
  const mayMend = roles.some((role) => MAY_ENTER.includes(role));

  function took(view: ReceivedView | null): void {
    setReceived(view);
    void tray.readAgain();
  }

  return (
    <Page title="Movement messages" back={{ href: '/control', text: 'Fleet' }}>
      {mayMend && <MessagesForm took={took} />}
      {received && <Received received={received} />}
      <h2>The tray: what a person has to look at</h2>
      <nav class="places" aria-label="Which entries of the tray">
        {STATES.map((one) => (
          <a
            key={one.state}
            href={`/movements?state=${one.state}`}
            aria-current={one.state === state ? 'page' : undefined}
          >
            {one.text}
          </a>
        ))}
      </nav>
      <Read of={tray}>
        {({ entries }) => (
          <>
            <p role="status">{counted(entries.length, 'entry', 'entries', 'Nothing is here')}.</p>
            <ul class="plain-list cards">
              {entries.map((entry) => (
                <li key={entry.id}>
                  <TrayCard entry={entry} mayMend={mayMend && entry.state === 'open'} mended={took} />
                </li>
              ))}
            </ul>
          </>
        )}
      </Read>
    </Page>
  );
}
