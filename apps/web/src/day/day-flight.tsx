import type { Schemas } from '../api/client.js';
import { AnswerBox } from '../answer/answer-box.js';
import { AnswerWords } from '../answer/answer-words.js';
import { TruthMark } from '../answer/truth-mark.js';
import { workInShort } from '../answer/why.js';
import { Said } from '../shell/said.js';
import { flightName, offBlocks } from '../words/flight.js';
import { sentence } from '../words/readable.js';
import { counted, minutesWords } from '../words/words.js';

type NextFlight = Schemas['NextFlight'];

interface DayFlightProps {
  told: NextFlight;
  /** The flights before it. */
  before: readonly NextFlight[];
  day: Schemas['NextFlights'];
  aircraft: string;
  /** The flight with the names of its stations, as soon as they are read. */
  line: Schemas['FlightLine'] | null;
  items: readonly Schemas['DefectLine'][];
  answered(): void;
}

/** One flight: its answer in words, which opens to everything it rests on. What the flight before said is not said again. */
export function DayFlight({ told, before, day, aircraft, line, items, answered }: DayFlightProps) {
  const { flight, verdict, ifFlown, lateMinutes } = told;
  const name = line ? flightName(line) : `${flight.number ?? ''}, ${flight.from} to ${flight.to}`;
  const after = day.flights.find((one) => one.flight.id === ifFlown)?.flight.number ?? ifFlown;
  const short = inShort(verdict);
  const same = firstAlike(told, before);
  return (
    <li>
      <p>
        <AnswerWords code={verdict.verdict} words={verdict.words} /> <span class="strong">{name}</span>{' '}
        {line && offBlocks(line)}
        {ifFlown !== null && <span class="block soft">If {after} is flown after all.</span>}
      </p>
      {same ? (
        <p>As for {same.flight.number ?? 'the flight before'}.</p>
      ) : (
        <p class="clamp">
          <Said text={short} />
        </p>
      )}
      {lateMinutes !== null && lateMinutes > 0 && <p>Its work makes it {minutesWords(lateMinutes)} late.</p>}
      <Left left={told.left} items={items} />
      {told.repeats.some(({ fits }) => fits === false) && <p>Work owed again does not fit between the flights.</p>}
      <details>
        <summary>Why, and what is to be done before {flight.number ?? 'it'}</summary>
        <Changed changed={told.changed} since={before.at(-1)?.flight.number ?? 'the flight before'} />
        <OwedAgain repeats={told.repeats} at={line?.fromName ?? flight.from} />
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

function Left({ left, items }: { left: NextFlight['left']; items: DayFlightProps['items'] }) {
  if (left.length === 0) return null;
  return (
    <ul class="plain-list soft" aria-label="Left at its departure">
      {left.map(({ defect, sentence }) => (
        <li key={defect}>
          {items.find(({ id }) => id === defect)?.title ?? 'open item'}: <Said text={sentence} />
        </li>
      ))}
    </ul>
  );
}

/** What this flight answers otherwise than the one before it. */
function Changed({ changed, since }: { changed: NextFlight['changed']; since: string }) {
  if (changed.length === 0) return null;
  return (
    <>
      <h3>Changed since {since}</h3>
      <ul class="plain-list">
        {changed.map(({ id, about, is, says }) => (
          <li key={`${id} ${about}`}>
            {is && <TruthMark of={is} />} {about !== null && <span class="strong">{about}: </span>}
            <Said text={says} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** Repeated work: where the aircraft stands, from when until when, and whether it can be done there. */
function OwedAgain({ repeats, at }: { repeats: NextFlight['repeats']; at: string }) {
  if (repeats.length === 0) return null;
  return (
    <>
      <h3>Owed again at {at}</h3>
      <ul class="plain-list">
        {repeats.map(({ work, defect, text, because, from, until, minutes, fits, possible }) => (
          <li key={`${work} ${defect}`}>
            <span class="strong">{workInShort(text)}</span>{' '}
            <Said text={`Between ${from} and ${until}${minutes === null ? '' : `, ${minutesWords(minutes)}`}.`} />{' '}
            {FITS[String(fits)]} {POSSIBLE[possible]}
            <span class="block soft">
              <Said text={sentence(because)} />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

const FITS: Record<string, string> = {
  true: 'It fits.',
  false: 'It does not fit between the flights.',
  null: 'No time is given for it.',
};

const POSSIBLE: Record<NextFlight['repeats'][number]['possible'], string> = {
  T: 'It can be done there.',
  U: 'Whether it can be done there is not known.',
  F: 'It cannot be done there.',
};

/** The first flight of those just before it that all say the same; null where the one before says something else. */
function firstAlike(told: NextFlight, before: readonly NextFlight[]): NextFlight | null {
  const isAlike = ({ verdict }: NextFlight) =>
    verdict.verdict === told.verdict.verdict && inShort(verdict) === inShort(told.verdict);
  const others = before.findLastIndex((one) => !isAlike(one));
  return before[others + 1] ?? null;
}

/** What decides it, without the steps of the work. */
function inShort({ verdict, reasons, work, workMinutes }: Schemas['Verdict']): string {
  if (verdict !== 'after-work') return reasons[0] ?? '';
  const time = workMinutes === null ? '' : `, ${minutesWords(workMinutes)}`;
  const what = work.map(({ text }) => workInShort(text).replace(/\.$/, '')).join('; ');
  return `${counted(work.length, 'thing', 'things', 'Nothing')} to do${time}: ${what}.`;
}
