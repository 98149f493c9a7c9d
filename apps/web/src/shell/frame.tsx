import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { carryOut, freshKey } from '../api/client.js';
import type { Signed } from '../session/session.js';
import { roleWords } from '../words/words.js';
import { FailedAttempts } from '../session/failed-attempts.js';
import { onAnnounce } from './announce.js';

const PLACES = [
  { href: '/aircraft', text: 'At the gate' },
  { href: '/control', text: 'Control' },
  { href: '/defects', text: 'Open items' },
  { href: '/more', text: 'More' },
];

/** What stands round every page: who signs, for whom, which record is the original, and the cautions. */
export function Frame({ signed, children }: { signed: Signed | null; children: ComponentChildren }) {
  return (
    <>
      <a class="skip" href="#main">
        Skip to the page
      </a>
      <header class="top">
        <div class="top-line">
          <a class="mark" href="/">
            Proviso
          </a>
          {signed && <Who signed={signed} />}
        </div>
        {signed && <Places />}
        {signed && <Original signed={signed} />}
        {signed?.operator.newerZoneData && <OlderHere newer={signed.operator.newerZoneData} />}
        {signed && signed.failedAttempts > 0 && <FailedAttempts signed={signed} />}
      </header>
      {children}
      <Aloud />
      <footer class="foot">
        <p>
          Proviso supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed
          certifying staff. Local regulation prevails.
        </p>
      </footer>
    </>
  );
}

function Who({ signed }: { signed: Signed }) {
  const { person, operator, operators, roles, readAgain } = signed;
  async function signOut(): Promise<void> {
    await carryOut({ method: 'DELETE', path: '/session' }, freshKey()).catch(() => null);
    await readAgain();
  }
  return (
    <div class="who">
      <span>
        <span class="strong">{operator.name}</span>
        <a class="who-name" href="/you">
          {person.name}, {roles.map(roleWords).join(', ')}
        </a>
      </span>
      {operators.length > 1 && (
        <a class="quiet" href="/operators">
          Change operator
        </a>
      )}
      <button type="button" class="quiet" onClick={() => void signOut()}>
        Sign out
      </button>
    </div>
  );
}

function Places() {
  const { path } = useLocation();
  return (
    <nav class="places" aria-label="Places">
      {PLACES.map(({ href, text }) => (
        <a key={href} href={href} aria-current={path.startsWith(href) ? 'page' : undefined}>
          {text}
        </a>
      ))}
    </nav>
  );
}

/** Said before anybody begins what would be refused at its signature. */
function OlderHere({ newer }: { newer: string }) {
  return (
    <p class="caution">
      <strong>This server signs no new deadline.</strong> Its time-zone data is older than {newer}, which deadlines
      are stored with. What is stored counts, and may be flown by; an answer about a row is given, but deferring,
      extending and correcting a time are refused here. Use a server that is up to date, or have this one brought up
      to date.
    </p>
  );
}

function Original({ signed: { operator } }: { signed: Signed }) {
  return (
    <p class="original">
      {operator.invented && <strong>INVENTED for demonstration, never for flight. </strong>}
      Legal original:{' '}
      <strong>{operator.legalOriginal === 'paper' ? 'the paper log' : 'this electronic record'}</strong>.{' '}
      <a href="/settings">Settings</a>
    </p>
  );
}

const MOST_HEARD = 4;

/** There before anything is said, so that screen readers notice each thing that is; none overtakes another. */
function Aloud() {
  const [heard, setHeard] = useState<{ id: number; text: string }[]>([]);
  useEffect(
    () =>
      onAnnounce((text) =>
        setHeard((before) => [...before, { id: (before.at(-1)?.id ?? 0) + 1, text }].slice(-MOST_HEARD)),
      ),
    [],
  );
  return (
    <div role="status" aria-atomic="false" class="unseen">
      {heard.map(({ id, text }) => (
        <p key={id}>{text}</p>
      ))}
    </div>
  );
}
