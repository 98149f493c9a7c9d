import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { type Fit, FitFields, fitSent, NO_FIT } from './fit-fields.js';

interface AircraftFormProps {
  view: Schemas['AircraftEntries'];
  entered(): Promise<void>;
}

/** A new aircraft of the fleet. */
export function AircraftForm({ view: { aircraft, types, stations }, entered }: AircraftFormProps) {
  const [registration, setRegistration] = useState('');
  const [type, setType] = useState('');
  const [fit, setFit] = useState<Fit>(NO_FIT);
  const { send, sending, problem } = useAct();
  const known = types.map((one) => one.type);
  const codes = types.find((one) => one.type === type)?.configurations ?? [];
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { registration, type, ...fitSent(fit) };
    if (!(await send({ method: 'POST', path: '/aircraft', body }))) return;
    announce(`${registration} is entered.`);
    setRegistration('');
    setFit(NO_FIT);
    await entered();
  }
  return (
    <details open={aircraft.length === 0}>
      <summary>Enter an aircraft</summary>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Registration"
            hint="As it is painted, such as Q-ABC"
            value={registration}
            onValue={(text) => setRegistration(text.toUpperCase())}
            pointer="/registration"
            most={12}
            required
            short
          />
          <Field
            label="Type"
            hint={known.length === 0 ? 'As the MEL for it says' : `Known here: ${known.join(', ')}`}
            value={type}
            onValue={setType}
            pointer="/type"
            most={60}
            required
            short
          />
          <FitFields fit={fit} onFit={setFit} codes={codes} stations={stations} />
        </FieldErrors.Provider>
        <p class="hint">
          Hours and cycles of its engines are read off and entered on the page of the aircraft, under Engines.
        </p>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Enter the aircraft
          </button>
        </div>
      </form>
    </details>
  );
}
