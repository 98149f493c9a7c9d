import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useQuestion, useRead } from '../api/use-read.js';
import { Tick } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { Proposal } from './proposal.js';

/** Aircraft that operations allow, for each rotation by the id of the aircraft it is planned for. */
type Allowed = Readonly<Record<string, readonly string[]>>;

/** Could aircraft exchange what is planned for them? Operations say whom they allow; without that nothing is offered. */
export function SwapPage() {
  const fleet = useRead<Schemas['Fleet']>('/fleet');
  return (
    <Page title="Exchange rotations" back={{ href: '/control', text: 'Fleet' }}>
      <p>
        What is planned for one aircraft from now on changes hands as a whole, where both aircraft stand at the
        station it leaves from. Nothing is stored: operations decide.
      </p>
      <Read of={fleet}>
        {(value) => <SwapForm lines={value.aircraft.filter(({ nextFlight }) => nextFlight !== null)} />}
      </Read>
    </Page>
  );
}

function SwapForm({ lines }: { lines: readonly Schemas['FleetLine'][] }) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [allowed, setAllowed] = useState<Allowed>({});
  const [asked, setAsked] = useState<Allowed | null>(null);
  const among = lines.filter(({ id }) => chosen.includes(id));
  const choose = (ids: readonly string[]) => {
    setChosen(ids);
    setAsked(null);
  };
  return (
    <>
      <form
        class="card"
        onSubmit={(event) => {
          event.preventDefault();
          setAsked(allowed);
        }}
      >
        <fieldset>
          <legend>Which aircraft</legend>
          {lines.map(({ id, registration, nextFlight }) => (
            <Tick
              key={id}
              label={registration}
              hint={`${nextFlight?.flight.number ?? ''} from ${nextFlight?.flight.fromName ?? ''}: ${nextFlight?.words ?? ''}`}
              ticked={chosen.includes(id)}
              onTick={(ticked) => choose(withOrWithout(chosen, id, ticked))}
            />
          ))}
        </fieldset>
        {among.map(({ id, registration, nextFlight }) => (
          <fieldset key={id}>
            <legend>
              Operations allow on the flights of {registration}, {nextFlight?.flight.number} and after
            </legend>
            {among.map((other) => (
              <Tick
                key={other.id}
                label={other.registration}
                ticked={allowed[id]?.includes(other.id) ?? false}
                onTick={(ticked) => {
                  setAllowed({ ...allowed, [id]: withOrWithout(allowed[id] ?? [], other.id, ticked) });
                  setAsked(null);
                }}
              />
            ))}
          </fieldset>
        ))}
        <div class="buttons">
          <button disabled={among.length === 0}>Look for an exchange</button>
        </div>
      </form>
      {asked !== null && <Asked aircraft={chosen} allowed={asked} />}
    </>
  );
}

function withOrWithout(ids: readonly string[], id: string, ticked: boolean): string[] {
  return ticked ? [...ids, id] : ids.filter((one) => one !== id);
}

/** The rotations are read first: the question names each of their flights. */
function Asked({ aircraft, allowed }: { aircraft: readonly string[]; allowed: Allowed }) {
  const [first, ...rest] = aircraft;
  return first === undefined ? null : (
    <Rotations next={first} rest={rest} read={[]} all={aircraft} allowed={allowed} />
  );
}

interface RotationsProps {
  next: string;
  rest: readonly string[];
  read: readonly { id: string; flights: readonly string[] }[];
  all: readonly string[];
  allowed: Allowed;
}

function Rotations({ next, rest, read, all, allowed }: RotationsProps) {
  const view = useRead<Schemas['AircraftView']>(`/aircraft/${next}`);
  return (
    <Read of={view}>
      {({ id, flights }) => {
        const known = [...read, { id, flights: flights.map((flight) => flight.id) }];
        const [following, ...others] = rest;
        return following === undefined ? (
          <Answer all={all} known={known} allowed={allowed} />
        ) : (
          <Rotations key={following} next={following} rest={others} read={known} all={all} allowed={allowed} />
        );
      }}
    </Read>
  );
}

function Answer({
  all,
  known,
  allowed,
}: {
  all: readonly string[];
  known: RotationsProps['read'];
  allowed: Allowed;
}) {
  const lists = known
    .filter(({ id }) => (allowed[id]?.length ?? 0) > 0)
    .flatMap(({ id, flights }) => flights.map((flight) => ({ flight, aircraft: allowed[id] })));
  const proposal = useQuestion<Schemas['SwapProposal']>('/fleet/swap', { aircraft: all, allowed: lists });
  return (
    <div aria-live="polite">
      <Read of={proposal}>{(value) => <Proposal proposal={value} />}</Read>
    </div>
  );
}
