import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { Countdown, useSecondsUntil } from './countdown.js';
import { asksForTwo, SecondPerson } from './second-person.js';
import type { Step, StepProps } from './step-props.js';

type Typed = Record<string, string>;

/** What is entered for a step, each with its unit; what is pressed says what is done. */
export function StepForm({ reading, view: { defect, work, people }, step, done }: StepProps) {
  const [typed, setTyped] = useState<Typed>({});
  const [second, setSecond] = useState('');
  const two = asksForTwo(step);
  const { send, sending, problem } = useAct();
  const running = step.begun !== null && step.state === 'begun';
  const seconds = useSecondsUntil(running ? (step.begun?.until ?? null) : null);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { work: work.id, step: step.id, ...resultOf(step, typed), ...(two && { second }) };
    const path = `/defects/${defect.id}/card-steps`;
    const answer = await send<Schemas['ActDone']>({ method: 'POST', path, body, seen: reading.etag });
    if (!answer) return;
    setTyped({});
    if (!['next', 'begun'].includes(step.state) || !['wait', 'run'].includes(step.kind)) done();
    await reading.readAgain();
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
        {two && <SecondPerson people={people} what={whoIsAsked(step)} value={second} onValue={setSecond} />}
      </FieldErrors.Provider>
      {running && <Countdown seconds={seconds} />}
      <ProblemBox problem={problem} readAgain={() => void reading.readAgain()} />
      <div class="buttons">
        <button class="main" disabled={sending}>
          {pressed(step)}
        </button>
      </div>
    </form>
  );
}

const whoIsAsked = ({ needs }: Step): string => needs.find(({ kind }) => kind === 'second-person')?.what ?? '';

interface Asked {
  key: string;
  label: string;
  hint?: string;
  decimal: boolean;
}

function fieldsOf(step: Step): Asked[] {
  const reading = ({ id, what, unit, limits }: Schemas['CardStep']['readings'][number]): Asked => ({
    key: id,
    label: `${what}, ${unit}`,
    hint: `The card allows ${limits}.`,
    decimal: true,
  });
  const { account, renew } = step;
  if (step.kind === 'measure' && step.measure) return [reading(step.measure)];
  if (step.kind === 'renew') {
    return [
      { key: 'partNumber', label: `Part number of the new ${renew?.part}`, decimal: false },
      { key: 'batch', label: 'Batch, serial or certificate number', decimal: false },
      ...(renew && renew.count > 1
        ? [{ key: 'count', label: `How many renewed, of ${renew.count}`, decimal: true }]
        : []),
    ];
  }
  if (account) {
    const word = step.kind === 'out' ? account.outWord : account.inWord;
    const count = { key: 'count', label: `How many ${word}, of ${account.count}`, decimal: true };
    const number = { key: 'number', label: `Number read on the ${account.what}`, decimal: false };
    return [...(account.count > 1 ? [count] : []), ...(account.numbered ? [number] : [])];
  }
  if (step.state === 'next' && step.shownBy !== null) {
    return [{ key: 'minutes', label: 'Minutes', hint: `Read from ${step.shownBy}, never guessed.`, decimal: true }];
  }
  if (step.kind === 'run' && step.state === 'begun') return step.readings.map(reading);
  if (step.state === 'ran') return [{ key: 'findings', label: step.look ?? 'What you found', decimal: false }];
  return [];
}

function resultOf(step: Step, typed: Typed): object {
  const { kind, state } = step;
  const count = typed['count'] === undefined ? {} : { count: numberIn(typed['count']) };
  if (kind === 'measure') {
    const { id = '', unit } = step.measure ?? {};
    return { result: 'measured', value: numberIn(typed[id]), unit };
  }
  if (kind === 'renew')
    return { result: 'renewed', partNumber: typed['partNumber'], batch: typed['batch'], ...count };
  if (kind === 'out' || kind === 'in') {
    return { result: kind, ...count, ...(typed['number'] === undefined ? {} : { number: typed['number'] }) };
  }
  if (state === 'ran') return { result: 'looked', findings: typed['findings'] };
  if (kind === 'wait' || kind === 'run') {
    if (state === 'next')
      return { result: 'begun', ...(typed['minutes'] ? { minutes: numberIn(typed['minutes']) } : {}) };
    if (kind === 'wait') return { result: 'waited' };
    const readings = step.readings.map(({ id, unit }) => ({ id, unit, value: numberIn(typed[id]) }));
    return { result: 'ran', readings };
  }
  return { result: 'done' };
}

const numberIn = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));

function pressed({ kind, state, account }: Step): string {
  if (kind === 'out') return `It is ${account?.outWord}`;
  if (kind === 'in') return `It is ${account?.inWord}`;
  if (state === 'ran') return 'Looked';
  if (kind === 'wait' || kind === 'run')
    return state === 'next' ? 'Begin: the time counts from now' : 'The time is over';
  return kind === 'measure' ? 'Read' : kind === 'renew' ? 'Renewed' : 'Done';
}
