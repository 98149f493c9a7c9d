import { useId, useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { useSession } from '../session/session.js';
import { ProblemBox } from '../shell/problem-box.js';
import { withOffset } from '../words/time.js';
import { Countdown, useSecondsUntil } from './countdown.js';
import { EquipmentFields, type Stated, usedOf } from './equipment-fields.js';
import { asksForTwo, NOBODY, SecondPerson, secondOf } from './second-person.js';
import { fieldsOf, pressed, resultOf, type Typed } from './step-fields.js';
import type { StepProps } from './step-props.js';

/** What is entered for a step, each with its unit; what is pressed says what is done. */
export function StepForm({ reading, view, step, done }: StepProps) {
  const { defect, work } = view;
  const [typed, setTyped] = useState<Typed>({});
  const [second, setSecond] = useState(NOBODY);
  const [stated, setStated] = useState<Stated>({});
  const two = asksForTwo(step);
  const certified = useRead<Schemas['Statement']>(two && second.person !== '' ? statementOf(view, step) : null);
  const statement = certified.value?.statement ?? null;
  const unread = two && second.person !== '' && statement === null;
  const { send, sending, problem } = useAct();
  const until = step.state === 'begun' ? (step.begun?.until ?? null) : null;
  const seconds = useSecondsUntil(until, () => void reading.readAgain());
  const { operator } = useSession();
  const why = useId();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const used = usedOf(step, stated);
    const path = `/defects/${defect.id}/card-steps`;
    const answer = await send<Schemas['ActDone']>(async () => {
      const body = {
        work: work.id,
        step: step.id,
        ...resultOf(step, typed),
        ...(two && { second: await secondOf(view, step, second, statement) }),
        ...(used.length > 0 && { used }),
      };
      return { method: 'POST', path, body, seen: reading.etag };
    });
    if (!answer) return;
    setTyped({});
    setSecond(NOBODY);
    setStated({});
    if (!['next', 'begun'].includes(step.state) || !['wait', 'run'].includes(step.kind)) done();
    await reading.readAgain();
  }

  function again(): void {
    void certified.readAgain();
    void reading.readAgain();
  }

  return (
    <form onSubmit={submit}>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        {fieldsOf(step).map(({ key, label, hint, decimal }) => (
          <Field
            key={key}
            label={label}
            hint={hint}
            value={typed[key] ?? ''}
            onValue={(value) => setTyped({ ...typed, [key]: value })}
            inputMode={decimal ? 'decimal' : 'text'}
            required
            short={decimal}
          />
        ))}
        <EquipmentFields step={step} stated={stated} onStated={setStated} />
        {two && <SecondPerson view={view} step={step} second={second} onSecond={setSecond} statement={statement} />}
      </FieldErrors.Provider>
      {until !== null && <Countdown seconds={seconds} />}
      {until !== null && seconds > 0 && (
        <p class="soft" id={why}>
          Its time is over at {withOffset(until, operator.base)}. Until then the step cannot be ended.
        </p>
      )}
      <ProblemBox problem={problem ?? certified.problem} readAgain={again} />
      <div class="buttons">
        <button
          class="main"
          disabled={sending || unread || seconds > 0}
          aria-describedby={seconds > 0 ? why : undefined}
        >
          {pressed(step)}
        </button>
      </div>
    </form>
  );
}

/** Where it is read what the second person certifies. */
const statementOf = ({ defect, work }: StepProps['view'], { id }: StepProps['step']): string =>
  `/defects/${defect.id}/statement?${new URLSearchParams({ act: 'card-second', work: work.id, step: id }).toString()}`;
