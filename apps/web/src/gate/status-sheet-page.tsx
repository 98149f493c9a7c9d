import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { CorrectionLine } from '../item/correction-line.js';
import { DeadlineWords } from '../item/deadline-words.js';
import { LeftList } from '../item/left-list.js';
import { SignedBy } from '../item/signed-by.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { flightName, offBlocks } from '../words/flight.js';
import { utcBeside, withOffset } from '../words/time.js';
import { itemName, roleWords, stateWords } from '../words/words.js';

type View = Schemas['AircraftView'];
type Verdict = Schemas['Verdict'];

/** One aircraft on paper, for when systems are down: what is open, its limits and deadlines, what is left on it. */
export function StatusSheetPage() {
  const { id = '' } = useRoute().params;
  const aircraft = useRead<View>(`/aircraft/${id}`);
  const limits = useRead<Verdict>(`/aircraft/${id}/answer`);
  const name = aircraft.value?.registration ?? 'Aircraft';
  return (
    <Page title={`Status of ${name}`} aside={aircraft.value?.type} back={{ href: `/aircraft/${id}`, text: name }}>
      <div class="buttons">
        <button type="button" class="main" onClick={() => window.print()}>
          Print
        </button>
      </div>
      <Read of={aircraft}>
        {(view) => <Read of={limits}>{(verdict) => <Sheet view={view} limits={verdict} />}</Read>}
      </Read>
    </Page>
  );
}

function Sheet({ view, limits }: { view: View; limits: Verdict }) {
  const { operator } = useSession();
  const [next] = view.flights;
  return (
    <>
      <p class="strong">
        As of {withOffset(view.at, operator.base)}, {utcBeside(view.at, operator.base)}. It is old as soon as anything
        changes.
      </p>
      <p>
        {operator.name}
        {view.mel && `, MEL ${view.mel.document} revision ${view.mel.revision}`}
        {view.mel?.notice && `. ${view.mel.notice}`}
      </p>
      <h2>Left on the aircraft</h2>
      <LeftList left={view.left} />
      <h2>Open items</h2>
      {view.items.length === 0 && <p>Nothing open.</p>}
      {view.items.map((item) => (
        <SheetItem key={item.id} item={item} limits={limits} />
      ))}
      <h2>Next flight</h2>
      {next ? <SheetFlight aircraft={view.id} flight={next} /> : <p>None planned.</p>}
    </>
  );
}

function SheetItem({ item, limits }: { item: Schemas['DefectLine']; limits: Verdict }) {
  const again = item.work.filter(({ repeat, signed }) => repeat !== 'once' || signed === null);
  return (
    <section class="card">
      <h3>
        {item.number} {itemName(item)}
      </h3>
      <p>
        {stateWords(item.state)}
        {item.basis && `, ${item.basis}`}
        {item.sheet && `, log sheet ${item.sheet}`}
      </p>
      {item.waits.map((field) => (
        <p key={field} class="strong">
          A correction waits for a second look: {field}. The aircraft does not leave until then.
        </p>
      ))}
      {item.corrected.map((line) => (
        <CorrectionLine key={`${line.at}${line.field}`} line={line} />
      ))}
      {item.deferredBy && (
        <p>
          <SignedBy by={item.deferredBy} />
        </p>
      )}
      <p>{item.deadline ? <DeadlineWords deadline={item.deadline} /> : 'No deadline.'}</p>
      <Limits item={item} limits={limits} />
      {again.map((work) => (
        <p key={work.work}>
          ({work.kind}) {work.repeat}, {roleWords(work.by)}: {work.text}{' '}
          {work.signed && <SignedBy by={work.signed} />}
        </p>
      ))}
      {item.placard && (
        <p>
          Placard {item.placard.fitted ? 'fitted' : 'NOT fitted'}: {item.placard.text}
        </p>
      )}
    </section>
  );
}

/** The provisos of the item's row, and of what is considered inoperative with it. */
function Limits({ item, limits }: { item: Schemas['DefectLine']; limits: Verdict }) {
  const bound = limits.items.filter(({ cause }) =>
    cause.kind === 'failed' ? cause.defect === item.id : cause.by.entry === item.entry,
  );
  const said = bound.flatMap(({ cause, title, unit, conditions }) =>
    conditions
      .filter(({ kind }) => kind === 'proviso')
      .map(({ text }) => (cause.kind === 'failed' ? text : `With it ${title} ${unit} is inoperative: ${text}`)),
  );
  if (said.length === 0) return null;
  return (
    <ul>
      {[...new Set(said)].map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}

function SheetFlight({ aircraft, flight }: { aircraft: string; flight: Schemas['FlightLine'] }) {
  const answer = useRead<Verdict>(`/aircraft/${aircraft}/answer?flight=${flight.id}`);
  return (
    <Read of={answer}>
      {(verdict) => (
        <>
          <p>
            {flightName(flight)}, off blocks {offBlocks(flight)}:{' '}
            <AnswerWords code={verdict.verdict} words={verdict.words} />
          </p>
          <p class="soft">Not looked at: {verdict.notLookedAt.join('; ')}.</p>
        </>
      )}
    </Read>
  );
}
