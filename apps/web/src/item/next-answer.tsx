import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { AnswerWords } from '../answer/answer-words.js';
import { WorkToDo } from '../answer/work-to-do.js';
import { isOf, neverSigned } from './work-address.js';
import { offBlocks } from '../words/flight.js';

type Item = Schemas['DefectLine'];

/** The aircraft's answer for its next flight, and what comes again or comes along for this item before it. */
export function NextAnswer({ item }: { item: Item }) {
  const aircraft = useRead<Schemas['AircraftView']>(`/aircraft/${item.aircraft}`);
  const flight = aircraft.value?.flights[0];
  const answer = useRead<Schemas['Verdict']>(flight ? `/aircraft/${item.aircraft}/answer?flight=${flight.id}` : null);
  if (!flight || !answer.value) return null;
  const { verdict, words, work } = answer.value;
  const listed = neverSigned(item);
  const own = work.filter((one) => isOf(one, item) && !listed.includes(one.work));
  return (
    <section>
      <h2>Next flight</h2>
      <p>
        <a href={`/aircraft/${item.aircraft}/flights/${flight.id}`}>{flight.number}</a>, off blocks{' '}
        {offBlocks(flight)}: <AnswerWords code={verdict} words={words} />
      </p>
      <WorkToDo work={own} items={[item]} title="To do for this item before it" />
    </section>
  );
}
