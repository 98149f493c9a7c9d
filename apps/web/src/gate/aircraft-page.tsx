import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { AnswerBox } from '../answer/answer-box.js';
import { ItemCard } from '../item/item-card.js';
import { TakeOut } from '../item/take-out.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { flightName, offBlocks } from '../words/flight.js';
import { withOffset } from '../words/time.js';
import { counted } from '../words/words.js';
import { FlightsAfter } from './flights-after.js';
import { LeftList } from '../item/left-list.js';

type View = Schemas['AircraftView'];

/** One aircraft: what is left on it first, then what is open, then whether it may fly next. */
export function AircraftPage() {
  const { id = '' } = useRoute().params;
  const aircraft = useRead<View>(`/aircraft/${id}`);
  useLive(aircraft, id);
  const name = aircraft.value?.registration ?? 'Aircraft';
  return (
    <Page title={name} aside={aircraft.value?.type} back={{ href: '/aircraft', text: 'All aircraft' }}>
      <div class="buttons">
        <a class="button main" href={`/aircraft/${id}/write-up`}>
          Write up a defect
        </a>
        <a class="button" href={`/aircraft/${id}/status-sheet`}>
          Status sheet
        </a>
        <a class="button" href={`/aircraft/${id}/flown`}>
          Flown
        </a>
        <a class="button" href={`/aircraft/${id}/plan`}>
          Flights planned
        </a>
      </div>
      <Read of={aircraft}>{(view) => <Content view={view} />}</Read>
    </Page>
  );
}

function Content({ view }: { view: View }) {
  const { operator } = useSession();
  const [, ...after] = view.flights;
  return (
    <div class="two">
      <div>
        <h2>Left on the aircraft: {counted(view.left.length, 'thing', 'things', 'nothing')}</h2>
        {view.left.length > 0 && <LeftList left={view.left} />}
        <p>
          <a class="button" href={`/aircraft/${view.id}/left`}>
            The whole register
          </a>
        </p>
        <h2>{counted(view.items.length, 'open item', 'open items', 'Nothing open')}</h2>
        <ul class="plain-list cards">
          {view.items.map((item) => (
            <li key={item.id}>
              <ItemCard item={item} />
            </li>
          ))}
        </ul>
      </div>
      <div>
        <h2>Next flight</h2>
        <NextAnswer view={view} />
        <FlightsAfter aircraft={view.id} flights={after} />
        <p class="soft">
          As of {withOffset(view.at, operator.base)}
          {view.mel && `, MEL ${view.mel.document} revision ${view.mel.revision}`}
        </p>
        <TakeOut of={`/aircraft/${view.id}`} />
      </div>
    </div>
  );
}

function NextAnswer({ view }: { view: View }) {
  const [next] = view.flights;
  const asked = next ? `?flight=${next.id}` : '';
  const answer = useRead<Schemas['Verdict']>(`/aircraft/${view.id}/answer${asked}`);
  return (
    <>
      <p>{next ? `${flightName(next)}, off blocks ${offBlocks(next)}` : 'No flight is planned.'}</p>
      <Read of={answer}>
        {(verdict) => (
          <AnswerBox
            verdict={verdict}
            aircraft={view.id}
            about={next?.number ?? 'without a flight'}
            offBlockAt={next?.offBlockAt ?? null}
            items={view.items}
            answered={() => void answer.readAgain()}
          />
        )}
      </Read>
      {next && (
        <p>
          <a class="button" href={`/aircraft/${view.id}/flights/${next.id}`}>
            The whole answer, and what would help
          </a>
        </p>
      )}
    </>
  );
}
