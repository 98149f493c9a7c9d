import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { flightName, offBlocks } from '../words/flight.js';
import { withOffset } from '../words/time.js';
import { AnswerBox } from './answer-box.js';
import { Combination } from './combination.js';

/** One flight of one aircraft: its answer with everything it rests on. */
export function AnswerPage() {
  const { id = '', flight: flightId = '' } = useRoute().params;
  const { operator } = useSession();
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${id}`);
  const answer = useRead<Schemas['Verdict']>(`/aircraft/${id}/answer?flight=${flightId}`);
  const flight = aircraft.value?.flights.find((one) => one.id === flightId);
  const name = aircraft.value?.registration ?? 'The aircraft';
  const again = () => void answer.readAgain();
  return (
    <Page title={`${name}, ${flight?.number ?? 'flight'}`} back={{ href: `/aircraft/${id}`, text: name }}>
      {flight && (
        <p>
          {flight.fromName} to {flight.toName}, off blocks {offBlocks(flight)}
        </p>
      )}
      <h2 class="unseen">The answer</h2>
      <Read of={answer}>
        {(verdict) => (
          <>
            <AnswerBox
              verdict={verdict}
              aircraft={id}
              about={flight ? flightName(flight) : 'this flight'}
              offBlockAt={flight?.offBlockAt ?? null}
              items={aircraft.value?.items ?? []}
              answered={again}
              whole
            />
            <p>
              <a class="button" href={`/aircraft/${id}/flights/${flightId}/acceptance`}>
                Acceptance by commander and dispatcher
              </a>
            </p>
            <Combination verdict={verdict} aircraft={id} given={again} />
            <p class="soft">
              Asked {withOffset(verdict.at, operator.base)}, MEL {verdict.mel?.document} revision{' '}
              {verdict.mel?.revision}.
            </p>
          </>
        )}
      </Read>
    </Page>
  );
}
