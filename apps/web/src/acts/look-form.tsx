import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { Waiting } from '../item/waiting.js';
import { Choice } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignForm } from './sign-form.js';

/** The second person looked at the aircraft or at the paper, not at the screen. */
export function LookForm({ view, seen, done, readAgain }: ActFormProps) {
  const { query } = useLocation();
  const { waiting, defect } = view;
  const [asked, setAsked] = useState<string | null>(query['asked'] ?? waiting[0]?.id ?? null);
  const one = waiting.find(({ id }) => id === asked);
  if (waiting.length === 0) return <p>No correction waits for a second look.</p>;
  const statement = new URLSearchParams({ act: 'second-look', asked: one?.id ?? '' });
  return (
    <SignForm
      statementPath={one ? `/defects/${defect.id}/statement?${statement.toString()}` : null}
      path={`/defects/${defect.id}/second-look`}
      seen={seen}
      readAgain={readAgain}
      body={() => ({ asked })}
      button="Sign: I looked, it is right"
      done={() => done('Corrected. What was written stays in the history.')}
    >
      <p class="strong">Look at the aircraft itself, or at the document, before you sign.</p>
      {waiting.length > 1 && (
        <Choice
          legend="Which correction"
          options={waiting.map(({ id, field, now }) => ({ value: id, text: `${field}: ${now}` }))}
          value={asked}
          onValue={setAsked}
        />
      )}
      {one && <Waiting line={one} />}
    </SignForm>
  );
}
