import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { ReasonForm } from '../people/reason-form.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Select } from '../shell/select.js';
import { withOffset } from '../words/time.js';

type Retention = Schemas['Retention'];

interface HoldsProps extends Pick<Retention, 'holds' | 'defects'> {
  changed(): Promise<void>;
}

/** What is kept beyond its period until somebody releases it. */
export function Holds({ holds, defects, changed }: HoldsProps) {
  const { operator } = useSession();
  return (
    <>
      <h2>Held until released</h2>
      {holds.length === 0 && <p>Nothing is held.</p>}
      <ul class="plain-list cards">
        {holds.map(({ id, name, reason, placedAt, by }) => (
          <li class="card" key={id}>
            <h3>{name}</h3>
            <p>
              {reason} <span class="soft block">{`${by}, ${withOffset(placedAt, operator.base)}`}</span>
            </p>
            <ReasonForm
              title={`Release ${name}`}
              about="Its period of keeping binds alone from then on."
              path={`/record/holds/${id}/release`}
              button={`Release ${name}`}
              said="It is released."
              done={changed}
            />
          </li>
        ))}
      </ul>
      <PlaceHold defects={defects} changed={changed} />
    </>
  );
}

/** Anybody and every aircraft, those that left as well: what is to be held is held before its period is over. */
function PlaceHold({ defects, changed }: Omit<HoldsProps, 'holds'>) {
  const fleet = useRead<Schemas['AircraftEntries']>('/aircraft');
  const members = useRead<Schemas['Members']>('/people');
  const [what, setWhat] = useState('');
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  const options = [
    ...(fleet.value?.aircraft ?? []).map(({ id, registration }) => ({
      value: `aircraft ${id}`,
      text: `${registration} with its whole log`,
    })),
    ...defects.map(({ id, number }) => ({ value: `defect ${id}`, text: `${number}, closed and past its period` })),
    ...(members.value?.people ?? []).map(({ id, name, validUntil }) => ({
      value: `person ${id}`,
      text: validUntil === null ? name : `${name}, who left`,
    })),
  ];
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const [kind, subject] = what.split(' ');
    if (!(await send({ method: 'POST', path: '/record/holds', body: { kind, subject, reason } }))) return;
    setWhat('');
    setReason('');
    announce('It is held until it is released.');
    await changed();
  }
  return (
    <details>
      <summary>Hold something beyond its period</summary>
      <form onSubmit={(event) => void submit(event)}>
        <p>
          For a dispute, an investigation or an order of an authority. Nobody with an entry in what is held can be
          erased until it is released.
        </p>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Select label="What" value={what} onValue={setWhat} options={options} />
          <Field
            label="Why, for the record"
            hint="It is kept for ever: leave names out."
            value={reason}
            onValue={setReason}
            pointer="/reason"
            most={300}
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Hold it
          </button>
        </div>
      </form>
    </details>
  );
}
