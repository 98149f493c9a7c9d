import type { Schemas } from '../api/client.js';
import { Said } from '../shell/said.js';
import { minutesWords } from '../words/words.js';

type Day = Schemas['NextFlights'];

interface FirstBreakProps {
  day: Day;
  /** The planned flights with the names of their stations, as soon as they are read. */
  lines: readonly Schemas['FlightLine'][];
}

/** The name of a station by its code; the code where no planned flight calls there. */
function stationName(code: string, lines: FirstBreakProps['lines']): string {
  const left = lines.find(({ from }) => from === code)?.fromName;
  return left ?? lines.find(({ to }) => to === code)?.toName ?? code;
}

/** The first flight that is not known to be kept, why, and the least that would save it. */
export function FirstBreak({ day, lines }: FirstBreakProps) {
  const { breaks, savers, saversComplete } = day;
  if (breaks === null) return null;
  const flight = day.flights.find((one) => one.flight.id === breaks.flight)?.flight;
  const name = flight?.number ?? 'the flight';
  return (
    <section>
      <h2>
        {breaks.verdict === 'not-settled' ? 'First not settled' : 'First to break'}: {name} at{' '}
        {stationName(breaks.station, lines)}
      </h2>
      <ul class="plain-list">
        {deciding(breaks.because).map((reason) => (
          <li key={reason}>
            <Said text={reason} />
          </li>
        ))}
      </ul>
      <h3>The least that would save it{saversComplete ? '' : ' (these, perhaps others)'}</h3>
      {savers.length === 0 ? (
        <p>
          No change of rows, work, people or flights was found that does, alone or up to three of them together, and
          no repair.
        </p>
      ) : (
        <ul class="plain-list">
          {savers.map((saver) => (
            <SaverLine key={saver.text} saver={saver} all={day.flights.length} lines={lines} />
          ))}
        </ul>
      )}
    </section>
  );
}

/** What waits for work does not break the flight. */
function deciding(because: readonly string[]): string[] {
  const open = because.filter((reason) => !reason.includes(' waits for work'));
  return (open.length === 0 ? because : open).slice(0, 3);
}

interface SaverLineProps {
  saver: Schemas['Saver'];
  all: number;
  lines: FirstBreakProps['lines'];
}

function SaverLine({ saver, all, lines }: SaverLineProps) {
  const { text, stops, minutes, keeps } = saver;
  const [last] = stops;
  return (
    <li>
      {text}
      <span class="block soft">
        {last && `${last.groundMinutes} min on the ground at ${stationName(last.station, lines)}. `}
        {stops.length > 0 && (minutes === null ? 'No time is given for it. ' : `It takes ${minutesWords(minutes)}. `)}
        {keeps === all ? 'Then all flights are kept.' : `Then the first ${keeps} flights are kept.`}
      </span>
    </li>
  );
}
