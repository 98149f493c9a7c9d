import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { Said } from '../shell/said.js';
import { calendarDayText, dayAndTime, withOffset } from '../words/time.js';
import { itemName } from '../words/words.js';
import { AskForm } from './ask-form.js';
import { Asked, ExtensionState, NoticeState } from './extension-states.js';
import { WaitingRequest } from './waiting-request.js';

type Offer = Schemas['ExtensionOffer'];

const MAY_ASK = ['maintenance-control', 'engineer', 'quality'];

/** Extending one item: what it would give or why it may not be, the request that waits, and what came before. */
export function ExtensionPage() {
  const { id = '' } = useRoute().params;
  const item = useRead<Schemas['DefectView']>(`/defects/${id}`);
  const offer = useRead<Offer>(`/defects/${id}/extension`);
  const { roles } = useSession();
  const line = item.value?.defect;

  function readAgain(): void {
    void item.readAgain();
    void offer.readAgain();
  }
  function done(said: string): void {
    announce(said);
    readAgain();
  }

  return (
    <Page
      title="Extend the interval"
      aside={line && itemName(line)}
      back={{ href: `/defects/${id}`, text: line?.number ?? 'The item' }}
    >
      <Read of={offer}>
        {(view) => {
          const waiting = view.extensions.find(({ state }) => state === 'asked');
          const closed = view.extensions.filter((one) => one !== waiting);
          const mayAsk = view.offer !== null && roles.some((role) => MAY_ASK.includes(role));
          const same = { defect: id, seen: item.etag, readAgain };
          return (
            <>
              <What view={view} />
              {waiting && <WaitingRequest key={waiting.id} line={waiting} done={done} {...same} />}
              {mayAsk && !waiting && (
                <AskForm asked={() => done('It is asked for; nothing has moved yet.')} {...same} />
              )}
              {closed.length > 0 && <Before extensions={closed} />}
              <p>
                <a href={`/defects/${id}/authority-document`}>Enter what an authority allows beyond the deadline</a>
              </p>
              <p>
                <a href="/extensions">All extensions and their notices</a>
              </p>
            </>
          );
        }}
      </Read>
    </Page>
  );
}

function What({ view: { offer, refused } }: { view: Offer }) {
  const { operator } = useSession();
  if (refused !== null) {
    return (
      <div class="caution">
        <p>
          <span class="state heavy">May not be extended</span> <Said text={refused.sentence} />
        </p>
        <p>
          <Said text={refused.next} />
        </p>
        <p class="soft">{refused.paragraph}</p>
      </div>
    );
  }
  if (offer === null) return null;
  const { procedure, lastDay, lastDayBefore, endsAt, noticeDueAt, explanation } = offer;
  return (
    <>
      <p>
        Granted now it would end with{' '}
        <strong>{lastDay ? calendarDayText(lastDay) : endsAt && dayAndTime(endsAt, operator.base)}</strong>
        {lastDayBefore && <>, instead of {calendarDayText(lastDayBefore)}</>}. Once, by another authorised person,
        under {procedure}.
      </p>
      {noticeDueAt && <p>The authority would have to be told by {withOffset(noticeDueAt, operator.base)}.</p>}
      {explanation && (
        <p class="soft">
          Counted: <Said text={explanation} />
        </p>
      )}
      <p class="soft">An extension is no plan: rectify as soon as practicable.</p>
    </>
  );
}

function Before({ extensions }: { extensions: Schemas['ExtensionLine'][] }) {
  return (
    <section>
      <h2>So far</h2>
      <ul class="plain-list">
        {extensions.map((line) => (
          <li key={line.id}>
            <div class="card">
              <ExtensionState line={line} />
              {line.notice && <NoticeState notice={line.notice} />}
              <Asked asked={line.asked} />
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
