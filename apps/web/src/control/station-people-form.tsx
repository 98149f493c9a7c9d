import { useId, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { instantOf, NO_WALL, type WallValue, WallInput } from '../shell/wall-input.js';

interface StationPeopleFormProps {
  stations: Schemas['Stations']['stations'];
  people: Schemas['Stations']['maintain'];
  entered(): void;
}

const NOTHING = { person: '', equipment: '', source: '' };

/** Enters who is at a station and when, or that nobody is. */
export function StationPeopleForm({ stations, people, entered }: StationPeopleFormProps) {
  const id = useId();
  const [code, setCode] = useState(stations[0]?.code ?? '');
  const [said, setSaid] = useState(NOTHING);
  const [from, setFrom] = useState<WallValue>(NO_WALL);
  const [until, setUntil] = useState<WallValue>(NO_WALL);
  const { send, sending, problem } = useAct();
  const zone = stations.find((one) => one.code === code)?.zone ?? 'UTC';

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const [begins, ends] = [instantOf(from, zone), instantOf(until, zone)];
    const body = {
      ...(said.person === '' ? {} : { person: said.person }),
      equipment: said.equipment
        .split(',')
        .map((one) => one.trim())
        .filter(Boolean),
      ...(begins === null ? {} : { from: begins }),
      ...(ends === null ? {} : { until: ends }),
      source: said.source,
    };
    if ((await send({ method: 'POST', path: `/stations/${code}/people`, body })) === null) return;
    setSaid(NOTHING);
    setFrom(NO_WALL);
    setUntil(NO_WALL);
    entered();
  }

  return (
    <form class="card" onSubmit={(event) => void submit(event)}>
      <h2>Say who is there</h2>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <div class="field">
          <label for={`${id}-station`}>Station</label>
          <select id={`${id}-station`} value={code} onChange={(event) => setCode(event.currentTarget.value)}>
            {stations.map((one) => (
              <option key={one.code} value={one.code}>
                {one.name} ({one.code})
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for={`${id}-person`}>Who</label>
          <select
            id={`${id}-person`}
            value={said.person}
            onChange={(event) => setSaid({ ...said, person: event.currentTarget.value })}
          >
            <option value="">nobody authorised and equipped</option>
            {people.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
        {said.person !== '' && (
          <Field
            label="Equipment there"
            hint="With commas between"
            value={said.equipment}
            onValue={(equipment) => setSaid({ ...said, equipment })}
            pointer="/equipment"
          />
        )}
        <p class="hint">
          Clocks of the station. Without a beginning it holds already, without an end it is standing.
        </p>
        <WallInput what="from" zone={zone} value={from} onValue={setFrom} pointer="/from" required={false} />
        <WallInput what="until" zone={zone} value={until} onValue={setUntil} pointer="/until" required={false} />
        <Field
          label="Where you know it from"
          value={said.source}
          onValue={(source) => setSaid({ ...said, source })}
          pointer="/source"
          required
        />
      </FieldErrors.Provider>
      <ProblemBox problem={problem} readAgain={entered} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Enter it
        </button>
      </div>
    </form>
  );
}
