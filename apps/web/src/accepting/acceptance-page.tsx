import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { Said } from '../shell/said.js';
import { offBlocks } from '../words/flight.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { AcceptForm, type AcceptingRole } from './accept-form.js';
import { Accepted } from './accepted.js';

type View = Schemas['AcceptanceView'];

/** The aircraft for one flight, as its commander sees it on a telephone: what is open, what it asks, yes or no. */
export function AcceptancePage() {
  const { id = '', flight = '' } = useRoute().params;
  const shown = useRead<View>(`/aircraft/${id}/flights/${flight}/acceptance`);
  const title = shown.value ? `${shown.value.registration}, ${shown.value.flight.number}` : 'Acceptance';
  return (
    <Page
      title={title}
      aside="acceptance for one flight"
      back={{ href: `/aircraft/${id}/flights/${flight}`, text: 'The answer' }}
    >
      <Read of={shown}>{(view) => <Content view={view} readAgain={() => void shown.readAgain()} />}</Read>
    </Page>
  );
}

const ROLES: AcceptingRole[] = ['commander', 'dispatcher'];

function Content({ view, readAgain }: { view: View; readAgain(): void }) {
  const { operator, roles } = useSession();
  const role = ROLES.find((one) => roles.includes(one));
  return (
    <>
      <p>
        {view.flight.fromName} to {view.flight.toName}, off blocks {offBlocks(view.flight)}
      </p>
      <p>
        <AnswerWords code={view.verdict} words={view.words} />
      </p>
      {view.reasons.length > 0 && (
        <ul>
          {view.reasons.map((reason) => (
            <li key={reason}>
              <Said text={reason} />
            </li>
          ))}
        </ul>
      )}
      <Accepted given={view.given} />
      <h2>{counted(view.items.length, 'open item', 'open items', 'Nothing open')}</h2>
      <ul class="plain-list cards">
        {view.items.map((item) => (
          <li key={item.defect}>
            <Item item={item} />
          </li>
        ))}
      </ul>
      <p>
        Left on the aircraft: {counted(view.left, 'thing', 'things', 'nothing')}.{' '}
        <a href={`/aircraft/${view.aircraft}/left`}>The register</a>
      </p>
      {view.goodUntil && <p class="soft">What is shown is good until {withOffset(view.goodUntil, operator.base)}.</p>}
      {role ? (
        <AcceptForm view={view} role={role} readAgain={readAgain} />
      ) : (
        <p>The commander of this flight accepts it, and the dispatcher acknowledges its limits.</p>
      )}
    </>
  );
}

function Item({ item }: { item: View['items'][number] }) {
  return (
    <section class="card">
      <h3>
        <a href={`/defects/${item.defect}`}>{item.number}</a> {item.title}
      </h3>
      <p>{item.basis ?? 'Not answered: the aircraft may not fly.'}</p>
      {item.until && <p class="soft">{item.until}</p>}
      {item.limits.length > 0 && (
        <>
          <p class="strong">What it asks of the flight</p>
          <ul>
            {item.limits.map((limit) => (
              <li key={limit}>{limit}</li>
            ))}
          </ul>
        </>
      )}
      {item.operations.map(({ work, text }) => (
        <p key={work}>
          <span class="strong">(O)</span> {text}
        </p>
      ))}
    </section>
  );
}
