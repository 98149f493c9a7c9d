import { useState } from 'preact/hooks';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';

/** A station that the operator flies to. */
export function StationForm({ first, entered }: { first: boolean; entered(): void }) {
  const { operator } = useSession();
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [zone, setZone] = useState(operator.base);
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!(await send({ method: 'POST', path: '/stations', body: { code, name, zone } }))) return;
    announce(`${name} is entered.`);
    setCode('');
    setName('');
    entered();
  }
  return (
    <details open={first}>
      <summary>Enter a station</summary>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Code"
            hint="As plans and movement messages name it"
            value={code}
            onValue={(text) => setCode(text.toUpperCase())}
            pointer="/code"
            most={10}
            required
            short
          />
          <Field label="Its name" value={name} onValue={setName} pointer="/name" most={80} required />
          <Field
            label="Time zone"
            hint="UTC or a name such as Europe/Paris"
            value={zone}
            onValue={setZone}
            pointer="/zone"
            most={64}
            required
            short
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Enter the station
          </button>
        </div>
      </form>
    </details>
  );
}
