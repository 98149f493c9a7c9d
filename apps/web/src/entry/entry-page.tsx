import { useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { type Reading, useRead } from '../api/use-read.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { flightName, offBlocks } from '../words/flight.js';
import { RowCard } from './row-card.js';
import { UnitChoice } from './unit-choice.js';

type DefectView = Schemas['DefectView'];

/** One entry: name the unit, read each row with its answer for the next flight, choose one and sign. */
export function EntryPage() {
  const { id = '', number = '' } = useRoute().params;
  const defect = useRead<DefectView>(`/defects/${id}`);
  return (
    <Page title={`Entry ${number}`} back={{ href: `/defects/${id}/entries`, text: 'What failed?' }}>
      <Read of={defect}>{(view) => <ForDefect reading={defect} view={view} number={number} />}</Read>
    </Page>
  );
}

function ForDefect({ reading, view, number }: { reading: Reading<DefectView>; view: DefectView; number: string }) {
  const { aircraft } = view.defect;
  const entry = useRead<Schemas['EntryView']>(`/aircraft/${aircraft}/entries/${number}`);
  const flights = useRead<Schemas['AircraftView']>(`/aircraft/${aircraft}`);
  return (
    <Read of={entry}>
      {(value) => (
        <Read of={flights}>
          {({ flights: [next] }) => <Rows entry={value} defect={reading} view={view} next={next ?? null} />}
        </Read>
      )}
    </Read>
  );
}

interface RowsProps {
  entry: Schemas['EntryView'];
  defect: Reading<DefectView>;
  view: DefectView;
  next: Schemas['FlightLine'] | null;
}

function Rows({ entry, defect, view, next }: RowsProps) {
  const line = view.defect;
  const isDeferred = line.row !== null;
  const named = line.entry === entry.number ? line.units : [];
  const [units, setUnits] = useState<string[]>(
    named.length > 0 ? named : entry.units.length === 1 ? entry.units : [],
  );
  const [oneOf, setOneOf] = useState(named.length > 1);
  const told = units.length > 0 && (!oneOf || units.length > 1);
  if (entry.applies !== 'yes') {
    return (
      <p class="caution">
        <strong>{entry.title}</strong> cannot be used for {line.registration}. {entry.because}
      </p>
    );
  }
  return (
    <>
      <p class="entry-title">{entry.title}</p>
      {isDeferred ? (
        <p>Unit {line.units.join(' or ')}. Changing the row keeps the clock, and every limit signed so far.</p>
      ) : (
        <UnitChoice
          installed={entry.units}
          units={units}
          oneOf={oneOf}
          onUnits={(chosen, several) => {
            setUnits(chosen);
            setOneOf(several);
          }}
        />
      )}
      {next && (
        <p>
          Answers are for {flightName(next)}, off blocks {offBlocks(next)}, if the row were signed now.
        </p>
      )}
      {!told && <p class="strong">Name the unit to see what each row answers.</p>}
      {entry.rows.map((row) => (
        <RowCard
          key={row.id}
          row={row}
          entry={entry}
          view={view}
          seen={defect.etag}
          units={told ? units : []}
          flight={next}
          readAgain={() => void defect.readAgain()}
        />
      ))}
      {entry.rows.length === 0 && <p class="strong">This entry offers no row.</p>}
      {entry.source && <p class="soft">Text: {entry.source}. The approved MEL is the authority.</p>}
    </>
  );
}
