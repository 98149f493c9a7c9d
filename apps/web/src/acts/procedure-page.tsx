import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-clock.js';
import { type Reading, useRead } from '../api/use-read.js';
import { shortName, worksOf } from '../item/work-address.js';
import { StartCard } from '../cards/card-list.js';
import { useSession } from '../session/session.js';
import { carryOver } from '../shell/announce.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { instantOf, NO_WALL } from '../shell/wall-input.js';
import { itemName, minutesWords, roleWords } from '../words/words.js';
import { DoneAt, type DoneTime } from './done-at.js';
import { ForFlight } from './for-flight.js';
import { LeavesForm, type Leaving } from './leaves-form.js';
import { Steps } from './steps.js';
import { SignForm } from './sign-form.js';

type DefectView = Schemas['DefectView'];
type Work = Schemas['WorkLine'];

/** An (M) or (O) procedure: cautions, steps, what it leaves on the aircraft, signature. */
export function ProcedurePage() {
  const { id = '', entry = '', row = '', procedure = '' } = useRoute().params;
  const defect = useRead<DefectView>(`/defects/${id}`);
  const line = defect.value?.defect;
  const work = line && worksOf(line).find((one) => one.work === `${entry}/${row}/${procedure}`);
  return (
    <Page
      title={work ? `(${work.kind}) ${procedure}` : procedure}
      aside={line && itemName(line)}
      back={{ href: `/defects/${id}`, text: line?.number ?? 'The item' }}
    >
      <Read of={defect}>
        {(view) =>
          work?.card ? (
            <ByCard defect={view.defect} work={work.work} />
          ) : work ? (
            <Procedure reading={defect} view={view} work={work} />
          ) : (
            <p class="strong">The row in force has no procedure {procedure}.</p>
          )
        }
      </Read>
    </Page>
  );
}

/** A procedure that a card does is started here, and gone on with on the card. */
function ByCard({ defect, work }: { defect: Schemas['DefectLine']; work: string }) {
  const cards = useRead<Schemas['CardsOfDefect']>(`/defects/${defect.id}/cards`);
  return (
    <Read of={cards}>
      {({ works, offered }) => {
        const open = works.find((one) => one.procedure === work && one.state === 'open');
        const card = offered.find((one) => one.procedure === work);
        if (open) {
          return (
            <p>
              Started by {open.startedBy}: <a href={`/defects/${defect.id}/cards/${open.id}`}>{open.title}</a>
            </p>
          );
        }
        return card ? <StartCard defect={defect} card={card} /> : <p>The card of this procedure is not there.</p>;
      }}
    </Read>
  );
}

interface ProcedureProps {
  reading: Reading<DefectView>;
  view: DefectView;
  work: Work;
}

function Procedure({ reading, view, work }: ProcedureProps) {
  const { id } = view.defect;
  const { route } = useLocation();
  const { operator } = useSession();
  const [leaving, setLeaving] = useState<Leaving[]>(work.leaves.map((one) => ({ ...one, tag: '', asked: true })));
  const [done, setDone] = useState<DoneTime>({ earlier: false, at: NO_WALL, why: '' });
  const aircraft = useRead<Schemas['AircraftView']>(work.eachDeparture ? `/aircraft/${view.defect.aircraft}` : null);
  const [chosen, setChosen] = useState<string | null>(null);
  // The next departure is meant unless another one is chosen.
  const flight = chosen ?? aircraft.value?.flights[0]?.id ?? null;
  const doneAt = done.earlier ? (instantOf(done.at, operator.base) ?? '') : serverNow();
  const asked = new URLSearchParams({ act: 'procedure', work: work.work }).toString();

  return (
    <>
      <p>
        {work.reference ?? 'No manual reference'}. <strong>The manual prevails.</strong> {minutesWords(work.minutes)},{' '}
        {work.repeat}, {roleWords(work.by)}.
      </p>
      <Steps text={work.text} cautions={work.cautions} />
      <SignForm<Schemas['ActDone']>
        statementPath={work.eachDeparture && aircraft.value === null ? null : `/defects/${id}/statement?${asked}`}
        path={`/defects/${id}/procedures`}
        seen={reading.etag}
        body={() => ({
          work: work.work,
          doneAt,
          leaves: leaving.map(({ kind, where, tag, undo }) => ({ kind, where, tag, undo })),
          ...(flight === null ? {} : { forFlight: flight }),
          ...(done.earlier && done.why ? { lateReason: done.why } : {}),
        })}
        button={`Sign: ${shortName(work.work)} done`}
        done={() => {
          carryOver({ title: `(${work.kind}) ${shortName(work.work)} is signed.`, lines: [] });
          route(`/defects/${id}`);
        }}
        readAgain={() => void reading.readAgain()}
      >
        {work.eachDeparture && <ForFlight aircraft={aircraft} flight={flight} onFlight={setChosen} />}
        <LeavesForm leaving={leaving} onLeaving={setLeaving} />
        <DoneAt done={done} onDone={setDone} />
      </SignForm>
    </>
  );
}
