import { useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { Select } from '../shell/select.js';
import { instantOf, NO_WALL, type WallValue, WallInput } from '../shell/wall-input.js';
import { offBlocks } from '../words/flight.js';

type Stations = Schemas['Stations']['stations'];

export const MAY_PLAN = ['maintenance-control', 'dispatcher'];

/** The flights planned for one aircraft; more are entered here, one by one, or many at once from a list. */
export function PlanPage() {
  const { id = '' } = useRoute().params;
  const planned = useRead<Schemas['PlannedFlights']>(`/aircraft/${id}/flights`);
  const stations = useRead<Schemas['Stations']>('/stations');
  const { roles } = useSession();
  const may = roles.some((role) => MAY_PLAN.includes(role));
  const again = () => void planned.readAgain();
  return (
    <Page title="Flights planned" back={{ href: `/aircraft/${id}`, text: 'The aircraft' }}>
      <Read of={planned}>
        {({ registration, flights, hasMore }) => (
          <>
            <p class="registration">{registration}</p>
            {flights.length === 0 && <p>No flight is planned from now on.</p>}
            <ul class="plain-list cards">
              {flights.map((flight) => (
                <li key={flight.id} class="card">
                  <span class="strong">{flight.number}</span> {flight.fromName} to {flight.toName}
                  <span class="block">{offBlocks(flight)}</span>
                  {may && <CancelForm aircraft={id} flight={flight} done={again} />}
                </li>
              ))}
            </ul>
            {hasMore && <p class="strong">More are planned after these {flights.length}; they count all the same.</p>}
          </>
        )}
      </Read>
      {may && (
        <p>
          <a href="/control/flights">Plan a whole list of flights</a>, pasted or from a file.
        </p>
      )}
      {may && stations.value && <FlightForm aircraft={id} stations={stations.value.stations} planned={again} />}
    </Page>
  );
}

const EMPTY = { number: '', from: '', to: '' };

function FlightForm({ aircraft, stations, planned }: { aircraft: string; stations: Stations; planned(): void }) {
  const [said, setSaid] = useState(EMPTY);
  const [off, setOff] = useState<WallValue>(NO_WALL);
  const [on, setOn] = useState<WallValue>(NO_WALL);
  const { send, sending, problem } = useAct();
  const zoneOf = (code: string): string => stations.find((one) => one.code === code)?.zone ?? 'UTC';
  const options = stations.map(({ code, name }) => ({ value: code, text: `${name} (${code})` }));
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const [offBlockAt, onBlockAt] = [instantOf(off, zoneOf(said.from)), instantOf(on, zoneOf(said.to))];
    const body = { ...said, offBlockAt, onBlockAt };
    if (!(await send({ method: 'POST', path: `/aircraft/${aircraft}/flights`, body }))) return;
    announce(`Flight ${said.number} is planned.`);
    setSaid({ ...EMPTY, from: said.to });
    setOff(NO_WALL);
    setOn(NO_WALL);
    planned();
  }
  if (stations.length < 1) return <p>Stations come first: an administrator enters them.</p>;
  return (
    <form class="card" onSubmit={(event) => void submit(event)}>
      <h2>Plan a flight</h2>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <Field
          label="Flight number"
          value={said.number}
          onValue={(number) => setSaid({ ...said, number: number.toUpperCase() })}
          pointer="/number"
          most={12}
          required
          short
        />
        <Select label="From" value={said.from} onValue={(from) => setSaid({ ...said, from })} options={options} />
        <WallInput what="off blocks" zone={zoneOf(said.from)} value={off} onValue={setOff} pointer="/offBlockAt" />
        <Select label="To" value={said.to} onValue={(to) => setSaid({ ...said, to })} options={options} />
        <WallInput what="on blocks" zone={zoneOf(said.to)} value={on} onValue={setOn} pointer="/onBlockAt" />
      </FieldErrors.Provider>
      <p class="hint">Times as a clock at the station reads.</p>
      <ProblemBox problem={problem} readAgain={planned} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Plan the flight
        </button>
      </div>
    </form>
  );
}

interface CancelFormProps {
  aircraft: string;
  flight: Schemas['PlannedFlights']['flights'][number];
  done(): void;
}

function CancelForm({ aircraft, flight, done }: CancelFormProps) {
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const path = `/aircraft/${aircraft}/flights/${flight.id}/cancellation`;
    if (!(await send({ method: 'POST', path, body: { reason } }))) return;
    announce(`Flight ${flight.number} is cancelled.`);
    done();
  }
  return (
    <details>
      <summary>Cancel {flight.number}</summary>
      <form onSubmit={(event) => void submit(event)}>
        <Field label="Why, for the record" value={reason} onValue={setReason} most={300} required />
        <ProblemBox problem={problem} readAgain={done} />
        <div class="buttons">
          <button disabled={sending}>Cancel the flight {flight.number}</button>
        </div>
      </form>
    </details>
  );
}
