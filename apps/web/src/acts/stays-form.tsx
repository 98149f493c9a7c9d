import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { Waiting } from '../item/waiting.js';
import { Choice, Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignForm } from './sign-form.js';

/** What was written is right: the second person looked, or whoever asked takes it back. */
export function StaysForm({ view, seen, done, readAgain }: ActFormProps) {
  const { query } = useLocation();
  const { waiting, defect } = view;
  const [asked, setAsked] = useState<string | null>(query['asked'] ?? waiting[0]?.id ?? null);
  const [reason, setReason] = useState('');
  const one = waiting.find(({ id }) => id === asked);
  if (waiting.length === 0) return <p>No correction waits for a second look.</p>;
  const statement = new URLSearchParams({ act: 'stays-as-written', asked: one?.id ?? '' });
  return (
    <SignForm
      statementPath={one ? `/defects/${defect.id}/statement?${statement.toString()}` : null}
      path={`/defects/${defect.id}/as-written`}
      seen={seen}
      readAgain={readAgain}
      body={() => ({ asked, reason })}
      button="Sign: it stays as written"
      done={() => done('It stays as it was written. That the correction was asked for stays in the history.')}
    >
      <p class="strong">
        Look at the aircraft itself, or at the document, before you sign. Whoever asked takes it back.
      </p>
      {waiting.length > 1 && (
        <Choice
          legend="Which correction is not made"
          options={waiting.map(({ id, field, now }) => ({ value: id, text: `${field}: ${now}` }))}
          value={asked}
          onValue={setAsked}
        />
      )}
      {one && <Waiting line={one} />}
      <Field
        label="Why it stays as written"
        lines={2}
        most={1000}
        value={reason}
        onValue={setReason}
        pointer="/reason"
        required
      />
    </SignForm>
  );
}
