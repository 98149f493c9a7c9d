import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { Accepted } from '../accepting/accepted.js';
import { AnswerWords } from '../answer/answer-words.js';
import { DeadlineWords } from '../item/deadline-words.js';
import { StateWords } from '../item/state-words.js';
import { StillToDo } from '../opening/still-to-do.js';
import { useSession } from '../session/session.js';
import { Cell } from '../shell/cell.js';
import { Finder } from '../shell/finder.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { Said } from '../shell/said.js';
import { offBlocks } from '../words/flight.js';
import { withOffset } from '../words/time.js';

type Fleet = Schemas['Fleet'];
type Line = Schemas['FleetLine'];

/** The fleet as one plain table: how each aircraft stands, what ends next, and whether it may fly next. */
export function ControlPage() {
  const { operator } = useSession();
  const fleet = useRead<Fleet>('/fleet');
  useLive(fleet);
  return (
    <Page
      title="Fleet"
      aside={fleet.value && `as of ${withOffset(fleet.value.at, operator.base)}`}
      press={
        <button type="button" class="quiet" onClick={() => void fleet.readAgain()}>
          Read again
        </button>
      }
    >
      <Read of={fleet}>
        {(value) => (
          <>
            <StillToDo />
            <InShort lines={value.aircraft} />
            {value.aircraft.length > 0 && (
              <Finder of={value.aircraft} textOf={wordsOf} hint="By registration, type, flight or station.">
                {(lines) => <FleetTable lines={lines} />}
              </Finder>
            )}
          </>
        )}
      </Read>
      <p>
        <a href="/control/swap">Exchange rotations between aircraft</a>
      </p>
      <p>
        <a href="/control/stations">Stations and their people</a>
      </p>
      <p>
        <a href="/control/flights">Plan a list of flights</a>, pasted or from a file
      </p>
      <p>
        <a href="/control/aircraft">Aircraft as they were entered</a>: new ones, what is fitted, and those that left
      </p>
      <p>
        <a href="/movements">Movement messages</a>: taken in by hand, and the tray of those that wait for a person
      </p>
    </Page>
  );
}

/** What needs somebody first: who cannot leave as planned, and who breaks later, the soonest first. */
function InShort({ lines }: { lines: readonly Line[] }) {
  const next = (code: string) => lines.filter(({ nextFlight }) => nextFlight?.verdict === code);
  const marks = (some: readonly Line[]) => some.map(({ registration }) => registration).join(', ');
  const [refused, open] = [next('may-not-fly'), next('not-settled')];
  const later = lines
    .flatMap(({ registration, ahead }) =>
      ahead === null || ahead.breaks === null || ahead.kept === 0 ? [] : [{ registration, ...ahead.breaks }],
    )
    .toSorted((one, other) => one.flight.offBlockAt.localeCompare(other.flight.offBlockAt));
  const soon = later.map(({ registration, flight }) => `${registration} (${flight.number}, ${flight.offBlockLocal})`);
  if (refused.length + open.length + later.length === 0) return null;
  return (
    <ul class="plain-list" aria-label="In short">
      {refused.length > 0 && (
        <li>
          <strong>May not fly next:</strong> {marks(refused)}
        </li>
      )}
      {open.length > 0 && (
        <li>
          <strong>Next flight not settled:</strong> {marks(open)}
        </li>
      )}
      {soon.length > 0 && (
        <li>
          <strong>Not kept later:</strong> {soon.join(', ')}
        </li>
      )}
    </ul>
  );
}

function wordsOf({ registration, type, nextFlight }: Line): string {
  const flight = nextFlight?.flight;
  return [registration, type, flight?.number, flight?.from, flight?.fromName, flight?.to, flight?.toName].join(' ');
}

function FleetTable({ lines }: { lines: readonly Line[] }) {
  return (
    <table class="stack fleet">
      <thead>
        <tr>
          <th scope="col">Aircraft</th>
          <th scope="col">Stands</th>
          <th scope="col">Left on it</th>
          <th scope="col">Ends next</th>
          <th scope="col">Next flight</th>
          <th scope="col">Answer</th>
          <th scope="col">Ahead</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <AircraftRow key={line.id} line={line} />
        ))}
      </tbody>
    </table>
  );
}

function AircraftRow({ line }: { line: Line }) {
  const { nextDeadline, nextFlight, ahead } = line;
  return (
    <tr>
      <th scope="row">
        <a class="registration" href={`/aircraft/${line.id}`}>
          {line.registration}
        </a>
      </th>
      <Cell head="Stands">
        <StateWords state={stateOf(line)} />
        {line.openItems > 0 && <span class="block">{line.openItems} open</span>}
      </Cell>
      <Cell head="Left on it">{line.leftOnAircraft === 0 ? 'nothing' : line.leftOnAircraft}</Cell>
      <Cell head="Ends next">
        {nextDeadline ? (
          <>
            <a href={`/defects/${nextDeadline.defect}`}>{nextDeadline.title}</a>
            <span class="block">
              <DeadlineWords deadline={nextDeadline.deadline} />
            </span>
          </>
        ) : (
          'no deadline'
        )}
      </Cell>
      <Cell head="Next flight">{nextFlight ? <NextFlight next={nextFlight} /> : 'none planned'}</Cell>
      <Cell head="Answer">
        {nextFlight && (
          <>
            <a class="plain-link" href={`/aircraft/${line.id}/flights/${nextFlight.flight.id}`}>
              <AnswerWords code={nextFlight.verdict} words={nextFlight.words} />
            </a>
            <span class="block clamp">
              <Said text={nextFlight.why} />
            </span>
            <Accepted given={nextFlight.accepted} />
            {nextFlight.verdict === 'may-not-fly' && (
              <a class="block" href={`/aircraft/${line.id}/flights/${nextFlight.flight.id}`}>
                What would help
              </a>
            )}
          </>
        )}
      </Cell>
      <Cell head="Ahead">{ahead && <Ahead ahead={ahead} aircraft={line.id} />}</Cell>
    </tr>
  );
}

/** How far it gets, and where it first does not; the page behind it says why and what would save it. */
function Ahead({
  ahead: { flights, kept, breaks },
  aircraft,
}: {
  ahead: NonNullable<Line['ahead']>;
  aircraft: string;
}) {
  return (
    <>
      <a href={`/aircraft/${aircraft}/day`}>
        {kept === flights ? `all ${flights} kept` : `${kept} of ${flights} kept`}
      </a>
      {breaks && kept > 0 && (
        <span class="block">
          Then {breaks.words}: <span class="strong">{breaks.flight.number}</span> at {breaks.flight.fromName},{' '}
          {breaks.flight.offBlockLocal} local
        </span>
      )}
    </>
  );
}

function NextFlight({ next: { flight } }: { next: NonNullable<Line['nextFlight']> }) {
  return (
    <>
      <span class="strong">{flight.number}</span> {flight.fromName} to {flight.toName}
      <span class="block">{offBlocks(flight)}</span>
    </>
  );
}

function stateOf({ openItems, unanswered }: Line): string {
  if (openItems === 0) return 'nothing open';
  return unanswered > 0 ? 'unanswered' : 'open under deferral';
}
