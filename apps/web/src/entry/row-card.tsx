import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useQuestion } from '../api/use-read.js';
import { SignForm } from '../acts/sign-form.js';
import { AnswerBox } from '../answer/answer-box.js';
import { carryOver } from '../shell/announce.js';
import { Read } from '../shell/reading.js';
import { useSettled } from '../shell/use-settled.js';
import { ConcurrencePart } from './concurrence-part.js';
import { ChangeRowForm } from './change-row-form.js';
import { RowText } from './row-text.js';
import { startQuery, startSent, StatedStart, type StatedStartValue } from './stated-start.js';
import { NO_WALL } from '../shell/wall-input.js';
import { WhatNext } from './what-next.js';

type EntryView = Schemas['EntryView'];

const BY_ROW: StatedStartValue = { how: 'row', at: NO_WALL, counter: '', reading: '', document: '' };

interface RowCardProps {
  row: EntryView['rows'][number];
  entry: EntryView;
  view: Schemas['DefectView'];
  seen: string | null;
  /** Empty until the unit is named. */
  units: string[];
  flight: Schemas['FlightLine'] | null;
  readAgain(): void;
}

/** One row: what it says, what it would answer, and its signature. */
export function RowCard(props: RowCardProps) {
  const { row, entry, view, seen, units, flight, readAgain } = props;
  const { defect } = view;
  const standsOn = defect.entry === entry.number ? defect.row : null;
  const { route } = useLocation();
  const [chosen, setChosen] = useState(false);
  const [start, setStart] = useState(BY_ROW);
  const tried = { defect: defect.id, entry: entry.number, units, row: row.id };
  const answer = useQuestion<Schemas['Verdict']>(
    '/dispatch/questions',
    units.length === 0
      ? null
      : { aircraft: defect.aircraft, ...(flight ? { flight: flight.id } : {}), propose: [tried] },
  );

  function done({ defect: after }: Schemas['ActDone']): void {
    carryOver({
      title: `${standsOn === null ? 'Deferred under' : 'Changed to'} ${after.basis ?? 'the row'}.`,
      lines: ['Its procedures and placard are to be signed next.'],
    });
    route(`/defects/${defect.id}`);
  }

  const started = useSettled(JSON.stringify(startQuery(start)));
  const query = { entry: entry.number, row: row.id, ...(JSON.parse(started) as Record<string, string> | null) };
  const asked = started === 'null' ? null : new URLSearchParams({ act: 'defer', ...query }).toString();
  const stated = row.category === 'A' && <StatedStart value={start} onValue={setStart} />;
  return (
    <section class={`card row ${chosen ? 'chosen' : ''}`} aria-label={`Row ${row.id}`}>
      <RowText row={row} />
      {units.length > 0 && (
        <Read of={answer}>
          {(verdict) => (
            <>
              <AnswerBox
                verdict={verdict}
                aircraft={defect.aircraft}
                about={flight ? `${flight.number}, if row ${row.id} is signed` : `if row ${row.id} is signed`}
                offBlockAt={flight?.offBlockAt ?? null}
                tried={`${entry.number}/${row.id}/`}
                answered={() => void answer.readAgain()}
              />
              {standsOn === null && (
                <WhatNext
                  verdict={verdict}
                  defect={defect}
                  about={flight?.number ?? 'the next flight'}
                  rows={entry.rows.length}
                />
              )}
            </>
          )}
        </Read>
      )}
      {standsOn === row.id && <p class="strong">This row is signed for it.</p>}
      {units.length > 0 && standsOn !== row.id && (
        <ConcurrencePart
          view={view}
          basis={`MEL ${entry.number} row ${row.id}`}
          query={started === 'null' ? null : query}
          stated={stated}
          body={{ item: { entry: entry.number, units }, row: row.id, ...startSent(start) }}
          seen={seen}
          readAgain={readAgain}
        />
      )}
      {units.length > 0 && !chosen && standsOn !== row.id && (
        <div class="buttons">
          <button type="button" onClick={() => setChosen(true)}>
            {standsOn === null ? 'Choose' : 'Change to'} row {row.id}
          </button>
        </div>
      )}
      {chosen && standsOn !== null && (
        <ChangeRowForm view={view} row={row.id} seen={seen} done={done} readAgain={readAgain} />
      )}
      {chosen && standsOn === null && units.length > 0 && (
        <SignForm<Schemas['ActDone']>
          statementPath={asked === null ? null : `/defects/${defect.id}/statement?${asked}`}
          path={`/defects/${defect.id}/deferral`}
          seen={seen}
          body={() => ({ item: { entry: entry.number, units }, row: row.id, ...startSent(start) })}
          button="Sign: defer"
          done={done}
          readAgain={readAgain}
          takesFocus
        >
          {stated}
        </SignForm>
      )}
    </section>
  );
}
