import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Choice } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import type { ActFormProps } from './act-form-props.js';

/** Of several that might have failed, names the one that did. This one act is not signed. */
export function UnitForm({ view, seen, done, readAgain }: ActFormProps) {
  const { id, entry, units } = view.defect;
  const [unit, setUnit] = useState<string | null>(null);
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { entry, units: [unit] };
    const answer = await send<Schemas['ActDone']>({
      method: 'POST',
      path: `/defects/${id}/identification`,
      body,
      seen,
    });
    if (answer) done(`It is unit ${unit}.`);
  }

  return (
    <form onSubmit={submit}>
      <Choice
        legend="Which one failed?"
        options={units.map((one) => ({ value: one, text: one }))}
        value={unit}
        onValue={setUnit}
      />
      <ProblemBox problem={problem} readAgain={readAgain} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          Name it
        </button>
      </div>
    </form>
  );
}
