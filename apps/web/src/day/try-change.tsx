import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useQuestion, useRead } from '../api/use-read.js';
import { AnswerBox } from '../answer/answer-box.js';
import { Choice, Field, Tick } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { flightName } from '../words/flight.js';
import { SupposedFact } from './supposed-fact.js';

type Changes = Schemas['ChangesBody'];

interface TryChangeProps {
  aircraft: Schemas['AircraftView'];
  day: Schemas['NextFlights'];
}

const NO_ITEM = { entry: '', unit: '' };

/** What if? Items taken as fixed, one taken as failed, a fact taken as known: nothing is stored. */
export function TryChange({ aircraft, day }: TryChangeProps) {
  const [flight, setFlight] = useState(day.breaks?.flight ?? day.flights[0]?.flight.id ?? '');
  const [fixed, setFixed] = useState<readonly string[]>([]);
  const [broken, setBroken] = useState(NO_ITEM);
  const [fact, setFact] = useState<NonNullable<Changes['facts']>[number] | null>(null);
  const [asked, setAsked] = useState<object | null>(null);
  const facts = useRead<Schemas['FactList']>('/facts');
  const answer = useQuestion<Schemas['Verdict']>('/dispatch/questions', asked);
  const about = aircraft.flights.find(({ id }) => id === flight);

  function submit(event: Event): void {
    event.preventDefault();
    const changes: Changes = {
      fix: [...fixed],
      broken: broken.entry === '' ? [] : [{ entry: broken.entry, units: [broken.unit === '' ? '1' : broken.unit] }],
      facts: fact === null ? [] : [fact],
    };
    setAsked({ aircraft: aircraft.id, flight, propose: [], changes });
  }

  return (
    <section>
      <h2>Try a change</h2>
      <p>Nothing of it is stored. The answer is for this one flight as things stand now.</p>
      <form class="card" onSubmit={submit}>
        <Choice
          legend="Which flight"
          options={aircraft.flights.map((one) => ({ value: one.id, text: flightName(one) }))}
          value={flight}
          onValue={setFlight}
        />
        {aircraft.items.length > 0 && (
          <fieldset>
            <legend>Take as fixed</legend>
            {aircraft.items.map(({ id, number, title }) => (
              <Tick
                key={id}
                label={`${title} (${number})`}
                ticked={fixed.includes(id)}
                onTick={(ticked) => setFixed(ticked ? [...fixed, id] : fixed.filter((one) => one !== id))}
              />
            ))}
          </fieldset>
        )}
        <fieldset>
          <legend>Take as failed</legend>
          <Field
            label="MEL entry"
            hint="Such as 80-12-11. The best row is looked for."
            value={broken.entry}
            onValue={(entry) => setBroken({ ...broken, entry })}
            pointer="/changes/broken/0/entry"
            most={40}
            short
          />
          <Field
            label="Unit"
            hint="1 when nothing is given"
            value={broken.unit}
            onValue={(unit) => setBroken({ ...broken, unit })}
            pointer="/changes/broken/0/units"
            most={40}
            short
          />
        </fieldset>
        {facts.value && <SupposedFact facts={facts.value.facts} onFact={setFact} />}
        <div class="buttons">
          <button disabled={answer.reading}>What then?</button>
        </div>
      </form>
      {asked !== null && (
        <div aria-live="polite">
          <Read of={answer}>
            {(verdict) => (
              <AnswerBox
                verdict={{ ...verdict, questions: [] }}
                aircraft={aircraft.id}
                about={`${about?.number ?? 'this flight'}, if that were so`}
                offBlockAt={about?.offBlockAt ?? null}
                items={aircraft.items}
                answered={() => void answer.readAgain()}
              />
            )}
          </Read>
        </div>
      )}
    </section>
  );
}
