import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { calendarDayText, withOffset } from '../words/time.js';

type List = Schemas['CardList'];
type Line = List['cards'][number];

const MAY_RECORD = ['engineer', 'mel-engineer', 'quality'];

/** Every work card in force, what it was written from, and whether its manual went on since. */
export function CardsPage() {
  const { operator, roles } = useSession();
  const list = useRead<List>('/cards');
  return (
    <Page title="Work cards" aside={list.value && `as of ${withOffset(list.value.at, operator.base)}`}>
      <p>The manual prevails over each card. Cards of procedures come with the MEL.</p>
      <div class="buttons">
        {roles.some((role) => MAY_RECORD.includes(role)) && (
          <a class="button" href="/cards/revisions">
            Record a newer revision of a manual
          </a>
        )}
        {roles.includes('mel-engineer') && (
          <a class="button" href="/cards/library">
            Load a library of cards
          </a>
        )}
      </div>
      <Read of={list}>
        {({ libraries, cards, revisions, warnings }) => (
          <>
            <Waiting reading={list} cards={cards} />
            <Astray warnings={warnings} />
            <Cards cards={cards} />
            <Libraries libraries={libraries} />
            <Revisions revisions={revisions} />
          </>
        )}
      </Read>
    </Page>
  );
}

const waits = ({ newerRevision, confirmed }: Line): boolean => newerRevision !== null && confirmed === null;

/** Cards that cannot be signed before somebody holds them against the newer revision. */
function Waiting({ reading, cards }: { reading: Reading<List>; cards: readonly Line[] }) {
  const waiting = cards.filter(waits);
  if (waiting.length === 0) return null;
  return (
    <section>
      <h2>To be held against a newer revision: {waiting.length}</h2>
      <ul class="plain-list cards">
        {waiting.map((card) => (
          <li key={`${card.aircraftType} ${card.card}`} class="card">
            <p>
              <span class="strong">{card.title}</span>
              <span class="soft block">
                {card.aircraftType}. Written from {card.reference}; revision {card.newerRevision?.revision} of{' '}
                {card.newerRevision && calendarDayText(card.newerRevision.issuedOn)} is recorded since.
              </span>
            </p>
            <Confirm card={card} confirmed={reading.readAgain} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Confirm({ card, confirmed }: { card: Line; confirmed(): Promise<void> }) {
  const [open, setOpen] = useState(false);
  const held = { aircraftType: card.aircraftType, card: card.card, against: card.newerRevision?.revision ?? '' };
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>I held it against revision {held.against}</summary>
      {open && (
        <SignForm<Schemas['CardConfirmed']>
          statementPath={`/card-confirmations/statement?${new URLSearchParams(held).toString()}`}
          path="/card-confirmations"
          body={() => held}
          button="Sign: the card still says what the manual says"
          done={() => {
            announce(`${card.title} is confirmed against revision ${held.against}.`);
            void confirmed();
          }}
        >
          <p>
            If it says something else, do not sign: have the card written anew and loaded. Until then nobody can sign
            the card, and the work is done and signed by the manual.
          </p>
        </SignForm>
      )}
    </details>
  );
}

/** Where the library and the MEL leave each other behind: nobody is held up, and somebody mends it. */
function Astray({ warnings }: Pick<List, 'warnings'>) {
  if (warnings.length === 0) return null;
  return (
    <section>
      <h2>Library and MEL do not fit: {warnings.length}</h2>
      <ul>
        {warnings.map(({ aircraftType, reason }) => (
          <li key={`${aircraftType} ${reason}`}>
            {aircraftType}: {reason}.
          </li>
        ))}
      </ul>
    </section>
  );
}

function Cards({ cards }: { cards: readonly Line[] }) {
  if (cards.length === 0) return <p>No cards are loaded.</p>;
  return (
    <section>
      <h2>In force: {cards.length}</h2>
      <ul class="plain-list">
        {cards.map((card) => (
          <li key={`${card.aircraftType} ${card.card}`}>
            <span class="strong">{card.title}</span>
            <span class="soft block">
              {card.aircraftType}, {card.purpose}. {card.reference}.
              {card.newerRevision &&
                (card.confirmed
                  ? ` Confirmed against revision ${card.newerRevision.revision} by ${card.confirmed.by}.`
                  : ` Not confirmed against revision ${card.newerRevision.revision}.`)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Libraries({ libraries }: Pick<List, 'libraries'>) {
  const { operator } = useSession();
  if (libraries.length === 0) return null;
  return (
    <section>
      <h2>Libraries that were loaded</h2>
      <ul class="plain-list">
        {libraries.map(({ aircraftType, document, revision, effectiveOn, inForce, loadedAt }) => (
          <li key={`${aircraftType} ${document} ${revision}`}>
            <span class={inForce ? 'strong' : undefined}>
              {document}, revision {revision} of {calendarDayText(effectiveOn)}, for {aircraftType}
              {inForce ? ': in force' : ''}
            </span>
            <span class="soft block">Loaded {withOffset(loadedAt, operator.base)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Revisions({ revisions }: Pick<List, 'revisions'>) {
  if (revisions.length === 0) return null;
  return (
    <section>
      <h2>Revisions of manuals that were recorded</h2>
      <ul class="plain-list">
        {revisions.map(({ manual, task, revision, issuedOn }) => (
          <li key={`${manual} ${task ?? ''} ${revision}`}>
            {manual}
            {task === null ? ', the whole manual' : ` ${task}`}: revision {revision} of {calendarDayText(issuedOn)}
          </li>
        ))}
      </ul>
    </section>
  );
}
