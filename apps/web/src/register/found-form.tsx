import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import type { RegisterFormProps } from './register-form.js';
import { NO_THING, ThingFields, thingSent } from './thing-fields.js';

/** Anybody may say that something is on the aircraft that no register knows. It needs no signature. */
export function FoundForm({ view, seen, done, readAgain }: RegisterFormProps) {
  const [thing, setThing] = useState(NO_THING);
  const [remarks, setRemarks] = useState('');
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const path = `/aircraft/${view.aircraft}/left/found`;
    const body = { items: [thingSent(thing)], ...(remarks.trim() === '' ? {} : { remarks }) };
    const answer = await send<Schemas['RegisterDone']>({ method: 'POST', path, body, seen });
    if (answer) done('It is in the register, without an owner. The aircraft may not fly with it.');
  }

  return (
    <form onSubmit={submit}>
      <p class="strong">Until it is undone or has an owner the aircraft may not fly.</p>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <ThingFields thing={thing} onThing={setThing} />
        <Field
          label="How you found it"
          lines={2}
          most={1000}
          value={remarks}
          onValue={setRemarks}
          pointer="/remarks"
        />
      </FieldErrors.Provider>
      <ProblemBox problem={problem} readAgain={readAgain} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Put it in the register
        </button>
      </div>
    </form>
  );
}
