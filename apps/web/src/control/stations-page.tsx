import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Read } from '../shell/reading.js';
import { StationForm } from '../entering/station-form.js';
import { StationPeopleForm } from './station-people-form.js';

type Stations = Schemas['Stations'];
type Line = Stations['stations'][number]['people'][number];

const MAY_ENTER = ['administrator', 'maintenance-control'];
const MAY_SAY = ['maintenance-control', 'engineer', 'administrator'];

/** Who is authorised and equipped at which station: what is not entered here is not known, and is asked. */
export function StationsPage() {
  const stations = useRead<Stations>('/stations');
  const { roles } = useSession();
  const maySay = roles.some((role) => MAY_SAY.includes(role));
  const again = () => void stations.readAgain();
  return (
    <Page title="Stations and their people" back={{ href: '/control', text: 'Fleet' }}>
      <p>
        Who is authorised and equipped to do and sign maintenance. Where nobody has said, it is not known, and the
        answer to a flight asks for it.
      </p>
      <Read of={stations}>
        {({ stations: all, maintain }) => (
          <>
            {all.map(({ code, name, people }) => (
              <section key={code} class="card">
                <h2>
                  {name} ({code})
                </h2>
                {people.length === 0 ? (
                  <p>Nobody has said.</p>
                ) : (
                  <ul class="plain-list">
                    {people.map((line) => (
                      <PersonLine key={line.id} line={line} maySay={maySay} station={name} changed={again} />
                    ))}
                  </ul>
                )}
              </section>
            ))}
            {roles.some((role) => MAY_ENTER.includes(role)) && (
              <StationForm first={all.length === 0} entered={again} />
            )}
            {maySay && all.length > 0 && <StationPeopleForm stations={all} people={maintain} entered={again} />}
          </>
        )}
      </Read>
    </Page>
  );
}

interface PersonLineProps {
  line: Line;
  station: string;
  maySay: boolean;
  changed(): void;
}

function PersonLine({ line, station, maySay, changed }: PersonLineProps) {
  const { send, sending, problem } = useAct();
  const { id, person, equipment, source, enteredBy, version } = line;
  const what = person ?? 'Nobody authorised and equipped';

  async function end(): Promise<void> {
    const path = `/stations/people/${id}/ended`;
    if (await send({ method: 'POST', path, body: {}, seen: `"${version}"` })) changed();
  }

  return (
    <li>
      <span class="strong">{what}</span>, {whenWords(line)}
      {equipment.length > 0 && `, with ${equipment.join(', ')}`}
      <span class="block soft">
        {source}
        {enteredBy !== null && `, entered by ${enteredBy}`}
      </span>
      {maySay && (
        <button
          type="button"
          class="quiet"
          disabled={sending}
          aria-label={`${what} at ${station}: holds no longer`}
          onClick={() => void end()}
        >
          Holds no longer
        </button>
      )}
      <ProblemBox problem={problem} readAgain={changed} />
    </li>
  );
}

function whenWords({ fromLocal, untilLocal }: Line): string {
  if (fromLocal === null) return untilLocal === null ? 'standing' : `until ${untilLocal} local`;
  return untilLocal === null ? `from ${fromLocal} local` : `${fromLocal} to ${untilLocal} local`;
}
