import { useId, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useQuestion, useRead } from '../api/use-read.js';
import { AnswerBox } from '../answer/answer-box.js';
import { useSession } from '../session/session.js';
import { Choice, Field, Tick } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';
import { flightName } from '../words/flight.js';
import { withOffset } from '../words/time.js';
import { SupposedFact } from './supposed-fact.js';

type Changes = Schemas['ChangesBody'];
type Fact = NonNullable<Changes['facts']>[number];

interface TryChangeProps {
  aircraft: Schemas['AircraftView'];
  day: Schemas['NextFlights'];
}

const NO_ITEM = { entry: '', unit: '' };
const MOST_FACTS = 6;

/** What if? Another aircraft, another instant, items fixed or failed, facts taken as known: nothing is stored. */
export function TryChange({ aircraft, day }: TryChangeProps) {
  const { operator } = useSession();
  const [flight, setFlight] = useState(day.breaks?.flight ?? day.flights[0]?.flight.id ?? '');
  const [instead, setInstead] = useState(aircraft.id);
  const [at, setAt] = useState(NO_WALL);
  const [fixed, setFixed] = useState<readonly string[]>([]);
  const [broken, setBroken] = useState(NO_ITEM);
  const [supposed, setSupposed] = useState<readonly (Fact | null)[]>([null]);
  const [asked, setAsked] = useState<{ aircraft: string; [part: string]: unknown } | null>(null);
  const facts = useRead<Schemas['FactList']>('/facts');
  const other = useRead<Schemas['AircraftView']>(instead === aircraft.id ? null : `/aircraft/${instead}`);
  const answer = useQuestion<Schemas['Verdict']>('/dispatch/questions', asked);
  const about = aircraft.flights.find(({ id }) => id === flight);
  const flying = instead === aircraft.id ? aircraft : other.value;

  function submit(event: Event): void {
    event.preventDefault();
    const changes: Changes = {
      fix: fixed.filter((id) => flying?.items.some((item) => item.id === id)),
      broken: broken.entry === '' ? [] : [{ entry: broken.entry, units: [broken.unit === '' ? '1' : broken.unit] }],
      facts: supposed.filter((one) => one !== null),
    };
    const instant = instantOf(at, operator.base);
    setAsked({ aircraft: instead, flight, propose: [], changes, ...(instant === null ? {} : { at: instant }) });
  }

  return (
    <section>
      <h2>Try a change</h2>
      <p>Nothing of it is stored. The answer is for this one flight as things stand, but for what is changed here.</p>
      <form class="card" onSubmit={submit}>
        <Choice
          legend="Which flight"
          options={aircraft.flights.map((one) => ({ value: one.id, text: flightName(one) }))}
          value={flight}
          onValue={setFlight}
        />
        <WhichAircraft own={aircraft} value={instead} onValue={setInstead} />
        {flying && flying.items.length > 0 && (
          <fieldset>
            <legend>Take as fixed</legend>
            {flying.items.map(({ id, number, title }) => (
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
        {facts.value &&
          supposed.map((_, index) => (
            <SupposedFact
              key={index}
              which={index + 1}
              facts={facts.value?.facts ?? []}
              onFact={(fact) => setSupposed(supposed.map((one, at) => (at === index ? fact : one)))}
            />
          ))}
        {supposed.at(-1) !== null && supposed.length < MOST_FACTS && (
          <button type="button" class="quiet" onClick={() => setSupposed([...supposed, null])}>
            Take another fact as known
          </button>
        )}
        <details>
          <summary>At another instant than now</summary>
          <WallInput
            what="asked for"
            zone={operator.base}
            value={at}
            onValue={setAt}
            pointer="/at"
            required={false}
          />
        </details>
        <div class="buttons">
          <button disabled={answer.reading}>What then?</button>
        </div>
      </form>
      {asked !== null && (
        <div aria-live="polite">
          <Read of={answer}>
            {(verdict) => (
              <>
                {(asked.aircraft !== aircraft.id || asked['at'] !== undefined) && (
                  <p>
                    {verdict.aircraft} on this flight, as of {withOffset(verdict.at, operator.base)}.
                  </p>
                )}
                <AnswerBox
                  verdict={verdict}
                  aircraft={asked.aircraft}
                  about={`${about?.number ?? 'this flight'}, if that were so`}
                  offBlockAt={about?.offBlockAt ?? null}
                  items={flying?.items ?? []}
                  answered={() => void answer.readAgain()}
                  supposed
                />
              </>
            )}
          </Read>
        </div>
      )}
    </section>
  );
}

interface WhichAircraftProps {
  own: Schemas['AircraftView'];
  value: string;
  onValue(id: string): void;
}

function WhichAircraft({ own, value, onValue }: WhichAircraftProps) {
  const id = useId();
  const fleet = useRead<Schemas['Fleet']>('/fleet');
  const others = (fleet.value?.aircraft ?? []).filter((one) => one.id !== own.id);
  return (
    <div class="field">
      <label for={id}>Which aircraft flies it</label>
      <select id={id} value={value} onChange={(event) => onValue(event.currentTarget.value)}>
        <option value={own.id}>{own.registration}, as planned</option>
        {others.map((one) => (
          <option key={one.id} value={one.id}>
            {one.registration} ({one.type})
          </option>
        ))}
      </select>
    </div>
  );
}
