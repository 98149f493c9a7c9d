import { useLocation, useRoute } from 'preact-iso';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { calendarDayText } from '../words/time.js';
import { itemName } from '../words/words.js';
import { Cautions } from './cautions.js';
import { Steps } from './steps.js';
import { StillOpen } from './still-open.js';
import { Counted } from './counted.js';
import type { CardView } from './step-props.js';

/** A work card as it is worked: steps in order, waits counted down, what is open or fitted at the foot, the signature once nothing is open. */
export function CardPage() {
  const { id = '', work = '' } = useRoute().params;
  const card = useRead<CardView>(`/defects/${id}/cards/${work}`);
  const line = card.value?.defect;
  return (
    <Page
      title={card.value?.work.title ?? 'Work card'}
      aside={line && itemName(line)}
      back={{ href: `/defects/${id}`, text: line?.number ?? 'The item' }}
    >
      <Read of={card}>{(view) => <Card reading={card} view={view} />}</Read>
    </Page>
  );
}

function Card({ reading, view }: { reading: Reading<CardView>; view: CardView }) {
  const { work } = view;
  const { newerRevision: newer, confirmed } = work;
  return (
    <>
      <p>
        {work.reference}. <strong>The manual prevails.</strong>
      </p>
      {newer && (
        <p class="strong">
          Revision {newer.revision} of {calendarDayText(newer.issuedOn)} is recorded since.{' '}
          {confirmed ? (
            `The card was confirmed against it by ${confirmed.by}.`
          ) : (
            <>
              Nobody confirmed the card against it, so it cannot be signed.{' '}
              <a href="/cards">Work cards and their manuals</a>
            </>
          )}
        </p>
      )}
      <Cautions cautions={work.cautions} />
      <Steps reading={reading} view={view} />
      <Counted accounts={work.accounts} />
      {work.ended ? (
        <p class="strong">
          {work.ended.how} by {work.ended.by}.
        </p>
      ) : (
        <>
          {work.missing.length > 0 ? (
            <StillOpen missing={work.missing} />
          ) : (
            <SignCard reading={reading} view={view} />
          )}
          <NotFinished view={view} />
        </>
      )}
    </>
  );
}

/** A card that somebody cannot finish goes on in other hands, or is stopped. */
function NotFinished({ view: { defect, work } }: { view: CardView }) {
  return (
    <section>
      <h2>You cannot finish it</h2>
      <p>
        It stays open for whoever comes next: they open this page and go on at the next step. It stands in the list
        that a shift hands over.
      </p>
      <div class="buttons">
        <a class="button" href={`/aircraft/${defect.aircraft}/left/hand-overs`}>
          Hand over to the next shift
        </a>
        <a class="button" href={`/defects/${defect.id}/cards/${work.id}/stop`}>
          Stop the card
        </a>
      </div>
    </section>
  );
}

function SignCard({ reading, view: { defect, work } }: { reading: Reading<CardView>; view: CardView }) {
  const { route } = useLocation();
  const asked = new URLSearchParams({ act: 'card', work: work.id }).toString();
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${defect.id}/statement?${asked}`}
      path={`/defects/${defect.id}/card-signatures`}
      seen={reading.etag}
      body={() => ({ work: work.id })}
      button="Sign the card"
      done={() => {
        carryOver({ title: `${work.title}: the card is signed.`, lines: [] });
        route(`/defects/${defect.id}`);
      }}
      readAgain={() => void reading.readAgain()}
    />
  );
}
