import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-clock.js';
import { useAct } from '../api/use-act.js';
import { announce } from '../shell/announce.js';
import { Choice, Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';

export type Fact = Schemas['FactList']['facts'][number];

interface FactFormProps {
  aircraft: string;
  flight: string | null;
  factKey: string;
  fact: Fact;
  question: string;
  answered(): void;
}

/** An input of the type of the fact, and where the answer comes from. */
export function FactForm({ aircraft, flight, factKey, fact, question, answered }: FactFormProps) {
  const [typed, setTyped] = useState('');
  const [source, setSource] = useState('');
  const [until, setUntil] = useState(NO_WALL);
  const untilAt = instantOf(until, 'UTC');
  const { send, sending, problem } = useAct();

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = {
      key: factKey,
      value: valueOf(fact, typed),
      source,
      observedAt: serverNow(),
      ...(flight === null || fact.id.startsWith('aircraft.') ? {} : { flight }),
      ...(untilAt === null ? {} : { validUntil: untilAt }),
    };
    const answer = await send({ method: 'PUT', path: `/aircraft/${aircraft}/facts`, body });
    if (!answer) return;
    announce('Your answer is recorded.');
    answered();
  }

  return (
    <form class="card" onSubmit={submit}>
      <FieldErrors.Provider value={problem?.errors ?? []}>
        <FactInput fact={fact} question={question} typed={typed} onTyped={setTyped} />
        <Field
          label="Where the answer comes from"
          hint="Such as a forecast with its number, or: seen at the aircraft"
          value={source}
          onValue={setSource}
          pointer="/source"
          required
        />
        {fact.goodForMinutes !== null && (
          <>
            <p class="hint">
              Such an answer is good for {Math.round(fact.goodForMinutes / 60)} hours, unless its source says until
              when.
            </p>
            <WallInput
              what="it is good until, UTC"
              zone="UTC"
              value={until}
              onValue={setUntil}
              pointer="/validUntil"
              required={false}
            />
          </>
        )}
      </FieldErrors.Provider>
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button disabled={sending}>Answer</button>
      </div>
    </form>
  );
}

interface FactInputProps {
  fact: Fact;
  question: string;
  typed: string;
  onTyped(value: string): void;
}

function FactInput({ fact, question, typed, onTyped }: FactInputProps) {
  const choices = fact.type === 'boolean' ? ['yes', 'no'] : fact.choices;
  if (choices) {
    const options = choices.map((value) => ({ value, text: value }));
    return <Choice legend={question} options={options} value={typed} onValue={onTyped} />;
  }
  const unit = fact.unit === null ? undefined : `In ${fact.unit}`;
  return (
    <Field
      label={question}
      hint={unit}
      value={typed}
      onValue={onTyped}
      pointer="/value"
      inputMode={fact.type === 'number' ? 'numeric' : 'text'}
      short
      required
    />
  );
}

/** What is no number is sent as it was typed: the server says what it wants instead. */
function valueOf(fact: Fact, typed: string): string | number | boolean {
  if (fact.type === 'boolean') return typed === 'yes';
  if (fact.type !== 'number') return typed;
  const value = Number(typed.replace(',', '.'));
  return Number.isNaN(value) ? typed : value;
}
