import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { itemName } from '../words/words.js';
import { Cautions } from './cautions.js';
import { CardStep } from './card-step.js';
import { Counted } from './counted.js';
import type { CardView } from './step-props.js';

/** A work card as it is worked: steps in order, waits counted down, what is open or fitted at the foot, the signature. */
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
  const next = work.steps.find(({ state }) => state !== 'done' && state !== 'waits');
  const [chosen, setChosen] = useState<string | null>(null);
  return (
    <>
      <p>
        {work.reference}. <strong>The manual prevails.</strong>
      </p>
      {newer && (
        <p class="strong">
          Revision {newer.revision} of {newer.issuedOn} is recorded since.{' '}
          {confirmed
            ? `The card was confirmed against it by ${confirmed.by}.`
            : 'Nobody confirmed the card against it.'}
        </p>
      )}
      <Cautions cautions={work.cautions} />
      <ol class="card-steps">
        {work.steps.map((step) => (
          <CardStep
            key={step.id}
            reading={reading}
            view={view}
            step={step}
            open={work.ended === null && step.id === (chosen ?? next?.id)}
            choose={() => setChosen(step.id)}
            done={() => setChosen(null)}
          />
        ))}
      </ol>
      <Counted accounts={work.accounts} />
      {work.ended ? (
        <p class="strong">
          {work.ended.how} by {work.ended.by}.
        </p>
      ) : (
        <SignCard reading={reading} view={view} />
      )}
    </>
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
