import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { offBlocks } from '../words/flight.js';

/** The aircraft's answer for its next flight, in one line. */
export function NextAnswer({ aircraft }: { aircraft: string }) {
  const fleet = useRead<Schemas['Fleet']>('/fleet');
  const next = fleet.value?.aircraft.find(({ id }) => id === aircraft)?.nextFlight;
  if (!next) return null;
  const { flight, verdict, words } = next;
  return (
    <p>
      <a href={`/aircraft/${aircraft}/flights/${flight.id}`}>{flight.number}</a>, off blocks {offBlocks(flight)}:{' '}
      <AnswerWords code={verdict} words={words} />
    </p>
  );
}
