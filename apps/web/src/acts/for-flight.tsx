import { useEffect } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { Choice } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { flightName, offBlocks } from '../words/flight.js';

interface ForFlightProps {
  aircraft: string;
  flight: string | null;
  onFlight(flight: string): void;
}

const OFFERED = 2;

/** Work owed before each departure is signed for one departure; the next one is meant unless said otherwise. */
export function ForFlight({ aircraft, flight, onFlight }: ForFlightProps) {
  const read = useRead<Schemas['AircraftView']>(`/aircraft/${aircraft}`);
  const flights = read.value?.flights.slice(0, OFFERED) ?? [];
  const next = flights[0]?.id;
  useEffect(() => {
    if (flight === null && next !== undefined) onFlight(next);
  }, [flight, next, onFlight]);
  return (
    <>
      <ProblemBox problem={read.problem} readAgain={() => void read.readAgain()} />
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
