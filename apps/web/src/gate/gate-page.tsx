import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { StillToDo } from '../opening/still-to-do.js';
import { Finder } from '../shell/finder.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { offBlocks } from '../words/flight.js';
import { counted } from '../words/words.js';

type Line = Schemas['FleetLine'];

/** Pick the aircraft you stand at. */
export function GatePage() {
  const fleet = useRead<Schemas['Fleet']>('/fleet');
  useLive(fleet);
  return (
    <Page title="Which aircraft?">
      <Read of={fleet}>
        {({ aircraft }) => (
          <>
            {aircraft.length === 0 && <StillToDo />}
            <Finder
              of={aircraft}
              textOf={({ registration, type }) => `${registration} ${type}`}
              hint="By registration or type."
            >
              {(found) => (
                <ul class="plain-list cards">
                  {found.map((line) => (
                    <li key={line.id}>
                      <AircraftCard line={line} />
                    </li>
                  ))}
                </ul>
              )}
            </Finder>
          </>
        )}
      </Read>
    </Page>
  );
}

function AircraftCard({ line }: { line: Line }) {
  const { nextFlight } = line;
  return (
    <a class="big" href={`/aircraft/${line.id}`}>
      <span class="card-head">
        <span>
          <span class="registration">{line.registration}</span> <span class="soft wide-only">{line.type}</span>
        </span>
        {nextFlight && <AnswerWords code={nextFlight.verdict} words={nextFlight.words} />}
      </span>
      <span class="block">{standingWords(line)}</span>
      {nextFlight && (
        <span class="soft block">
          {nextFlight.flight.number} to {nextFlight.flight.toName}, {offBlocks(nextFlight.flight)}
        </span>
      )}
    </a>
  );
}

/** `2 open items, 1 of them not answered; 3 left on it` */
export function standingWords({ openItems, unanswered, leftOnAircraft }: Line): string {
  const open = counted(openItems, 'open item', 'open items', 'Nothing open');
  const asked = unanswered === 0 ? '' : `, ${unanswered === openItems ? '' : `${unanswered} of them `}not answered`;
  const left = leftOnAircraft === 0 ? 'nothing' : leftOnAircraft;
  return `${open}${asked}; ${left} left on it`;
}
