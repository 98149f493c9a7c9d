import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { carryOver } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { Counted } from './counted.js';
import type { CardView } from './step-props.js';

/** Stops a card half-worked: nothing of it may be out any more, and what was done counts as work that is not complete. */
export function StopCardPage() {
  const { id = '', work = '' } = useRoute().params;
  const card = useRead<CardView>(`/defects/${id}/cards/${work}`);
  return (
    <Page
      title="Stop the card"
      aside={card.value?.work.title}
      back={{ href: `/defects/${id}/cards/${work}`, text: 'The card' }}
    >
      <Read of={card}>{(view) => <Stop reading={card} view={view} />}</Read>
    </Page>
  );
}

function Stop({ reading, view: { defect, work } }: { reading: Reading<CardView>; view: CardView }) {
  const { route } = useLocation();
  const [reason, setReason] = useState('');
  const asked = new URLSearchParams({ act: 'card-stop', work: work.id }).toString();
  const done = work.steps.filter(({ state }) => state === 'done').length;
  if (work.ended) {
    return (
      <p class="strong">
        {work.ended.how} by {work.ended.by}.
      </p>
    );
  }
  return (
    <>
      <p>
        {done} of {work.steps.length} steps are done.{' '}
        {work.procedure === null
          ? 'What was done counts as work that is not complete: it is released as that, or somebody takes the card up again.'
          : 'The procedure stays owed.'}
      </p>
      {holdsSomethingOut(work) && (
        <p class="strong">
          Something of it is still out, so it cannot be stopped yet.{' '}
          <a href={`/defects/${defect.id}/cards/${work.id}`}>Undo each by its step first.</a>
        </p>
      )}
      <Counted accounts={work.accounts} />
      <SignForm<Schemas['ActDone']>
        statementPath={`/defects/${defect.id}/statement?${asked}`}
        path={`/defects/${defect.id}/card-stops`}
        seen={reading.etag}
        body={() => ({ work: work.id, reason })}
        button="Sign: stop the card"
        done={() => {
          carryOver({ title: `${work.title}: the card is stopped.`, lines: [] });
          route(`/defects/${defect.id}`);
        }}
        readAgain={() => void reading.readAgain()}
      >
        <Field
          label="Why it is stopped"
          hint="The release states it."
          value={reason}
          onValue={setReason}
          pointer="/reason"
          most={1000}
          lines={2}
          required
        />
      </SignForm>
    </>
  );
}

/** What an earlier card left is not this card's to undo before it is stopped. */
const holdsSomethingOut = ({ steps }: CardView['work']): boolean =>
  steps.some(({ kind, account }) => kind === 'out' && (account?.state === 'out' || account?.state === 'stays'));
