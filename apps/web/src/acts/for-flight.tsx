import type { Schemas } from '../api/client.js';
import type { Reading } from '../api/use-read.js';
import { Choice } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { flightName, offBlocks } from '../words/flight.js';

interface ForFlightProps {
  aircraft: Reading<Schemas['AircraftView']>;
  flight: string | null;
  onFlight(flight: string): void;
}

const OFFERED = 2;

/** Work owed before each departure is signed for one departure. */
export function ForFlight({ aircraft: { value, problem, readAgain }, flight, onFlight }: ForFlightProps) {
  const flights = value?.flights.slice(0, OFFERED) ?? [];
  return (
    <>
      <ProblemBox problem={problem} readAgain={() => void readAgain()} />
      {flights.length > 0 && (
        <Choice
          legend="For which departure"
          options={flights.map((one) => ({ value: one.id, text: `${flightName(one)}, ${offBlocks(one)}` }))}
          value={flight}
          onValue={onFlight}
        />
      )}
    </>
  );
}
