import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { useSession } from '../session/session.js';
import { Said } from '../shell/said.js';
import { ProblemBox } from '../shell/problem-box.js';
import { flightName, offBlocks } from '../words/flight.js';

interface FlightsAfterProps {
  aircraft: string;
  flights: readonly Schemas['FlightLine'][];
}

/** The flights after the next one. Each is asked for when they are opened; control and dispatch have them open. */
export function FlightsAfter({ aircraft, flights }: FlightsAfterProps) {
  const { roles } = useSession();
  const [open, setOpen] = useState(roles.some((role) => ['maintenance-control', 'dispatcher'].includes(role)));
  if (flights.length === 0) return null;
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The flights after it ({flights.length})</summary>
      {open && (
        <ul class="plain-list">
          {flights.map((flight) => (
            <FlightAnswer key={flight.id} aircraft={aircraft} flight={flight} />
          ))}
        </ul>
      )}
    </details>
  );
}

function FlightAnswer({ aircraft, flight }: { aircraft: string; flight: Schemas['FlightLine'] }) {
  const answer = useRead<Schemas['Verdict']>(`/aircraft/${aircraft}/answer?flight=${flight.id}`);
  const { value, problem } = answer;
  return (
    <li>
      <a class="flight" href={`/aircraft/${aircraft}/flights/${flight.id}`}>
        {flightName(flight)}
      </a>{' '}
      {offBlocks(flight)} {value ? <AnswerWords code={value.verdict} words={value.words} /> : !problem && '…'}
      {value?.reasons[0] && (
        <span class="soft block clamp">
          <Said text={value.reasons[0]} />
        </span>
      )}
      <ProblemBox problem={problem} readAgain={() => void answer.readAgain()} />
    </li>
  );
}
