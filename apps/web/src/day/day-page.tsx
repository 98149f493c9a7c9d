import { useRoute } from 'preact-iso';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';
import { DayFlight } from './day-flight.js';
import { FirstBreak } from './first-break.js';
import { TryChange } from './try-change.js';

/** The next flights of one aircraft, each as if those before it were flown as planned. */
export function DayPage() {
  const { id = '' } = useRoute().params;
  const { operator } = useSession();
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${id}`);
  const day = useRead<Schemas['NextFlights']>(`/aircraft/${id}/next-flights`);
  const name = day.value?.registration ?? aircraft.value?.registration ?? 'The aircraft';
  const again = () => void day.readAgain();
  return (
    <Page
      title={`${name}, next flights`}
      aside={day.value && `as of ${withOffset(day.value.at, operator.base)}`}
      back={{ href: `/aircraft/${id}`, text: name }}
      press={
        <button type="button" class="quiet" onClick={again}>
          Read again
        </button>
      }
    >
      <Read of={day}>
        {(value) => (
          <>
            <Summary day={value} />
            <FirstBreak day={value} lines={aircraft.value?.flights ?? []} />
            <h2>Flight by flight</h2>
            <ol class="day">
              {value.flights.map((flight, index) => (
                <DayFlight
                  key={flight.flight.id}
                  told={flight}
                  before={value.flights.slice(0, index)}
                  day={value}
                  aircraft={id}
                  line={aircraft.value?.flights.find((line) => line.id === flight.flight.id) ?? null}
                  items={aircraft.value?.items ?? []}
                  answered={again}
                />
              ))}
            </ol>
            {aircraft.value && value.flights.length > 0 && <TryChange aircraft={aircraft.value} day={value} />}
          </>
        )}
      </Read>
    </Page>
  );
}

/** The whole day in one sentence, before any detail. */
function Summary({ day: { flights, kept, possible } }: { day: Schemas['NextFlights'] }) {
  if (flights.length === 0) return <p>No flight is planned for it.</p>;
  if (kept === flights.length) return <p class="strong">All {kept} flights can be flown as planned.</p>;
  const more = possible > kept ? ` Up to ${possible}, if what is not known turns out well.` : '';
  return (
    <p class="strong">
      {kept === 0 ? 'Not even the first flight can' : `The first ${kept} of ${flights.length} flights can`} be flown
      as planned.{more}
    </p>
  );
}
