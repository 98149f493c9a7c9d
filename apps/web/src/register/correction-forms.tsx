import { useState } from 'preact/hooks';
import { useSession } from '../session/session.js';
import { Choice, Field } from '../shell/fields.js';
import { leftKind } from '../words/words.js';
import { RegisterAct, type RegisterFormProps } from './register-form.js';

type FieldName = 'where' | 'tag';

const FIELDS = [
  { value: 'where', text: 'Its place' },
  { value: 'tag', text: 'The number on it' },
] as const;

/** The first of two signatures: the register reads otherwise only once another person has looked too. */
export function CorrectionForm(props: RegisterFormProps) {
  const { left } = props.view;
  const [item, setItem] = useState<string | null>(null);
  const [field, setField] = useState<FieldName | null>(null);
  const [now, setNow] = useState('');
  const [reason, setReason] = useState('');
  if (left.length === 0) return <p>Nothing is left on the aircraft that could be mistyped.</p>;
  const thing = left.find(({ id }) => id === item);
  return (
    <RegisterAct
      {...props}
      address="corrections"
      act="correction"
      body={() => ({ item, field, now, reason })}
      button="Sign: it is mistyped"
      said="Asked for. It stands as it was until a second person has looked and signed."
    >
      <Choice
        legend="Which thing"
        options={left.map(({ id, kind, tag, where }) => ({ value: id, text: `${leftKind(kind)}, ${tag}: ${where}` }))}
        value={item}
        onValue={setItem}
      />
      <Choice legend="What is mistyped" options={FIELDS} value={field} onValue={setField} />
      {thing && field && <p>It reads now: {thing[field]}</p>}
      <Field label="What it should read" value={now} onValue={setNow} pointer="/now" required />
      <Field label="Why" lines={2} most={1000} value={reason} onValue={setReason} pointer="/reason" required />
    </RegisterAct>
  );
}

/** The second person looked at the aircraft, not at the screen. */
export function SecondLookForm(props: RegisterFormProps) {
  const { corrections } = props.view;
  const [asked, setAsked] = useState<string | null>(props.query['asked'] ?? null);
  if (corrections.length === 0) return <p>No correction waits for a second look.</p>;
  return (
    <RegisterAct
      {...props}
      address="second-looks"
      act="second-look"
      asked={asked}
      body={() => ({ asked })}
      button="Sign: I looked, it is right"
      said="Corrected. What stood there before stays readable in the history."
    >
      <p class="strong">Look at the aircraft itself before you sign.</p>
      <Choice
        legend="Which correction"
        options={corrections.map(({ id, was, now, by }) => ({
          value: id,
          text: `“${was}” should read “${now}” (${by})`,
        }))}
        value={asked}
        onValue={setAsked}
      />
    </RegisterAct>
  );
}

/** What the register says is right: another person looked, or whoever asked takes it back. */
export function AsWrittenForm(props: RegisterFormProps) {
  const { corrections } = props.view;
  const { person } = useSession();
  const [asked, setAsked] = useState<string | null>(props.query['asked'] ?? null);
  const [reason, setReason] = useState('');
  if (corrections.length === 0) return <p>No correction waits for a second look.</p>;
  const own = corrections.find(({ id }) => id === asked)?.askedBy === person.id;
  return (
    <RegisterAct
      {...props}
      address="as-written"
      act={own ? 'taken-back' : 'as-written'}
      asked={asked}
      body={() => ({ asked, reason })}
      button={own ? 'Sign: I take it back' : 'Sign: I looked, it stays as written'}
      said="It stays as it was written. That the correction was asked for stays in the history."
    >
      {!own && <p class="strong">Look at the aircraft itself before you sign. Whoever asked takes it back.</p>}
      <Choice
        legend="Which correction is not made"
        options={corrections.map(({ id, was, now, by }) => ({
          value: id,
          text: `“${was}” should read “${now}” (${by})`,
        }))}
        value={asked}
        onValue={setAsked}
      />
      <Field
        label="Why it stays as written"
        lines={2}
        most={1000}
        value={reason}
        onValue={setReason}
        pointer="/reason"
        required
      />
    </RegisterAct>
  );
}
