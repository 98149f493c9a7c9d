import { useEffect, useRef } from 'preact/hooks';
import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { type Reading, useRead } from '../api/use-read.js';
import { AllowedBeyond } from '../extensions/allowed-beyond.js';
import { CardList } from '../cards/card-list.js';
import { RepeatList } from '../repeats/repeat-list.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { itemName } from '../words/words.js';
import { RecurrenceFlag } from '../repetitive/recurrence-flag.js';
import { DeadlineWords } from './deadline-words.js';
import { History } from './history.js';
import { LeftList } from './left-list.js';
import { NextAnswer } from './next-answer.js';
import { NextSteps } from './next-steps.js';
import { TakeOut } from './take-out.js';
import { StateWords } from './state-words.js';
import { WaitingCorrections } from './waiting.js';
import { WorkSigned } from './work-signed.js';

type View = Schemas['DefectView'];

/** One item: how it stands, what to do next, until when, what is left of it on the aircraft, and its whole history. */
export function ItemPage() {
  const { id = '' } = useRoute().params;
  const item = useRead<View>(`/defects/${id}`);
  useLive(item, item.value?.defect.aircraft);
  const line = item.value?.defect;
  useUntilSealed(item);
  return (
    <Page
      title={line ? titleOf(line) : 'Item'}
      aside={line?.entry ? line.number : undefined}
      back={line && { href: `/aircraft/${line.aircraft}`, text: line.registration }}
    >
      <Read of={item}>{(view) => <Content view={view} />}</Read>
    </Page>
  );
}

/** Before an entry is named there is no name but the write-up itself, which stands below word for word. */
function titleOf(line: View['defect']): string {
  return line.entry === null ? `Write-up ${line.number}` : itemName(line);
}

const SEAL_WAIT_MS = 1500;
const MOST_LOOKS = 5;

/** What was signed a moment ago gets its number in the record soon: looks again a few times. */
function useUntilSealed({ value, readAgain }: Reading<View>): void {
  const looks = useRef(0);
  useEffect(() => {
    const waits = value?.history.some(({ sealedAs }) => sealedAs === null) ?? false;
    if (!waits || looks.current >= MOST_LOOKS) return undefined;
    const timer = setTimeout(() => {
      looks.current += 1;
      void readAgain();
    }, SEAL_WAIT_MS);
    return () => clearTimeout(timer);
  }, [value, readAgain]);
}

function Content({ view }: { view: View }) {
  const { defect, arithmetic, left, history, repeats } = view;
  const closed = defect.state === 'closed';
  return (
    <div class="two">
      <div>
        <p>
          <StateWords state={defect.state} /> {defect.basis}
        </p>
        {defect.deadline && (
          <p>
            <DeadlineWords deadline={defect.deadline} />
            {arithmetic && <span class="soft block">Counted: {arithmetic}</span>}
          </p>
        )}
        {defect.basis === null && <About defect={defect} />}
        <WaitingCorrections view={view} />
        <RecurrenceFlag defect={defect.id} />
        {!closed && <NextSteps view={view} />}
        {!closed && defect.deadline && (
          <p>
            <a href={`/defects/${defect.id}/extension`}>Extend the interval</a>: what it would give, and whether it
            may be.
          </p>
        )}
        <AllowedBeyond documents={view.documents} />
        {defect.basis !== null && <About defect={defect} />}
        {!closed && <CardList defect={defect} />}
        {!closed && <NextAnswer item={defect} />}
        {left.length > 0 && (
          <>
            <h2>Left on the aircraft for it</h2>
            <LeftList left={left} own />
          </>
        )}
        {repeats.length > 0 && <RepeatList repeats={repeats} />}
        {defect.work.length > 0 && <WorkSigned defect={defect} />}
      </div>
      <div>
        <h2>History</h2>
        <History history={history} defect={defect.id} />
        <TakeOut of={`/defects/${defect.id}`} placards={view.defect} />
      </div>
    </div>
  );
}

/** What was written up. Once it is answered, what is to be done next comes before it. */
function About({ defect }: { defect: View['defect'] }) {
  const { operator } = useSession();
  return (
    <>
      <p>{defect.description}</p>
      {defect.onItsFlight && (
        <p>
          {defect.onItsFlight.words} {defect.onItsFlight.caution}{' '}
          <span class="soft">
            {defect.onItsFlight.source} ({defect.onItsFlight.mark})
          </span>
        </p>
      )}
      <p class="soft">
        {defect.faultMessage && <>Message: {defect.faultMessage} · </>}
        {defect.sheet && <>Log sheet {defect.sheet} · </>}
        {defect.system && <>System (ATA chapter) {defect.system} · </>}
        In the log {withOffset(defect.recordedAt, operator.base)}
      </p>
    </>
  );
}
