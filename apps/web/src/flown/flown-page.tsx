import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useLive } from '../api/use-live.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { hoursText } from './hours.js';
import { LegTable } from './leg-table.js';

export const MAY_ENTER = ['dispatcher', 'maintenance-control', 'engineer'];

type View = Schemas['AircraftLegs'];

/** What an aircraft flew in the last thirty days, what that used, and the delays that a defect may be why of. */
export function FlownPage() {
  const { id = '' } = useRoute().params;
  const { roles } = useSession();
  const legs = useRead<View>(`/aircraft/${id}/legs`);
  useLive(legs, id);
  const registration = legs.value?.registration ?? 'The aircraft';
  return (
    <Page title="Flown" aside={legs.value?.registration} back={{ href: `/aircraft/${id}`, text: registration }}>
      <div class="buttons">
        {roles.some((role) => MAY_ENTER.includes(role)) && (
          <a class="button" href={`/aircraft/${id}/flown/enter`}>
            Enter a leg by hand
          </a>
        )}
        <a class="button" href={`/aircraft/${id}/engines`}>
          Counters of its engines
        </a>
        <a class="button" href="/movements">
          Movement messages
        </a>
      </div>
      <Read of={legs}>{(view) => <Content view={view} />}</Read>
    </Page>
  );
}

function Content({ view }: { view: View }) {
  const { operator } = useSession();
  const { counters, delayed } = view;
  return (
    <>
      <h2>Used since {withOffset(view.from, operator.base)}</h2>
      <dl class="figures">
        {(
          [
            ['Flights', counters.flights],
            ['Flight-days', counters.flightDays],
            ['Airborne', hoursText(counters.flightMinutes)],
            ['Block', hoursText(counters.blockMinutes)],
            ['Cycles', counters.cycles],
            ['Landings', counters.landings],
          ] as const
        ).map(([what, value]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {counters.incomplete > 0 && (
        <p class="strong">Legs under way, or with a time not known: {counters.incomplete}.</p>
      )}
      {delayed.length > 0 && <Delayed delayed={delayed} />}
      <h2>Legs, the last one first, times in UTC</h2>
      {view.legs.length === 0 ? <p>None.</p> : <LegTable aircraft={view.aircraft} legs={view.legs.toReversed()} />}
    </>
  );
}

/** Beside one another, and no more: that a defect was open then does not say that it was why. */
function Delayed({ delayed }: { delayed: View['delayed'] }) {
  return (
    <section class="card">
      <h2>Late for an aircraft defect (delay reason 41)</h2>
      <ul>
        {delayed.map(({ leg, flight, offBlockAt, minutes, defects }) => (
          <li key={leg}>
            <span class="strong">{flight}</span>, {withOffset(offBlockAt, 'UTC')}: {minutes} min late.
            {defects.length === 0 ? (
              <span class="block strong">No defect was open then. Was one written up?</span>
            ) : (
              <span class="block">
                Open then or in the day before:{' '}
                {defects.map((defect, index) => (
                  <span key={defect.id}>
                    {index > 0 && '; '}
                    <a href={`/defects/${defect.id}`}>{defect.number}</a> {defect.description}
                  </span>
                ))}
              </span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
