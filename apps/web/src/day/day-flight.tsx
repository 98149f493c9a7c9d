import type { Schemas } from '../api/client.js';
import { AnswerBox } from '../answer/answer-box.js';
import { AnswerWords } from '../answer/answer-words.js';
import { workInShort } from '../answer/why.js';
import { Said } from '../shell/said.js';
import { flightName, offBlocks } from '../words/flight.js';
import { counted, minutesWords } from '../words/words.js';

interface DayFlightProps {
  told: Schemas['NextFlight'];
  day: Schemas['NextFlights'];
  aircraft: string;
  /** The flight with the names of its stations, as soon as they are read. */
  line: Schemas['FlightLine'] | null;
  items: readonly Schemas['DefectLine'][];
  answered(): void;
}

/** One flight: its answer in words, which opens to everything it rests on. */
export function DayFlight({ told, day, aircraft, line, items, answered }: DayFlightProps) {
  const { flight, verdict, ifFlown, lateMinutes } = told;
  const name = line ? flightName(line) : `${flight.number ?? ''}, ${flight.from} to ${flight.to}`;
  const after = day.flights.find((one) => one.flight.id === ifFlown)?.flight.number ?? ifFlown;
  return (
    <li>
      <p>
        <AnswerWords code={verdict.verdict} words={verdict.words} /> <span class="strong">{name}</span>{' '}
        {line && offBlocks(line)}
        {ifFlown !== null && <span class="block soft">If {after} is flown after all.</span>}
      </p>
      <p class="clamp">
        <Said text={inShort(verdict)} />
      </p>
      {lateMinutes !== null && lateMinutes > 0 && <p>Its work makes it {minutesWords(lateMinutes)} late.</p>}
      <Left left={told.left} items={items} />
      {told.repeats.some(({ fits }) => fits === false) && <p>Work owed again does not fit between the flights.</p>}
      <details>
        <summary>Why, and what is to be done before {flight.number ?? 'it'}</summary>
        <AnswerBox
          verdict={verdict}
          aircraft={aircraft}
          about={name}
          offBlockAt={flight.offBlockAt}
          items={items}
          answered={answered}
        />
        {verdict.verdict === 'may-not-fly' && (
          <p>
            <a href={`/aircraft/${aircraft}/flights/${flight.id}`}>Least to fix, and why rows are refused</a>
          </p>
        )}
      </details>
    </li>
  );
}

function Left({ left, items }: { left: Schemas['NextFlight']['left']; items: DayFlightProps['items'] }) {
  if (left.length === 0) return null;
  return (
    <ul class="plain-list soft">
      {left.map(({ defect, sentence }) => (
        <li key={defect}>
          Left at departure, {items.find(({ id }) => id === defect)?.title ?? 'open item'}: <Said text={sentence} />
        </li>
      ))}
    </ul>
  );
}

/** What decides it, without the steps of the work. */
function inShort({ verdict, reasons, work, workMinutes }: Schemas['Verdict']): string {
  if (verdict !== 'after-work') return reasons[0] ?? '';
  const time = workMinutes === null ? '' : `, ${minutesWords(workMinutes)}`;
  const what = work.map(({ text }) => workInShort(text).replace(/\.$/, '')).join('; ');
  return `${counted(work.length, 'thing', 'things', 'Nothing')} to do${time}: ${what}.`;
}
